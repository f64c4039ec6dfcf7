import { readFile } from 'node:fs/promises';
import { join } from 'node:path';
import type { ElementContent } from 'hast';
import { VFile } from 'vfile';
import type { PacketContext } from '../../components/context.ts';
import { gradeStandards } from '../../components/debrief/grade-standards.ts';
import { components } from '../../components/list.ts';
import { type Lesson, parseLesson } from '../lesson/parse-lesson.ts';
import { renderLesson } from '../lesson/render-lesson.ts';
import type { School } from '../school/school.ts';
import { fail, hasErrors } from '../school/yaml-source.ts';
import { fingerprint } from './fingerprint.ts';
import { createNodeBoard } from './node-board.ts';
import { packetHtml } from './packet.ts';
import { contentHeight, contentWidth, type Paper, type PaperName, papers } from './paper.ts';
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
  readonly paper: PaperName;
  /** The date that the packet bears. */
  readonly date: Date;
  /** Version of this program: another one may compute another figure. */
  readonly version: string;
}

/** A lesson's packets, with its file and messages; none where one of the messages is an error. */
export interface Built {
  readonly file: VFile;
  readonly packets: readonly Packet[];
}

/** Makes the packets of one lesson for each of its aircraft. All messages of the lesson come together. */
export async function buildLesson(request: BuildRequest): Promise<Built> {
  const path = join(request.school.folder, `${request.lesson}.md`);
  const file = new VFile({ path, value: await readFile(path, 'utf8') });
  const lesson = parseLesson<PacketContext>(file, components);
  if (!lesson.frontMatter) return { file, packets: [] };
  const packets = packetsFor(lesson, file, request);
  removeRepeats(file);
  return { file, packets: hasErrors(file) ? [] : packets };
}

function packetsFor(lesson: Lesson<PacketContext>, file: VFile, request: BuildRequest): Packet[] {
  try {
    return aircraftOf(request.school, lesson.frontMatter!, request.aircraft)
      .map((id) => packetFor(id, lesson, file, request))
      .filter((packet) => packet !== undefined);
  } catch (error) {
    if (!(error instanceof ScenarioError)) throw error;
    reportScenario(error, lesson, file);
    return [];
  }
}

function packetFor(
  aircraftId: string,
  lesson: Lesson<PacketContext>,
  file: VFile,
  request: BuildRequest,
): Packet | undefined {
  const { school, choices, paper, date } = request;
  const frontMatter = lesson.frontMatter!;
  try {
    const scenario = scenarioOf(school, frontMatter, aircraftId, choices);
    const plan = planOf(scenario);
    const { units } = school;
    const context: PacketContext = {
      plan,
      request: scenario.request,
      school,
      units,
      edition: 'student',
      board: createNodeBoard(),
      drawingRoom: drawingRoom(papers[paper]),
    };
    const body = renderLesson<PacketContext>(lesson, context, file);
    gradeStandards(body);
    if (hasErrors(file)) return undefined;
    const html = packetHtml({
      title: frontMatter.title,
      body: body.children as ElementContent[],
      plan,
      school,
      rules: scenario.airfield.rules,
      units,
      paper: papers[paper],
      date,
      fingerprint: fingerprint({
        lesson: String(file),
        request: scenario.request,
        units,
        paper,
        version: request.version,
        cautions: school.cautions,
      }),
    });
    return { path: join(request.lesson, aircraftId), html, paper, date };
  } catch (error) {
    if (!(error instanceof ScenarioError)) throw error;
    reportScenario(error, lesson, file);
    return undefined;
  }
}

/** The message stands at the key of the front matter that it belongs to. */
export function reportScenario(error: ScenarioError, lesson: Lesson<PacketContext>, file: VFile): void {
  const source = lesson.frontMatterSource;
  if (source) source.report(error.message, 'scenario', [error.key]);
  else fail(file, error.message, 'scenario');
}

/** A drawing is never so high that its page has no room for the caption and some text. mm. */
export function drawingRoom(paper: Paper): PacketContext['drawingRoom'] {
  return { width: contentWidth(paper), height: contentHeight(paper) * 0.62 };
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
