import { availableParallelism } from 'node:os';
import { InvalidArgumentError } from 'commander';
import { type PaperName, papers } from '../press/paper/paper.ts';
import { parseShard, type Shard } from '../press/printing/shard.ts';
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

/** The options that replace settings of a lesson, and are named in a message about one of them. */
export interface SettingOptions extends WeatherOptions {
  readonly aircraft?: readonly string[];
  readonly airfield?: string;
  readonly runway?: string;
  readonly circuit?: string;
  readonly power?: string;
}

/**
 * Which option asked for each setting, as it was typed where that is a name; settings left to the lesson are not
 * included.
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

/** One of several winds, with a name for the folder of its packets: `wind-210-12kt`. */
export interface NamedWind {
  readonly wind: Wind;
  readonly text: string;
  readonly folder: string;
}

/** A command-line value that may be given again, each time a wind. The same wind twice counts once. */
export function windsOption(text: string, earlier: readonly NamedWind[] = []): NamedWind[] {
  const wind = windOption(text);
  const isSame = (other: NamedWind) => other.wind.from === wind.from && other.wind.speed === wind.speed;
  if (earlier.some(isSame)) return [...earlier];
  // What is dropped here does not change the wind, so two winds never share a folder.
  const name = text
    .toLowerCase()
    .replace(/\s|°|deg/g, '')
    .replace(/[^a-z\d.]+/g, '-');
  return [...earlier, { wind, text: text.trim(), folder: `wind-${name}` }];
}

/** A command-line value that may be given again: a paper, or `both`. */
export function papersOption(text: string, earlier: readonly PaperName[] = []): PaperName[] {
  const names = Object.keys(papers) as PaperName[];
  const asked = text.toLowerCase() === 'both' ? names : names.filter((name) => name === text);
  if (asked.length === 0) {
    throw new InvalidArgumentError(`write ${names.map((name) => `\`${name}\``).join(', ')} or \`both\``);
  }
  return [...new Set([...earlier, ...asked])];
}

/** How many pages are printed at once unless told otherwise: more gain nothing, and each takes memory. */
export const usualJobs = Math.max(1, Math.min(availableParallelism(), 4));

const mostJobs = 32;

/** A command-line value that is a number of pages to print at once. */
export function jobsOption(text: string): number {
  const jobs = /^\d+$/.test(text) ? Number(text) : 0;
  if (jobs < 1 || jobs > mostJobs)
    throw new InvalidArgumentError(`write how many to print at once, 1 to ${mostJobs}, such as \`2\``);
  return jobs;
}

/** A command-line value that is a part of the packets, such as `2/4`. */
export function shardOption(text: string): Shard {
  const shard = parseShard(text);
  if (!shard)
    throw new InvalidArgumentError('write which part of how many, such as `2/4` for the second of four');
  return shard;
}
