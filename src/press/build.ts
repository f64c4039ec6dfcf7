import { readFile } from 'node:fs/promises';
import { join } from 'node:path';
import type { ElementContent } from 'hast';
import { VFile } from 'vfile';
import type { Edition, PacketContext } from '../../components/context.ts';
import { gradeStandards } from '../../components/debrief/grade-standards.ts';
import { components } from '../../components/list.ts';
import { type Lesson, parseLesson } from '../lesson/parse-lesson.ts';
import { renderLesson } from '../lesson/render-lesson.ts';
import type { School } from '../school/school.ts';
import { fail, hasErrors } from '../school/yaml-source.ts';
import { fingerprint } from './fingerprint.ts';
import { picturesIn } from './lesson-pictures.ts';
import { packetHtml } from './packet.ts';
import { packetContext } from './packet-context.ts';
import { type PaperName, papers } from './paper.ts';
import { aircraftOf, type Choices, planOf, ScenarioError, scenarioOf } from './scenario.ts';

/** One finished packet, not yet printed. */
export interface Packet {
  /** Where it belongs under the output folder, without an ending: `power-off-180/osier-15`. */
  readonly path: string;
  readonly html: string;
  readonly paper: PaperName;
  readonly date: Date;
}

export interface BuildRequest {
  readonly school: School;
  readonly lesson: string;
  /** Ids; empty for the school's choice. */
  readonly aircraft: readonly string[];
  readonly choices: Choices;
  /** How each choice was asked for, by the key of the front matter that it goes before: `runway: '--runway 42'`. */
  readonly asked: Readonly<Record<string, string>>;
  readonly editions: readonly Edition[];
  readonly paper: PaperName;
  /** The date that the packet bears. */
  readonly date: Date;
  /** Version of this program: another one may compute another figure. */
  readonly version: string;
}

/** A lesson's packets, with its file and messages. */
export interface Built {
  readonly file: VFile;
  /** None where the lesson itself has an error; none of an aircraft for which a message is one. */
  readonly packets: readonly Packet[];
  /** What is wrong with what was asked for, each message with the option it belongs to. */
  readonly wrongChoices: readonly string[];
}

/**
 * Makes the packets of one lesson for each of its aircraft, in each edition asked for. All messages of the lesson come
 * together; an aircraft that the lesson can not be flown with does not stop the others.
 */
export async function buildLesson(request: BuildRequest): Promise<Built> {
  const path = join(request.school.folder, `${request.lesson}.md`);
  const file = new VFile({ path, value: await readFile(path, 'utf8') });
  const lesson = parseLesson<PacketContext>(file, components, {
    pictures: picturesIn(request.school.folder),
  });
  const wrongChoices = new Set<string>();
  if (!lesson.frontMatter || hasErrors(file)) return { file, packets: [], wrongChoices: [] };
  const attempt = <Made>(make: () => Made): Made | undefined => {
    try {
      return make();
    } catch (error) {
      if (!(error instanceof ScenarioError)) throw error;
      const option = request.asked[error.key];
      if (option === undefined) reportScenario(error, lesson, file);
      else wrongChoices.add(`${option}: ${error.message}`);
      return undefined;
    }
  };
  const ids = attempt(() => aircraftOf(request.school, lesson.frontMatter!, request.aircraft)) ?? [];
  const packets = ids.flatMap((id) => attempt(() => packetsFor(id, lesson, file, request)) ?? []);
  removeRepeats(file);
  return { file, packets, wrongChoices: [...wrongChoices] };
}

/** The packets of one aircraft; none where a message on it is an error. */
function packetsFor(
  aircraftId: string,
  lesson: Lesson<PacketContext>,
  file: VFile,
  request: BuildRequest,
): Packet[] {
  const { school, choices, paper, date, version } = request;
  const frontMatter = lesson.frontMatter!;
  const scenario = scenarioOf(school, frontMatter, aircraftId, choices);
  const plan = planOf(scenario);
  const { units, faults, grading, cautions } = school;
  const before = file.messages.length;
  const packets = request.editions.map((edition) => {
    const context = packetContext(school, scenario.request, plan, edition, papers[paper]);
    const body = renderLesson<PacketContext>(lesson, context, file);
    gradeStandards(body);
    const html = packetHtml({
      title: frontMatter.title,
      body: body.children as ElementContent[],
      edition,
      plan,
      school,
      rules: scenario.airfield.rules,
      units,
      paper: papers[paper],
      date,
      fingerprint: fingerprint({
        lesson: String(file),
        pictures: lesson.pictures.map(({ src }) => src),
        request: scenario.request,
        aircraft: scenario.aircraft,
        airfield: scenario.airfield,
        school: { name: school.name, cautions, faults: Object.fromEntries(faults), grading },
        fields: Object.fromEntries(school.airfields),
        units,
        paper,
        edition,
        version,
      }),
    });
    return { path: packetPath(request.lesson, aircraftId, edition), html, paper, date };
  });
  return file.messages.slice(before).some(({ fatal }) => fatal) ? [] : packets;
}

/** The student's packet is the lesson's; the instructor's says what it is: nobody hands out the answers unawares. */
function packetPath(lesson: string, aircraftId: string, edition: Edition): string {
  return join(lesson, edition === 'student' ? aircraftId : `${aircraftId}.${edition}`);
}

/** The message stands at the key of the front matter that it belongs to. */
export function reportScenario(error: ScenarioError, lesson: Lesson<PacketContext>, file: VFile): void {
  const source = lesson.frontMatterSource;
  if (source) source.report(error.message, 'scenario', [error.key]);
  else fail(file, error.message, 'scenario');
}

/** What is wrong with the lesson itself is found anew for every aircraft, and said once. */
function removeRepeats(file: VFile): void {
  const seen = new Set<string>();
  file.messages = file.messages.filter((message) => {
    const key = `${message.line}:${message.column}:${message.reason}`;
    const first = !seen.has(key);
    seen.add(key);
    return first;
  });
}
