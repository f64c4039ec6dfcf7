import { z } from 'zod';
import { didYouMean } from '../messages/nearest-name.ts';
import {
  parseNumber,
  parseQuantity,
  parseRatio,
  QuantityError,
  type QuantityKind,
} from '../units/quantity.ts';
import { parseSidedAngle, type Sides } from '../units/sided-angle.ts';
import {
  choiceForm,
  directionForm,
  numberForm,
  quantityForm,
  quantityOrShareForm,
  ratioForm,
  sidedAngleForm,
  type WrittenForm,
  wordsForm,
} from './written-form.ts';

// The building blocks of every school file. A value is always read from the text that was typed. Where a value is
// absent, the issue's message is the bare example: `checkYaml` builds the sentence around it, because it knows the
// key and the place.

/** A value of a school file, read from text. `read` throws QuantityError for what it cannot accept. */
export type Field<T> = z.ZodType<T, string>;

/** True where nothing was typed. */
export function isAbsent(input: unknown): boolean {
  return input === undefined || input === null || input === '';
}

function field<T>(example: string, read: (text: string) => T, form: WrittenForm): Field<T> {
  return z
    .string({
      error: ({ input }) => (isAbsent(input) ? example : `here belongs one value such as \`${example}\``),
    })
    .transform((text, context) => {
      try {
        if (text.trim() !== '') return read(text.trim());
        context.addIssue({ code: 'custom', message: example });
      } catch (error) {
        if (!(error instanceof QuantityError)) throw error;
        context.addIssue({ code: 'custom', message: error.message });
      }
      return z.NEVER;
    })
    .meta({ sample: example, ...form }) as unknown as Field<T>;
}

/** Between what a value may lie, and how that is written. */
export interface Limits {
  readonly low: number;
  readonly high: number;
  readonly range: string;
}

/** A reader that refuses what is outside its limits, with `range` and `example` in its message. */
export function within({ low, high, range }: Limits, example: string, read: (text: string) => number) {
  return (text: string): number => {
    const value = read(text);
    // A limit typed in another unit may be off by the last bit.
    const slack = 1e-9 * Math.max(Math.abs(low), Math.abs(high));
    if (value >= low - slack && value <= high + slack) return value;
    throw new QuantityError(
      `\`${text}\` is outside what is possible here (${range}): write it as \`${example}\``,
    );
  };
}

/** A quantity with its unit, in SI units; the limits are written as an author would write them. */
export function quantity(kind: QuantityKind, low: string, high: string, example: string): Field<number> {
  const read = (text: string) => parseQuantity(text, kind, example);
  const form = quantityForm(kind, low, high);
  return field(example, within(limitsBy(read, low, high), example, read), form);
}

/** Limits that are numbers without a unit. */
function between(low: number, high: number): Limits {
  return { low, high, range: `${low} to ${high}` };
}

/** Limits that are written as an author writes the values. */
export function limitsBy(read: (text: string) => number, low: string, high: string): Limits {
  return { low: read(low), high: read(high), range: `${low} to ${high}` };
}

/** A share of a limit that is known elsewhere: 0.5 for `50 %`. */
export interface Share {
  readonly share: number;
}

/** A quantity as `quantity` reads it, or a share of `ofWhat` in whole per cents. */
export function quantityOrShare(
  kind: QuantityKind,
  [low, high]: readonly [low: string, high: string],
  example: string,
  ofWhat: string,
): Field<number | Share> {
  const share = '50 %';
  const readAny = (text: string) => parseQuantity(text, kind, example);
  const readQuantity = within(limitsBy(readAny, low, high), example, readAny);
  const perCents = { low: 1, high: 100, range: '1 % to 100 %' };
  const readPerCent = within(perCents, share, (text) => parseNumber(text.slice(0, -1), share));
  const read = (text: string): number | Share => {
    if (text.endsWith('%')) {
      const perCent = readPerCent(text);
      if (Number.isInteger(perCent)) return { share: perCent / 100 };
      throw new QuantityError(`\`${text}\`: write whole per cent, such as \`${share}\``);
    }
    try {
      return readQuantity(text);
    } catch (error) {
      if (!(error instanceof QuantityError)) throw error;
      throw new QuantityError(`${error.message}, or as a share of ${ofWhat}, \`${share}\``);
    }
  };
  return field(share, read, quantityOrShareForm(kind, low, high, ofWhat));
}

/** A direction of 0 to 360 degrees true, in rad. */
export function direction(example: string): Field<number> {
  return field(example, (text) => parseQuantity(text, 'bearing', example), directionForm);
}

/** An angle with its side of zero (`2 deg W`), in rad. */
export function sidedAngle(sides: Sides, limit: number, example: string): Field<number> {
  const size = (limit * Math.PI) / 180;
  const range = `up to ${limit} deg ${sides[0]} or ${sides[1]}`;
  return field(
    example,
    within({ low: -size, high: size, range }, example, (text) => parseSidedAngle(text, sides)),
    sidedAngleForm(sides, range),
  );
}

/** A number without a unit. */
export function number(low: number, high: number, example: string): Field<number> {
  const read = (text: string) => parseNumber(text, example);
  return field(example, within(between(low, high), example, read), numberForm(low, high));
}

/** A glide ratio, `6.4` or `6.4:1`. */
export function ratio(low: number, high: number, example: string): Field<number> {
  return field(example, within(between(low, high), example, parseRatio), ratioForm(low, high));
}

/** Words; never empty. */
export function words(example: string): Field<string> {
  return field(example, (text) => text, wordsForm);
}

/** Anything that `read` makes sense of; `form` says how it is typed. */
export function parsed<T>(example: string, read: (text: string) => T, form: WrittenForm): Field<T> {
  return field(example, read, form);
}

/** One of a few words. */
export function choice<const Choice extends string>(...choices: readonly Choice[]): Field<Choice> {
  const read = (text: string) => {
    const found = choices.find((name) => name === text);
    if (found !== undefined) return found;
    const known = choices.map((name) => `\`${name}\``).join(', ');
    throw new QuantityError(`\`${text}\` is none of ${known}${didYouMean(text, choices)}`);
  };
  return field(choices[0]!, read, choiceForm(choices));
}

/** A section with these keys and no others. `example` is a section as it may be typed on one line. */
export function section<Shape extends z.ZodRawShape>(shape: Shape, example: string) {
  const known = Object.keys(shape);
  const list = known.map((key) => `\`${key}\``).join(', ');
  return z.strictObject(shape, {
    error: (issue) => {
      // One line for each key: `checkYaml` gives each its own place.
      if (issue.code === 'unrecognized_keys') {
        return issue.keys.map((key: string) => `${didYouMean(key, known)} (known here: ${list})`).join('\n');
      }
      return isAbsent(issue.input) ? example : `here belong keys and values such as \`${example}\``;
    },
  });
}

/** A list; `example` is a list as it may be typed on one line. */
export function list<Item extends z.ZodType>(item: Item, example: string, atLeast = 0) {
  return z
    .array(item, {
      error: ({ input }) => (isAbsent(input) ? example : `here belongs a list such as \`${example}\``),
    })
    .min(atLeast, { error: `the list needs at least ${atLeast}, such as \`${example}\`` });
}
