import { describeKind, type QuantityKind } from '../units/quantity.ts';
import type { Sides } from '../units/sided-angle.ts';

/**
 * How a value is typed, in words for the author and in the terms of JSON Schema for the editor. An editor reads YAML
 * with YAML's own types, so a number without a unit reaches it as a number, where `fields.ts` gets the typed text. A
 * pattern knows signs and units but not ranges: the words give those.
 */
export interface WrittenForm {
  /** What belongs here: "a speed with its unit (kt, km/h, mph, m/s), 10 kt to 150 kt". */
  readonly takes: string;
  readonly type?: 'string' | readonly ('string' | 'number')[];
  /** For what is typed as text. */
  readonly pattern?: string;
  readonly enum?: readonly (string | number)[];
  readonly minimum?: number;
  readonly maximum?: number;
  readonly multipleOf?: number;
}

const unsigned = String.raw`(?:\d{1,3}(?:,\d{3})+|\d+)(?:\.\d+)?`;
const signed = String.raw`[+\-−]?\s*${unsigned}`;
/** Where the least possible value is above zero, a minus is wrong. */
const positive = String.raw`\+?\s*${unsigned}`;

export function quantityForm(kind: QuantityKind, low: string, high: string): WrittenForm {
  const { what, units } = describeKind(kind);
  return {
    takes: `${what} with its unit (${units.join(', ')}), ${low} to ${high}`,
    type: 'string',
    pattern: whole(`${Number.parseFloat(low) > 0 ? positive : signed}${unitPattern(kind)}`),
  };
}

/** A quantity, or a share of `ofWhat`. */
export function quantityOrShareForm(
  kind: QuantityKind,
  low: string,
  high: string,
  ofWhat: string,
): WrittenForm {
  const { takes } = quantityForm(kind, low, high);
  return {
    takes: `${takes}; or a share of ${ofWhat} in whole per cent, 1 % to 100 %`,
    type: 'string',
    pattern: whole(String.raw`${positive}(?:${unitPattern(kind)}|\s*%)`),
  };
}

/** Several quantities, with a space between them. */
export function quantityListForm(kind: QuantityKind, low?: string, high?: string): WrittenForm {
  const { what, units } = describeKind(kind);
  const range = low === undefined ? '' : `, each ${low} to ${high}`;
  const plural = `${what.replace(/^an? /, '')}s`;
  return {
    takes: `${plural} with their units (${units.join(', ')}), a space between them${range}`,
    type: 'string',
  };
}

/** A height of `low` or more. */
export function heightForm(low: string, high: string): WrittenForm {
  const form = quantityForm('length', low, high);
  const units = describeKind('length').units.join(', ');
  return { ...form, takes: `a height with its unit (${units}), ${low} or more` };
}

export const directionForm: WrittenForm = {
  takes: `a true direction with its unit (${describeKind('bearing').units.join(', ')}), 0 to 360 deg`,
  type: 'string',
  pattern: whole(`${positive}${unitPattern('bearing')}`),
};

export function sidedAngleForm(sides: Sides, range: string): WrittenForm {
  const letters = [...sides].map(anyCase).join('|');
  return {
    takes: `an angle with its unit and its side, ${range}`,
    type: 'string',
    pattern: whole(String.raw`${positive}${unitPattern('angle')}\s*(?:${letters})`),
  };
}

export const windForm: WrittenForm = {
  takes: `a wind: the true direction it blows from, a stroke, and its speed with its unit (${describeKind('speed').units.join(', ')}); or \`calm\``,
  type: 'string',
  pattern: whole(
    String.raw`(?:${anyCase('calm')}|\d+(?:\.\d+)?\s*(?:°|${anyCase('deg')})?\s*\/\s*${positive}${unitPattern('speed')})`,
  ),
};

export function numberForm(low: number, high: number): WrittenForm {
  return {
    takes: `a number without a unit, ${low} to ${high}`,
    type: ['number', 'string'],
    minimum: low,
    maximum: high,
    pattern: whole(low > 0 ? positive : signed),
  };
}

export function wholeNumberForm(low: number, high: number): WrittenForm {
  return { ...numberForm(low, high), takes: `a whole number, ${low} to ${high}`, multipleOf: 1 };
}

export function ratioForm(low: number, high: number): WrittenForm {
  const form = numberForm(low, high);
  const pattern = whole(String.raw`${positive}(?:\s*:\s*1)?`);
  return { ...form, takes: `a ratio, ${low} to ${high}; \`6.4\` and \`6.4:1\` are the same`, pattern };
}

/** A name such as `24` is text here, and a number to an editor. */
export const wordsForm: WrittenForm = { takes: 'words', type: ['string', 'number'], pattern: String.raw`\S` };

export function choiceForm(choices: readonly string[]): WrittenForm {
  const numbers = choices.filter((name) => /^\d+$/.test(name)).map(Number);
  return {
    takes: `${choices.length > 1 ? 'one of ' : ''}${choices.map((name) => `\`${name}\``).join(', ')}`,
    type: numbers.length > 0 ? ['string', 'number'] : 'string',
    enum: [...choices, ...numbers],
  };
}

/** Some of a few words, with a space or a comma between them. */
export function someOfForm(choices: readonly string[]): WrittenForm {
  const one = `(?:${choices.join('|')})`;
  return {
    takes: `one or more of ${choices.map((name) => `\`${name}\``).join(', ')}, a space between them`,
    type: 'string',
    pattern: whole(String.raw`${one}(?:[\s,]+${one})*`),
  };
}

function unitPattern(kind: QuantityKind): string {
  return String.raw`\s*(?:${describeKind(kind).units.map(anyCase).join('|')})`;
}

/** JSON Schema patterns have no flags; units are read in upper and lower case. */
function anyCase(text: string): string {
  return text.replace(/[a-z]/gi, (letter) => `[${letter.toLowerCase()}${letter.toUpperCase()}]`);
}

function whole(pattern: string): string {
  return String.raw`^\s*${pattern}\s*$`;
}
