import type { Root } from 'mdast';
import { SKIP, visit } from 'unist-util-visit';
import { parseQuantity } from '../units/quantity.ts';

/** A length or speed that the author typed in the running text. */
export interface TypedQuantity {
  /** As typed. */
  readonly text: string;
  readonly kind: 'length' | 'speed';
  /** m or m/s. */
  readonly value: number;
  readonly unit: string;
  /** Offsets into the lesson's source. */
  readonly start: number;
  readonly end: number;
}

const units: Readonly<Record<string, string>> = {
  ft: 'ft',
  feet: 'ft',
  foot: 'ft',
  m: 'm',
  metres: 'm',
  meters: 'm',
  km: 'km',
  NM: 'NM',
  kt: 'kt',
  knots: 'kt',
  'km/h': 'km/h',
  mph: 'mph',
  'm/s': 'm/s',
};
const speeds = new Set(['kt', 'km/h', 'mph', 'm/s']);

const longestFirst = Object.keys(units).sort((a, b) => b.length - a.length);
// Not the speed of a wind such as 210/12kt, a ratio, the second number of a range, or a rate such as ft/min.
const quantity = new RegExp(
  `(?<![\\p{L}\\d.,:/±–-])(\\d{1,3}(?:,\\d{3})+(?:\\.\\d+)?|\\d+(?:\\.\\d+)?)[ \\u00a0-]?(${longestFirst.join('|')})(?![\\p{L}\\d/])`,
  'gu',
);
/** What comes before a tolerance or a step, which is a rule of the lesson and not a figure of the flight. */
const tolerance = /(?:within|every|±|by|less than|more than)\s+$/iu;

/** Every length and speed in the text of a lesson; code and the brackets of directives are not text. */
export function typedQuantities(tree: Root, source: string): TypedQuantity[] {
  const found: TypedQuantity[] = [];
  visit(tree, (node) => {
    if (node.type === 'textDirective' && node.name !== 'for') return SKIP;
    const from = node.position?.start.offset;
    const to = node.position?.end.offset;
    if (node.type !== 'text' || from === undefined || to === undefined) return undefined;
    // The source itself is read: a character reference in it would shift the places of the text.
    const written = source.slice(from, to);
    for (const match of written.matchAll(quantity)) {
      if (tolerance.test(written.slice(0, match.index))) continue;
      const unit = units[match[2]!]!;
      const kind = speeds.has(unit) ? 'speed' : 'length';
      const start = from + match.index;
      found.push({
        text: match[0],
        kind,
        value: parseQuantity(`${match[1]} ${unit}`, kind),
        unit,
        start,
        end: start + match[0].length,
      });
    }
    return undefined;
  });
  return found;
}
