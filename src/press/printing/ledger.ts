import { createHash } from 'node:crypto';
import { readFile } from 'node:fs/promises';
import { join } from 'node:path';
import { z } from 'zod';
import type { FindPicture, FoundPicture } from '../../lesson/pictures.ts';
import type { WholeFile } from './write-whole.ts';

/*
 * What was printed from what: one small file a packet, in a hidden folder of the output folder. Builds that run at once,
 * or that each print a shard, never write the same one unless they print the same packet.
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
  /** A note, and no warning. */
  note: z.boolean().optional(),
});

const entry = z.object({
  inputs: z.string(),
  date: z.string(),
  browser: z.string().optional(),
  html: fileMark,
  pdf: fileMark,
  messages: z.array(message),
  /** Of the plans in it, so that they are counted again without a flight. */
  grades: z.array(z.enum(['not-to-be-flown', 'beyond-good-practice', 'worth-knowing', 'sound'])),
  /** A mark of each picture in it, by its path from the school's folder. */
  pictures: z.record(z.string(), z.string()),
});

/** One warning of a packet, kept so that it is said again when the packet is not printed again. */
export type KeptMessage = z.output<typeof message>;

/** A packet as it was printed. */
export type LedgerEntry = z.output<typeof entry>;

/** What a packet would be printed from now. */
export interface Inputs {
  /** Of everything that enters but the date and the browser. */
  readonly key: string;
  /** As `2026-11-25`; undefined where any will do: a packet whose inputs stay keeps the day of its inputs. */
  readonly date: string | undefined;
  /** Undefined where none is there: then it does not matter which it was. */
  readonly browser: string | undefined;
  /** Looks for its pictures as they are now. */
  readonly findPicture: FindPicture;
}

const folder = '.printed';

/** Where the entry of a packet lies; `path` is the packet's, without an ending. */
export function ledgerPath(out: string, path: string): string {
  return join(out, folder, `${path}.json`);
}

/** The entry to be written with a packet, as the last of its files. */
export function ledgerFile(
  out: string,
  path: string,
  from: Omit<LedgerEntry, 'html' | 'pdf'>,
  printed: { readonly html: string; readonly pdf: Uint8Array },
): WholeFile {
  const made = { ...from, html: markOf(Buffer.from(printed.html)), pdf: markOf(printed.pdf) };
  return {
    path: ledgerPath(out, path),
    content: `${JSON.stringify(made satisfies LedgerEntry, null, 1)}\n`,
  };
}

/** The entry of a packet that need not be printed again: same inputs, and both files as they were written. */
export async function standing(
  out: string,
  path: string,
  { key, date, browser, findPicture }: Inputs,
): Promise<LedgerEntry | undefined> {
  const found = await readEntry(ledgerPath(out, path));
  if (found?.inputs !== key) return undefined;
  if (date !== undefined && found.date !== date) return undefined;
  if (browser !== undefined && found.browser !== browser) return undefined;
  for (const [picture, mark] of Object.entries(found.pictures)) {
    const now = findPicture(picture);
    if ('wrong' in now || pictureMark(now) !== mark) return undefined;
  }
  const both = await Promise.all([
    stands(join(out, `${path}.html`), found.html),
    stands(join(out, `${path}.pdf`), found.pdf),
  ]);
  return both.every(Boolean) ? found : undefined;
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

async function stands(path: string, was: z.output<typeof fileMark>): Promise<boolean> {
  const bytes = await readFile(path).catch(() => undefined);
  return bytes?.length === was.bytes && markOf(bytes).sha256 === was.sha256;
}

function markOf(bytes: Uint8Array): z.output<typeof fileMark> {
  return { bytes: bytes.length, sha256: createHash('sha256').update(bytes).digest('hex') };
}
