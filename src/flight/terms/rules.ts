import type { RangeOf, RequestReason } from './errors.ts';

// What a part of a request must be: rules, and records and lists of them.

/** What is wrong with a value: where in it (empty for the value itself), and why. */
export interface Fault {
  readonly path: string;
  readonly reason: RequestReason;
}

/**
 * Undefined where the value is right. The path is put together only for a fault, because requests are checked by the
 * thousand.
 */
export type Rule = (value: unknown) => Fault | undefined;

/** A finite number within a range. */
export function number(low: number, high: number, of: RangeOf = 'number'): Rule {
  const fault: Fault = { path: '', reason: { code: 'out-of-range', of, low, high } };
  return (value) => (typeof value === 'number' && value >= low && value <= high ? undefined : fault);
}

export function wholeNumber(low: number, high: number): Rule {
  const inRange = number(low, high, 'whole-number');
  return (value) => inRange(Number.isInteger(value) ? value : Number.NaN);
}

export const text: Rule = (value) =>
  typeof value === 'string' ? undefined : { path: '', reason: { code: 'not-a-text' } };

export const yesOrNo: Rule = (value) =>
  typeof value === 'boolean' ? undefined : { path: '', reason: { code: 'not-yes-or-no' } };

export function oneOf(...words: readonly string[]): Rule {
  const fault: Fault = { path: '', reason: { code: 'none-of', words } };
  return (value) => (typeof value === 'string' && words.includes(value) ? undefined : fault);
}

export function optional(rule: Rule): Rule {
  return (value) => (value === undefined ? undefined : rule(value));
}

export function record(shape: Readonly<Record<string, Rule>>): Rule {
  const entries = Object.entries(shape);
  const fault: Fault = { path: '', reason: { code: 'not-a-record', keys: Object.keys(shape) } };
  return (value) => {
    if (typeof value !== 'object' || value === null || Array.isArray(value)) return fault;
    for (const [key, rule] of entries) {
      const found = rule((value as Record<string, unknown>)[key]);
      if (found) return within(key, found);
    }
    return undefined;
  };
}

export function listOf(rule: Rule, least = 0): Rule {
  const fault: Fault = { path: '', reason: { code: 'not-a-list', least } };
  return (value) => {
    if (!Array.isArray(value) || value.length < least) return fault;
    for (const [i, item] of value.entries()) {
      const found = rule(item);
      if (found) return within(String(i), found);
    }
    return undefined;
  };
}

function within(key: string, { path, reason }: Fault): Fault {
  return { path: path === '' ? key : `${key}.${path}`, reason };
}
