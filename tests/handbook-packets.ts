import { fileURLToPath } from 'node:url';
import type { Edition } from '../components/context.ts';
import { bindVolume, openBook } from '../src/press/book/book-order.ts';
import { cardBody, cardDocument } from '../src/press/card/card.ts';
import { settings } from '../src/press/card/fit-card.ts';
import { makeCard } from '../src/press/card/make-card.ts';
import { documentHtml } from '../src/press/formats/document-html.ts';
import { buildLesson, type Packet } from '../src/press/packet/build.ts';
import { readSchool } from '../src/school/read.ts';
import type { School } from '../src/school/school.ts';
import { madeOnce } from './made-once.ts';

/** A packet of the demonstration's handbook, with what it was asked for. */
export interface HandbookPacket extends Omit<Packet, 'path'> {
  /** As it is printed. */
  readonly html: string;
  readonly lesson: string;
  readonly aircraft: string;
  readonly edition: Edition;
}

const lessons = fileURLToPath(new URL('../lessons', import.meta.url));
/** The day on the packets. */
const date = new Date('2031-05-06T00:00:00Z');

const rotation = ['osier-15', 'sallow-10', 'withy-80'] as const;

/**
 * One packet of every lesson of the handbook, or of some, made by the press and not printed. The aircraft take turns;
 * the edition changes with every round, so that each aircraft has both. Throws where a lesson does not build.
 */
export async function handbookPackets(only?: readonly string[]): Promise<HandbookPacket[]> {
  const { withSoundAircraft: school } = await readSchool(lessons, date);
  if (!school?.handbook) throw new Error('The demonstration has no handbook, or a mistake in it.');
  const packets: HandbookPacket[] = [];
  for (const [index, lesson] of school.handbook.chapters.entries()) {
    if (only && !only.includes(lesson)) continue;
    const aircraft = rotation[index % rotation.length]!;
    const edition = Math.floor(index / rotation.length) % 2 === 0 ? 'student' : 'instructor';
    const made = await madeOnce(`packet-${lesson}`, () => packetOf(school, lesson, aircraft, edition));
    const document = { ...made.document, date };
    packets.push({ ...made, document, html: documentHtml(document), lesson, aircraft, edition });
  }
  return packets;
}

async function packetOf(school: School, lesson: string, aircraft: string, edition: Edition): Promise<Packet> {
  const built = await buildLesson({
    school,
    lesson,
    aircraft: [aircraft],
    choices: {},
    asked: {},
    editions: [edition],
    paper: 'A4',
    date,
    version: '0.0.0-test',
  });
  const [packet] = built.packets;
  if (!packet) throw new Error(`${lesson} gives no packet: ${built.file.messages.join('; ')}`);
  return packet;
}

/** The student's book for one aircraft, as it is before its pages are known. */
export async function handbookBook(aircraft: string): Promise<string> {
  const { withSoundAircraft: school } = await readSchool(lessons, date);
  const { title, chapters } = school!.handbook!;
  const source = { school: school!, title, choices: {}, asked: {}, date, version: '0.0.0-test', common: {} };
  const book = await bindVolume(await openBook(source, chapters), {
    path: 'book',
    aircraft: [aircraft],
    edition: 'student',
    paper: 'A4',
    refused: () => undefined,
  });
  return documentHtml(book!.document());
}

/** The card of each aircraft, in the largest type. */
export async function handbookCards(): Promise<Record<string, string>> {
  const { withSoundAircraft: school } = await readSchool(lessons, date);
  const cards = rotation.map((aircraftId): [string, string] => {
    const request = { school: school!, aircraftId, approach: '180', choices: {}, date } as const;
    const input = makeCard({ ...request, paper: 'A5', version: '0.0.0-test' });
    return [aircraftId, documentHtml(cardDocument(cardBody(input), input, settings[0]!))];
  });
  return Object.fromEntries(cards);
}
