import { InvalidArgumentError } from 'commander';
import { parseQuantity, QuantityError, type QuantityKind } from '../units/quantity.ts';
import { parseWind, type Wind } from '../units/wind-text.ts';

/** A command-line value that is a quantity with its unit; commander reports what is wrong with it. */
export function quantityOption(kind: QuantityKind): (text: string) => number {
  return (text) => readOr(() => parseQuantity(text, kind));
}

/** A command-line value that is a wind, such as `210/12kt` or `calm`. */
export function windOption(text: string): Wind {
  return readOr(() => parseWind(text));
}

function readOr<T>(read: () => T): T {
  try {
    return read();
  } catch (error) {
    if (error instanceof QuantityError) throw new InvalidArgumentError(error.message);
    throw error;
  }
}

/** A command-line value that is a day, such as `2026-11-25`. */
export function dayOption(text: string): Date {
  const day = new Date(`${text}T00:00:00Z`);
  if (!/^\d{4}-\d\d-\d\d$/.test(text) || Number.isNaN(day.getTime())) {
    throw new InvalidArgumentError('write a day as `2026-11-25`');
  }
  return day;
}

/** Today in UTC, as `dayOption` gives a day. */
export function today(): Date {
  return new Date(`${new Date().toISOString().slice(0, 10)}T00:00:00Z`);
}

/** A command-line value that is a whole number. */
export function wholeNumberOption(text: string): number {
  if (!/^\d+$/.test(text)) throw new InvalidArgumentError('write a whole number such as `2`');
  return Number(text);
}
