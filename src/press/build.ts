import { readFile } from 'node:fs/promises';
import { join } from 'node:path';
import { VFile } from 'vfile';
import type { VFileMessage } from 'vfile-message';
import type { Edition, PacketContext } from '../../components/context.ts';
import { components } from '../../components/list.ts';
import { type Lesson, parseLesson } from '../lesson/parse-lesson.ts';
import type { School } from '../school/school.ts';
import { fail, hasErrors } from '../school/yaml-source.ts';
import { flownPacket } from './flown-packet.ts';
import { picturesIn } from './lesson-pictures.ts';
import { packetContext } from './packet-context.ts';
import { type PaperName, papers } from './paper.ts';
import { packetKey, schoolFor } from './printing/packet-key.ts';
import { aircraftOf, type Choices, planOf, type Scenario, ScenarioError, scenarioOf } from './scenario.ts';
import { studyData } from './study/study-data.ts';
import { withStudy } from './study/with-study.ts';

/** One finished packet, not yet printed. */
export interface Packet {
  /** Where it belongs under the output folder, without an ending: `power-off-180/osier-15`. */
  readonly path: string;
  readonly html: string;
  /** The same with the study page in it, for a screen. */
  readonly screen: () => string;
  readonly paper: PaperName;
  readonly date: Date;
}

/** One setting that a lesson is built in. */
export interface Variant {
  readonly choices: Choices;
  /** How each choice was asked for, by the key of the front matter that it goes before: `runway: '--runway 42'`. */
  readonly asked: Readonly<Record<string, string>>;
  /** The folder for its packets, under the output folder: '' where there is one variant only. */
  readonly folder: string;
}

/** What is wanted of a lesson; every combination is one packet. */
export interface LessonOrder {
  readonly school: School;
  readonly lesson: string;
  /** Ids; empty for the school's choice. */
  readonly aircraft: readonly string[];
  readonly variants: readonly Variant[];
  readonly editions: readonly Edition[];
  /** Where there are several, each has a folder of its name. */
  readonly papers: readonly PaperName[];
  /** The date that the packets bear. */
  readonly date: Date;
  /** Version of this program: another one may compute another figure. */
  readonly version: string;
  /** What enters every packet of the build and is not in the school: see `PacketSource`. */
  readonly common?: unknown;
}

/** A packet that is wanted, not yet computed. */
export interface PacketOrder {
  /** As of Packet. */
  readonly path: string;
  readonly paper: PaperName;
  readonly date: Date;
  /** See `packetKey`; undefined where the packet cannot be made: `make` says why. */
  readonly key: () => string | undefined;
  /** Flies and renders it; undefined where a message of the lesson, or a wrong choice, says why there is none. */
  readonly make: () => Made | undefined;
  /** The file that its messages belong to. */
  readonly file: VFile;
}

export interface Made {
  readonly packet: Packet;
  /** Warnings of its flight: those of the lesson itself are there before it is flown. */
  readonly messages: readonly VFileMessage[];
}

/** A lesson that was read, with the packets that are wanted of it. */
export interface OpenLesson {
  readonly file: VFile;
  /** None where the lesson itself has an error. */
  readonly orders: readonly PacketOrder[];
  /** What is wrong with what was asked for, each message with the option it belongs to. Grows while packets are made. */
  readonly wrongChoices: ReadonlySet<string>;
}

export interface BuildRequest extends Omit<LessonOrder, 'variants' | 'papers'>, Omit<Variant, 'folder'> {
  readonly paper: PaperName;
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
  const { choices, asked, paper } = request;
  const { file, orders, wrongChoices } = await openLesson({
    ...request,
    variants: [{ choices, asked, folder: '' }],
    papers: [paper],
  });
  const packets = orders.flatMap(({ make }) => make()?.packet ?? []);
  removeRepeats(file);
  return { file, packets, wrongChoices: [...wrongChoices] };
}

/** Reads a lesson and lists the packets that are wanted of it, in a fixed order; none is computed before it is made. */
export async function openLesson(order: LessonOrder): Promise<OpenLesson> {
  const path = join(order.school.folder, `${order.lesson}.md`);
  const file = new VFile({ path, value: await readFile(path, 'utf8') });
  const lesson = parseLesson<PacketContext>(file, components, {
    pictures: picturesIn(order.school.folder),
  });
  const wrongChoices = new Set<string>();
  const opened = { file, lesson, wrongChoices };
  if (!lesson.frontMatter || hasErrors(file)) return { file, orders: [], wrongChoices };
  const orders = order.variants.map((variant) => {
    const attempt = attemptFor(variant, opened);
    const ids = attempt(() => aircraftOf(order.school, lesson.frontMatter!, order.aircraft)) ?? [];
    return new Map([...new Set(ids)].map((id) => [id, ordersOf(id, variant, order, opened, attempt)]));
  });
  const ids = new Set(orders.flatMap((byId) => [...byId.keys()]));
  return {
    file,
    orders: [...ids].flatMap((id) => orders.flatMap((byId) => byId.get(id) ?? [])),
    wrongChoices,
  };
}

interface Opened {
  readonly file: VFile;
  readonly lesson: Lesson<PacketContext>;
  readonly wrongChoices: Set<string>;
}

type Attempt = <Result>(make: () => Result) => Result | undefined;

/** Runs what may find a setting wrong; where it does, the message lands on the lesson or on the option. */
function attemptFor({ asked }: Variant, { file, lesson, wrongChoices }: Opened): Attempt {
  return (make) => {
    try {
      return make();
    } catch (error) {
      if (!(error instanceof ScenarioError)) throw error;
      const option = asked[error.key];
      if (option === undefined) reportScenario(error, lesson, file);
      else wrongChoices.add(`${option}: ${error.message}`);
      return undefined;
    }
  };
}

/** The packets of one flight: in every edition and on every paper. They are made together, none where one has an error. */
function ordersOf(
  aircraftId: string,
  variant: Variant,
  order: LessonOrder,
  opened: Opened,
  attempt: Attempt,
): PacketOrder[] {
  const { date, common, papers: sizes, editions, lesson: name } = order;
  const { file, lesson } = opened;
  const school = schoolFor(order.school, aircraftId);
  const scenario = once(() =>
    // Not the narrowed school: what is wrong with a setting names the other aircraft.
    attempt(() => scenarioOf(order.school, lesson.frontMatter!, aircraftId, variant.choices)),
  );
  const wanted = sizes.flatMap((paper) =>
    editions.map((edition) => ({
      paper,
      edition,
      path: join(variant.folder, sizes.length > 1 ? paper : '', packetPath(name, aircraftId, edition)),
    })),
  );
  const flown = once(() => {
    const sound = scenario();
    return sound && attempt(() => packetsOf(sound, wanted, school, order, opened));
  });
  return wanted.map(({ path, paper, edition }) => ({
    path,
    paper,
    date,
    file,
    key: () => {
      const sound = scenario();
      const pictures = lesson.pictures.map(({ src }) => src);
      return (
        sound &&
        packetKey({ lesson: String(file), pictures, scenario: sound, school, paper, edition, common })
      );
    },
    make: () => {
      const made = flown();
      const packet = made?.packets.get(path);
      if (!made || !packet) return undefined;
      // Its HTML is large, and there may be hundreds.
      made.packets.delete(path);
      return { packet, messages: made.messages };
    },
  }));
}

interface Wanted {
  readonly path: string;
  readonly paper: PaperName;
  readonly edition: Edition;
}

interface Flown {
  readonly packets: Map<string, Packet>;
  readonly messages: readonly VFileMessage[];
}

/** None where a message on one of them is an error. */
function packetsOf(
  scenario: Scenario,
  wanted: readonly Wanted[],
  school: School,
  { date, version }: LessonOrder,
  { file, lesson }: Opened,
): Flown {
  const plan = planOf(scenario);
  const before = file.messages.length;
  const packets = wanted.map(({ path, paper, edition }): [string, Packet] => {
    const context = packetContext(school, scenario.request, plan, edition, papers[paper]);
    const html = flownPacket({ lesson, file, scenario, context, paper, date, version });
    const { rules } = scenario.airfield;
    const screen = () => withStudy(html, studyData({ context, rules, uses: lesson.uses }));
    return [path, { path, html, screen, paper, date }];
  });
  const messages = file.messages.slice(before);
  return { packets: new Map(messages.some(({ fatal }) => fatal) ? [] : packets), messages };
}

function once<Result>(make: () => Result): () => Result {
  let made: { readonly result: Result } | undefined;
  return () => {
    made ??= { result: make() };
    return made.result;
  };
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
export function removeRepeats(file: VFile): void {
  const seen = new Set<string>();
  file.messages = file.messages.filter((message) => {
    const key = `${message.line}:${message.column}:${message.reason}`;
    const first = !seen.has(key);
    seen.add(key);
    return first;
  });
}
