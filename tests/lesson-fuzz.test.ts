import { readdirSync, readFileSync } from 'node:fs';
import { fileURLToPath } from 'node:url';
import { toHtml } from 'hast-util-to-html';
import { VFile } from 'vfile';
import { describe, expect, it } from 'vitest';
import type { PacketContext } from '../components/context.ts';
import { components } from '../components/list.ts';
import { contextOf, flyTrial } from '../components/trial-packet.ts';
import { parseLesson } from '../src/lesson/parse-lesson.ts';
import { renderLesson } from '../src/lesson/render-lesson.ts';

// Twenty thousand mangled lessons. Whatever was done to them, what comes out is messages of ours, each with a place
// that is in the lesson: never an exception.

const folder = fileURLToPath(new URL('../lessons/', import.meta.url));
const lessons = readdirSync(folder)
  .filter((name) => name.endsWith('.md'))
  .sort()
  .map((name) => readFileSync(folder + name, 'utf8'));
const examples = components.map(({ example }) => example);

/** The syntax of directives and of everything that can be around them, and what has no business in a lesson. */
const pieces = [
  ...[
    ':',
    '::',
    ':::',
    '::::',
    '{',
    '}',
    '[',
    ']',
    '(',
    ')',
    '](',
    '"',
    "'",
    '=',
    '#',
    '.',
    '\\',
    '`',
    '```',
    '~~~',
    '|',
    '>',
    '<',
  ],
  ...[
    '- ',
    '1. ',
    '* ',
    '*',
    '**',
    '_',
    '---',
    '\n---\n',
    '\n',
    '\n\n',
    '\r\n',
    '\r',
    '\t',
    '    ',
    '&',
    '&#x202e;',
    '&#0;',
    '<!--',
  ],
  ...[
    '-->',
    '<b>',
    '<script>',
    '![',
    '[^1]',
    '[^1]: ',
    '[a]: ',
    '__proto__=',
    'constructor',
    'null',
    '\0',
    '\ufeff',
    '\u202e',
  ],
  ...[
    '\ud83d',
    '\u{1f600}',
    '\u00a0',
    '\u0085',
    '\u2028',
    ':key[',
    ':for[',
    '::pattern',
    ':::caution',
    '{show=',
    '6:1',
    '10:30',
    '%',
    'é',
  ],
];

/** Numerical Recipes' linear congruential generator (Press et al., 2nd edition, section 7.1), from memory. */
function randomFrom(seed: number): (below: number) => number {
  let state = seed >>> 0;
  return (below) => {
    state = (Math.imul(state, 1664525) + 1013904223) >>> 0;
    return Math.floor((state / 2 ** 32) * below);
  };
}

type Random = ReturnType<typeof randomFrom>;

function pick<Item>(items: readonly Item[], random: Random): Item {
  return items[random(items.length)]!;
}

/** A stretch of a lesson from one line to another, sometimes after front matter and beside an example. */
function stretch(random: Random): string {
  const lines = pick(lessons, random).split('\n');
  const from = random(lines.length);
  const cut = lines.slice(from, from + 1 + random(7)).join('\n');
  const matter = random(4) === 0 ? '' : '---\ntitle: T\n---\n\n';
  const example = random(3) === 0 ? `\n\n${pick(examples, random)}` : '';
  return matter + cut + example;
}

function mangle(text: string, random: Random): string {
  const at = random(text.length + 1);
  const end = Math.min(text.length, at + random(30));
  switch (random(9)) {
    case 0:
      return text.slice(0, at) + text.slice(end);
    case 1:
    case 2:
    case 3:
      return text.slice(0, at) + pick(pieces, random) + text.slice(at);
    case 4:
      return text.slice(0, at) + text.slice(at, end).repeat(2 + random(4)) + text.slice(end);
    case 5: {
      const lines = text.split('\n');
      const [one, other] = [random(lines.length), random(lines.length)];
      [lines[one], lines[other]] = [lines[other]!, lines[one]!];
      return lines.join('\n');
    }
    case 6:
      return random(3) === 0 ? text.slice(0, at) : text;
    case 7:
      return text.slice(0, at) + stretch(random).slice(random(40), 40 + random(120)) + text.slice(end);
    default:
      return text.slice(0, at) + pick(examples, random) + text.slice(at);
  }
}

function mangled(text: string, random: Random): string {
  let result = text;
  for (let edits = 1 + random(6); edits > 0; edits -= 1) result = mangle(result, random);
  return result;
}

const context = contextOf(flyTrial());

/** What is not as it must be, in words; the seed makes the same lesson again. */
function faultIn(value: string, rendered: boolean): string | undefined {
  const file = new VFile({ path: 'fuzz.md', value });
  try {
    const lesson = parseLesson<PacketContext>(file, components);
    if (rendered) toHtml(renderLesson(lesson, context, file), { allowDangerousHtml: true });
  } catch (error) {
    return `threw ${(error as Error).stack}`;
  }
  const lines = value.split(/\r\n|\r|\n/);
  for (const { line, column, reason, source, ruleId } of file.messages) {
    const inside = line !== undefined && line >= 1 && line <= lines.length;
    // One column past the end of a line is where something missing would be; a byte order mark has no column.
    const onLine = inside && column !== undefined && column >= 1 && column <= lines[line - 1]!.length + 1;
    if (source !== 'chalkwing' || !ruleId || !reason || !onLine)
      return `said "${reason}" (${source}, ${ruleId}) at ${line}:${column}`;
  }
  return undefined;
}

function faultsOf(
  seeds: number,
  from: number,
  make: (random: Random) => string,
  rendered: (seed: number) => boolean,
) {
  const faults: string[] = [];
  for (let seed = from; seed < from + seeds; seed += 1) {
    const value = make(randomFrom(seed * 7919));
    const fault = faultIn(value, rendered(seed));
    if (fault !== undefined) faults.push(`seed ${seed}: ${fault}\n${JSON.stringify(value)}`);
  }
  return faults.slice(0, 5);
}

describe('mangled lessons', () => {
  // A test for every two thousand or so: none takes so long that it seems to hang.
  const starts = Array.from({ length: 11 }, (_, part) => part * 1_800);
  it.each(starts)('1,800 stretches from seed %i: messages of ours, each with its place', (from) => {
    const faults = faultsOf(
      1_800,
      from,
      (random) => mangled(stretch(random), random),
      (seed) => seed % 40 === 0,
    );
    expect(faults).toEqual([]);
  });

  it('200 whole ones as well', () => {
    const faults = faultsOf(
      200,
      1_000_000,
      (random) => mangled(pick(lessons, random), random),
      (seed) => seed % 50 === 0,
    );
    expect(faults).toEqual([]);
  });
});
