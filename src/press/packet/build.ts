import { join } from 'node:path';
import type { VFile } from 'vfile';
import type { Edition } from '../../../components/context.ts';
import type { FrontMatter } from '../../lesson/front-matter.ts';
import type { School } from '../../school/school.ts';
import type { PageDocument } from '../formats/page-document.ts';
import type { PaperName } from '../paper/paper.ts';
import { sayAgain } from '../printing/kept-messages.ts';
import type { PrintOrder } from '../printing/order.ts';
import { packetKey, schoolFor } from '../printing/packet-key.ts';
import { GradeTally } from './grade-tally.ts';
import { type Attempt, attemptFor, removeRepeats, type WrongChoices } from './lesson-messages.ts';
import { type LessonText, openText } from './lesson-text.ts';
import type { FlownPackets } from './make-packets.ts';
import { once } from './once.ts';
import { aircraftOf, type Choices, NotToBeFlownError, scenarioOf } from './scenario.ts';

/** One finished packet, not yet printed. */
export interface Packet {
  /** Where it belongs under the output folder, without an ending: `power-off-180/osier-15`. */
  readonly path: string;
  readonly document: PageDocument;
}

/** One setting that a lesson is built in. */
export interface Variant {
  readonly choices: Choices;
  /** How each choice was asked for, by the front matter key that it overrides: `runway: '--runway 42'`. */
  readonly asked: Readonly<Record<string, string>>;
  /** The folder for its packets, under the output folder: '' where there is only one variant. */
  readonly folder: string;
}

/** What is wanted from a lesson; every combination is one packet. */
export interface LessonOrder {
  readonly school: School;
  readonly lesson: string;
  /** Ids; empty for the school's choice. */
  readonly aircraft: readonly string[];
  readonly variants: readonly Variant[];
  readonly editions: readonly Edition[];
  /** Where there are several, each has a folder of its name. */
  readonly papers: readonly PaperName[];
  /** The date on the packets. */
  readonly date: Date;
  /** Version of this program: another version may compute other figures. */
  readonly version: string;
  /** What goes into every packet of the build and is not in the school: see `PacketSource`. */
  readonly common?: unknown;
  /** Counts the packets by the grades of their plans, as they are made, found unchanged, or refused. */
  readonly tally?: GradeTally | undefined;
}

/** A lesson whose front matter was read, with the packets wanted from it. */
export interface OpenLesson {
  readonly file: VFile;
  /** Empty where its front matter has an error. */
  readonly orders: readonly PrintOrder[];
  /** Grows while keys are found and packets are made. */
  readonly wrongChoices: Readonly<WrongChoices>;
}

export interface BuildRequest extends Omit<LessonOrder, 'variants' | 'papers'>, Omit<Variant, 'folder'> {
  readonly paper: PaperName;
}

/** A lesson's packets, with its file and messages. */
export interface Built {
  readonly file: VFile;
  /** Empty where the lesson itself has an error; without those of an aircraft for which there is one. */
  readonly packets: readonly Packet[];
  /** What is wrong with what was asked for, each message with the option it belongs to. */
  readonly wrongChoices: readonly string[];
}

/**
 * Makes the packets of one lesson for each of its aircraft, in each edition asked for. All messages of the lesson
 * come together; an aircraft that the lesson cannot be flown with does not stop the others.
 */
export async function buildLesson(request: BuildRequest): Promise<Built> {
  const { choices, asked, paper } = request;
  const { file, orders, wrongChoices } = await openLesson({
    ...request,
    variants: [{ choices, asked, folder: '' }],
    papers: [paper],
  });
  const packets: Packet[] = [];
  for (const { path, open, graded } of orders) {
    const make = await open();
    const made = await make?.(async () => undefined);
    if (!made) continue;
    graded?.(made.grades ?? []);
    packets.push({ path, document: made.document });
  }
  removeRepeats(file);
  return { file, packets, wrongChoices: [...wrongChoices.keys()] };
}

/** Lists the packets that are wanted from a lesson, in a fixed order; none is computed before it is made. */
export async function openLesson(order: LessonOrder): Promise<OpenLesson> {
  const { school } = order;
  const text = await openText(school, order.lesson);
  const { file, source, frontMatter } = text;
  const wrongChoices: WrongChoices = new Map();
  if (!frontMatter) return { file, orders: [], wrongChoices };
  const orders = order.variants.map((variant) => {
    const attempt = attemptFor({ file, source }, variant.asked, wrongChoices);
    const ids = attempt(() => aircraftOf(school, frontMatter, order.aircraft)) ?? [];
    const opened = { ...text, frontMatter, attempt };
    return new Map([...new Set(ids)].map((id) => [id, ordersOf(id, variant, order, opened)]));
  });
  const ids = new Set(orders.flatMap((byId) => [...byId.keys()]));
  return {
    file,
    orders: [...ids].flatMap((id) => orders.flatMap((byId) => byId.get(id) ?? [])),
    wrongChoices,
  };
}

interface Opened extends LessonText {
  readonly frontMatter: FrontMatter;
  readonly attempt: Attempt;
}

/**
 * The packets of one flight, in every edition and on every paper. They are made together; none of them is made where
 * one has an error.
 */
function ordersOf(aircraftId: string, variant: Variant, order: LessonOrder, opened: Opened): PrintOrder[] {
  const { date, common, papers: sizes, editions, version, lesson: name, tally = new GradeTally() } = order;
  const { file, source, frontMatter, read, attempt } = opened;
  const { asked } = variant;
  const school = schoolFor(order.school, aircraftId);
  const scenario = once(() =>
    // Not the narrowed school: a message about a wrong setting names the other aircraft.
    attempt(() => scenarioOf(order.school, frontMatter, aircraftId, variant.choices)),
  );
  const wanted = sizes.flatMap((paper) =>
    editions.map((edition) => ({
      paper,
      edition,
      path: join(variant.folder, sizes.length > 1 ? paper : '', packetPath(name, aircraftId, edition)),
    })),
  );
  const make = once(async (): Promise<FlownPackets | undefined> => {
    const lesson = await read();
    const sound = scenario();
    if (!lesson || !sound) return undefined;
    const { makePackets } = await import('./make-packets.ts');
    const flight = { scenario: sound, school, file, source, asked, date, version };
    return attempt(() => {
      try {
        return makePackets(lesson, flight, wanted);
      } catch (error) {
        if (error instanceof NotToBeFlownError) notToBeFlown = true;
        throw error;
      }
    });
  });
  let notToBeFlown = false;
  return wanted.map(({ path, paper, edition }) => ({
    path,
    date,
    key: () => {
      const sound = scenario();
      return sound && packetKey({ lesson: String(file), scenario: sound, school, paper, edition, common });
    },
    open: async () =>
      (await read()) &&
      (async () => {
        const made = (await make())?.take(path);
        if (notToBeFlown) tally.refuse();
        return made;
      }),
    hear: (message) => sayAgain(message, file),
    graded: (grades) => tally.add(grades),
  }));
}

/**
 * The student's packet has the lesson's name; the instructor's says what it is, so that nobody hands out the answers
 * by mistake.
 */
function packetPath(lesson: string, aircraftId: string, edition: Edition): string {
  return join(lesson, edition === 'student' ? aircraftId : `${aircraftId}.${edition}`);
}
