import { beforeAll, describe, expect, it } from 'vitest';
import { documentHtml } from '../src/press/formats/document-html.ts';
import { documentText } from '../src/press/formats/text.ts';
import { buildLesson } from '../src/press/packet/build.ts';
import { readSchool } from '../src/school/read.ts';
import { tableRows } from './packet-school.ts';

const date = new Date('2031-05-06');
const plain = (words: string) => words.replace(/\s+/g, ' ');
let html: string;
let student: string;
let instructor: string;

beforeAll(async () => {
  const { withSoundAircraft: school } = await readSchool('lessons', date);
  const { packets } = await buildLesson({
    ...{ school: school!, lesson: 'power-off-180', aircraft: ['osier-15'], choices: {}, asked: {} },
    ...{ editions: ['student', 'instructor'], paper: 'A4', date, version: 'trial' },
  });
  html = documentHtml(packets[0]!.document);
  [student, instructor] = packets.map(({ document }) => documentText(document)) as [string, string];
}, 60_000);

describe('the packet as plain text', () => {
  it('begins with its title and what it is computed for, in lines of at most 78 signs', () => {
    expect(student).toMatch(/^The 180° power-off approach — Osier 15 · Fallow Reach 24 /);
    expect(student.indexOf('Aircraft: Osier 15')).toBeLessThan(student.indexOf('Objective\n---'));
    expect(student.split('\n').filter((line) => line.length > 78)).toEqual([]);
    expect(student).not.toMatch(/<\w|&#|\u00a0/);
  });

  it('has every figure of the key table', () => {
    const table = student.slice(student.indexOf('Key positions, 180°'));
    const rows = tableRows(html, /class="keys"/).slice(1);
    expect(rows.length).toBeGreaterThan(5);
    for (const [key, height, where, time] of rows) {
      const block = plain(table.split('\n\n').find((each) => each.startsWith(`${key}\n`))!);
      for (const figure of [height, where, time]) expect(block).toContain(plain(figure!));
    }
  });

  it('says the drawings in the words that they have in the HTML', () => {
    const descriptions = [...html.matchAll(/<desc[^>]*>([^<]*)<\/desc>/g)].map(([, said]) => plain(said!));
    expect(descriptions.length).toBeGreaterThan(1);
    for (const said of descriptions) expect(plain(student)).toContain(said);
  });

  it('keeps the answers to the instructor', () => {
    const right = [...instructor.matchAll(/^ *([a-d]) is right: (.*)$/gm)];
    expect(right.length).toBeGreaterThan(2);
    expect(instructor).toMatch(/ – right$/m);
    expect(instructor).toContain('For the instructor:');
    expect(student).not.toMatch(/is right:|– right$|Worked\.|Wrong:|For the instructor/m);
  });
});
