import { fileURLToPath } from 'node:url';
import { toHtml } from 'hast-util-to-html';
import { VFile } from 'vfile';
import { describe, expect, it } from 'vitest';
import { readSchool } from '../../school/read.ts';
import type { School } from '../../school/school.ts';
import { makeHandbook } from '../book/make-handbook.ts';
import { makeCard } from '../card/make-card.ts';
import { papers } from '../paper/paper.ts';
import { schoolFor } from '../printing/packet-key.ts';
import { flownPacket } from './flown-packet.ts';
import { packetContext } from './packet-context.ts';
import { readLesson } from './read-lesson.ts';
import { planOf, scenarioOf } from './scenario.ts';

const { value: school } = await readSchool(fileURLToPath(new URL('../../../lessons', import.meta.url)));
const usual: School = { ...school!, units: { height: 'ft', distance: 'm', speed: 'kt' } };
const [date, version, id] = [new Date('2031-05-06T00:00:00Z'), '1.0.0', 'osier-15'];
const typed = '---\ntitle: Trial\napproach: 180\n---\n\nA lesson.\n';

interface Inputs {
  readonly school: School;
  readonly paper: 'A4' | 'Letter';
  readonly version: string;
  readonly edition: 'student' | 'instructor';
  readonly typed: string;
}

const markIn = (html: string) => /inputs ([0-9a-f]{8})/.exec(html)![1]!;

function ofPacket({ school, paper, version, edition, typed }: Inputs): string {
  const file = new VFile({ path: 'trial.md', value: typed });
  const { lesson } = readLesson('.', file)!;
  const scenario = scenarioOf(school, lesson.frontMatter!, id, {});
  const own = schoolFor(school, id);
  const context = packetContext(
    own,
    { request: scenario.request, plan: planOf(scenario) },
    edition,
    papers[paper],
  );
  return markIn(toHtml(flownPacket({ lesson, file, scenario, context, paper, date, version }).body));
}

function ofBook({ school, paper, version, edition }: Inputs): string {
  // What is flown has units too: of these the book's own alone are changed.
  const scenario = scenarioOf({ ...school, units: usual.units }, { title: 'T', approach: '180' }, id, {});
  const own = { scenario, attempt: <T>(act: () => T) => act() };
  const leaves = [{ id, own, chapters: [] }];
  const say = ({ messages }: VFile) => expect(messages).toEqual([]);
  const book = makeHandbook({
    ...{ school, title: 'T', date, version, leaves, lessons: new Map(), edition, paper, say },
  });
  return markIn(toHtml(book!.document().body));
}

const ofCard = ({ school, paper, version }: Inputs): string =>
  makeCard({
    ...{ school, aircraftId: id, approach: '180', choices: {}, date, version },
    paper: paper === 'A4' ? 'A5' : 'half-letter',
  }).fingerprint;

const inputs: Inputs = { school: usual, paper: 'A4', version, edition: 'student', typed };
const renamed = { ...usual, name: `${usual.name} of the hill` };
const units = { height: 'm', distance: 'm', speed: 'km/h' } as const;
const others = {
  units: { ...inputs, school: { ...usual, units } },
  school: { ...inputs, school: renamed },
  paper: { ...inputs, paper: 'Letter' },
  version: { ...inputs, version: '1.0.1' },
  edition: { ...inputs, edition: 'instructor' },
  lesson: { ...inputs, typed: `${typed}Another word.\n` },
} satisfies Record<string, Inputs>;
const common = ['units', 'school', 'paper', 'version'] as const;

describe.each([
  ['a packet', ofPacket, [...common, 'edition', 'lesson']],
  ['a book', ofBook, [...common, 'edition']],
  ['a card', ofCard, common],
] as const)('the mark of the inputs on %s', (_, markOf, changed) => {
  const mark = markOf(inputs);
  it('is the same for the same', () => expect(markOf({ ...inputs })).toBe(mark));
  it.each(changed)('is another for another %s', (which) => expect(markOf(others[which])).not.toBe(mark));
});
