import { InvalidArgumentError } from 'commander';
import { parseQuantity, QuantityError, type QuantityKind } from '../units/quantity.ts';
import { parseWind, type Wind } from '../units/wind-text.ts';
import type { Weather, WeatherOptions } from './weather.ts';

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

/** The options that stand for settings of a lesson, and are named in a message on one of them. */
export interface SettingOptions extends WeatherOptions {
  readonly aircraft?: readonly string[];
  readonly airfield?: string;
  readonly runway?: string;
  readonly circuit?: string;
  readonly power?: string;
}

/**
 * By which option each setting was asked for, as it was typed where that is a name; those left to the lesson are not in it.
 * `weather` is what the options and the METAR together give.
 */
export function askedBy(options: SettingOptions, weather: Weather): Record<string, string> {
  const asked: Record<string, string> = {};
  for (const key of ['airfield', 'runway', 'circuit', 'power'] as const)
    if (options[key] !== undefined) asked[key] = `--${key} ${options[key]}`;
  if (options.aircraft !== undefined) asked.aircraft = `--aircraft ${options.aircraft.join(' ')}`;
  for (const key of ['wind', 'gust', 'temperature', 'qnh'] as const)
    if (weather[key] !== undefined) asked[key] = options[key] === undefined ? '--metar' : `--${key}`;
  return asked;
}
