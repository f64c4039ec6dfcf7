import { createHash } from 'node:crypto';
import { readFile, rm } from 'node:fs/promises';
import { join } from 'node:path';
import { z } from 'zod';
import type { FindPicture, FoundPicture } from '../../lesson/pictures.ts';
import type { Format } from '../formats/format.ts';
import type { WholeFile } from './write-whole.ts';

/*
 * What was printed from what: one small file for each packet, in a hidden folder of the output folder. Builds that
 * run at the same time, or that each print a shard, never write the same one unless they print the same packet.
 */

const fileMark = z.object({ bytes: z.number(), sha256: z.string() });

const message = z.object({
  /** Name of the file that it is about. */
  file: z.string(),
  reason: z.string(),
  rule: z.string().optional(),
  source: z.string().optional(),
  start: z.object({ line: z.number(), column: z.number(), offset: z.number().optional() }).optional(),
  end: z.object({ line: z.number(), column: z.number(), offset: z.number().optional() }).optional(),
  /** A note, not a warning. */
  note: z.boolean().optional(),
});

const entry = z.object({
  inputs: z.string(),
  date: z.string(),
  browser: z.string().optional(),
  /** By the endings of their names. */
  files: z.record(z.string(), fileMark),
  messages: z.array(message),
  /** Those of the plans in it, so that they are counted again without a flight. */
  grades: z.array(z.enum(['not-to-be-flown', 'beyond-good-practice', 'worth-knowing', 'sound'])),
  /** A mark of each picture in it, by its path from the school's folder. */
  pictures: z.record(z.string(), z.string()),
});

/** A warning of a packet, kept so that it can be repeated when the packet is not printed again. */
export type KeptMessage = z.output<typeof message>;

/** A packet as it was printed. */
export type LedgerEntry = z.output<typeof entry>;

/** A file of a packet. */
export interface WrittenFile {
  readonly ending: string;
  readonly content: string | Uint8Array;
}

/** What a packet would be printed from now. */
export interface Inputs {
  /** Covers everything that goes in, except the date and the browser. */
  readonly key: string;
  /** As `2026-11-25`; undefined where any will do: a packet whose inputs have not changed keeps its day. */
  readonly date: string | undefined;
  /** Undefined where there is none: then it does not matter which one printed. */
  readonly browser: string | undefined;
  /** Looks for its pictures as they are now. */
  readonly findPicture: FindPicture;
}

const folder = '.printed';

/** Where the entry of a packet is; `path` is the packet's, without an ending. */
export function ledgerPath(out: string, path: string): string {
  return join(out, folder, `${path}.json`);
}

/** The entry to be written with a packet, as the last of its files. */
export function ledgerFile(
  out: string,
  path: string,
  from: Omit<LedgerEntry, 'files'>,
  written: readonly WrittenFile[],
): WholeFile {
  const files = written.map(({ ending, content }) => [ending, markOf(Buffer.from(content))]);
  const made = { ...from, files: Object.fromEntries(files) };
  return {
    path: ledgerPath(out, path),
    content: `${JSON.stringify(made satisfies LedgerEntry, null, 1)}\n`,
  };
}

/** The entry of a packet that need not be printed again: the same inputs, and a file of every format as it was written. */
export async function standing(
  out: string,
  path: string,
  { key, date, browser, findPicture }: Inputs,
  formats: readonly Pick<Format, 'ending'>[],
): Promise<LedgerEntry | undefined> {
  const found = await readEntry(ledgerPath(out, path));
  if (found?.inputs !== key) return undefined;
  if (date !== undefined && found.date !== date) return undefined;
  if (browser !== undefined && found.browser !== browser) return undefined;
  for (const [picture, mark] of Object.entries(found.pictures)) {
    const now = findPicture(picture);
    if ('wrong' in now || pictureMark(now) !== mark) return undefined;
  }
  const all = await Promise.all(
    formats.map(({ ending }) => stands(join(out, `${path}.${ending}`), found.files[ending])),
  );
  return all.every(Boolean) ? found : undefined;
}

/** Removes what an earlier build wrote in a format that is no longer written: nothing would bring it up to date. */
export async function removeDropped(
  out: string,
  path: string,
  formats: readonly Pick<Format, 'ending'>[],
): Promise<void> {
  const found = await readEntry(ledgerPath(out, path));
  for (const [ending, mark] of Object.entries(found?.files ?? {})) {
    const file = join(out, `${path}.${ending}`);
    const isDropped = !formats.some((format) => format.ending === ending);
    if (isDropped && (await stands(file, mark))) await rm(file, { force: true }).catch(() => undefined);
  }
}

/** The marks of pictures, as an entry has them. */
export function pictureMarks(pictures: readonly FoundPicture[]): LedgerEntry['pictures'] {
  return Object.fromEntries(pictures.map((picture) => [picture.path, pictureMark(picture)]));
}

function pictureMark({ src }: FoundPicture): string {
  return createHash('sha256').update(src).digest('hex');
}

async function readEntry(path: string): Promise<LedgerEntry | undefined> {
  try {
    return entry.safeParse(JSON.parse(await readFile(path, 'utf8'))).data;
  } catch {
    return undefined;
  }
}

async function stands(path: string, was: z.output<typeof fileMark> | undefined): Promise<boolean> {
  if (was === undefined) return false;
  const bytes = await readFile(path).catch(() => undefined);
  return bytes?.length === was.bytes && markOf(bytes).sha256 === was.sha256;
}

function markOf(bytes: Uint8Array): z.output<typeof fileMark> {
  return { bytes: bytes.length, sha256: createHash('sha256').update(bytes).digest('hex') };
}
