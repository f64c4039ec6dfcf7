import { join, relative } from 'node:path';
import { formats } from '../../press/formats/list.ts';
import { openLesson } from '../../press/packet/build.ts';
import { removeRepeats } from '../../press/packet/lesson-messages.ts';
import { airfieldTexts } from '../../press/printing/airfield-texts.ts';
import { codeMark } from '../../press/printing/code-mark.ts';
import type { PrintOrder } from '../../press/printing/order.ts';
import { type PrintEvent, printAll } from '../../press/printing/print-all.ts';
import { sortOrders } from '../../press/printing/sort-orders.ts';
import { readSchool } from '../../school/read.ts';
import type { DeskMessage, PageEdition, PrintAnswer, PrintedPacket, PrintRequest } from '../api.ts';
import { readChoices } from './choices.ts';
import { choiceMessage, messagesOf, messagesOfAll } from './desk-messages.ts';
import { Refusal } from './refusal.ts';
import { schoolFile } from './school-paths.ts';

export interface Press {
  /** The school's folder. */
  readonly folder: string;
  /** Where packets go. */
  readonly out: string;
  /** As `--browser` gives it. */
  readonly browser?: string | undefined;
  readonly version: string;
  readonly today: () => Date;
  readonly signal: AbortSignal;
}

const editions: readonly PageEdition[] = ['student', 'instructor'];

/** Prints a saved lesson to the files that `build` prints it to; what has not changed since stays as it is. */
export async function printLesson(
  { path, choices: asked = {} }: PrintRequest,
  press: Press,
): Promise<PrintAnswer> {
  const { folder, out, browser, version, today, signal } = press;
  const lesson = schoolFile(path);
  if (lesson?.kind !== 'lesson') throw new Refusal(403, 'Only a lesson is printed.');
  const date = today();
  const { files, withSoundAircraft: school } = await readSchool(folder, date);
  const ofSchool = messagesOfAll(files, folder);
  const read = readChoices(asked);
  if (!school || read.messages.length > 0) return { packets: [], messages: [...read.messages, ...ofSchool] };
  if (!school.lessonIds.includes(lesson.id))
    throw new Refusal(404, `There is no lesson \`${path}\` in the school.`);
  const opened = await openLesson({
    school,
    lesson: lesson.id,
    aircraft: asked.aircraft === undefined ? [] : [asked.aircraft],
    // A message about a choice begins with its name.
    variants: [{ choices: read.choices, asked: namesOf(asked), folder: '' }],
    editions: editions.filter((each) => asked.edition === 'both' || each === (asked.edition ?? 'student')),
    papers: [asked.paper ?? school.paper],
    date,
    version,
    common: { code: codeMark(), version, airfields: airfieldTexts(files, school) },
  });
  const { pages } = await sortOrders(opened.orders, { folder, out, browser, date: undefined, again: false });
  const told: PrintEvent[] = [];
  const done = await printAll(pages, { out, browser, signal, tell: (event) => void told.push(event) });
  removeRepeats(opened.file);
  const toPrint = new Set(pages.map((page) => page.path));
  return {
    packets: opened.orders.map((order) => packetOf(order, toPrint, told, out)),
    messages: [...[...opened.wrongChoices].map(wrongChoice), ...messagesOf(opened.file, path), ...ofSchool],
    noBrowser: done.noBrowser,
  };
}

function namesOf(asked: object): Record<string, string> {
  const given = Object.entries(asked).filter(([, value]) => value !== undefined);
  return Object.fromEntries(given.map(([name]) => [name, name]));
}

function wrongChoice([words, rule]: [string, string]): DeskMessage {
  const at = words.indexOf(': ');
  return choiceMessage(words.slice(0, at), words.slice(at + 2), 'error', rule);
}

function packetOf(
  { path }: PrintOrder,
  toPrint: ReadonlySet<string>,
  told: readonly PrintEvent[],
  out: string,
): PrintedPacket {
  const end = toPrint.has(path)
    ? told.find((event) => event.path === path && event.kind !== 'begun')
    : undefined;
  const state = toPrint.has(path) ? stateOf(end) : 'unchanged';
  const endings = endingsOf(state, end);
  const file = relative('.', join(out, path));
  return {
    path,
    state,
    pdf: endings.includes('pdf') ? `${path.replaceAll('\\', '/')}.pdf` : undefined,
    files: endings.map((ending) => `${file}.${ending}`),
    said: saidOf(end),
  };
}

function endingsOf(state: PrintedPacket['state'], event: PrintEvent | undefined): readonly string[] {
  if (state === 'unchanged') return formats.map(({ ending }) => ending);
  return event && 'endings' in event ? event.endings : [];
}

function stateOf(event: PrintEvent | undefined): PrintedPacket['state'] {
  return event === undefined || event.kind === 'begun' ? 'left' : event.kind;
}

function saidOf(event: PrintEvent | undefined): readonly string[] {
  switch (event?.kind) {
    case 'unprintable':
      return event.messages;
    case 'unwritten':
      return [`${event.message}.`];
    case 'without-browser':
      return event.old.map((ending) => `The .${ending} beside it is of an earlier printing: do not use it.`);
    default:
      return [];
  }
}
