import { readFileSync } from 'node:fs';

/** A value that somebody else published; see README.md beside this file. */
export interface Published {
  readonly id: string;
  readonly topic: string;
  readonly quantity: string;
  readonly inputs: string | Readonly<Record<string, number | string>>;
  readonly value: number | readonly number[] | string;
  readonly unit: string;
  readonly tolerance: { readonly abs?: number; readonly rel?: number; readonly exact?: true };
  readonly status: 'FOUND' | 'MEMORY';
  readonly source: string;
  readonly note: string;
  readonly printedWrong?: true;
  /** What the document's own formula gives, where the printed figure is wrong. */
  readonly exact?: number;
  /** How a figure of the trade is to be read. An aircraft may not fit it, and is never tuned to fit. */
  readonly trade?: TradeReading;
}

type TradeReading = 'at most' | 'at least' | 'about' | 'between';

export const published: readonly Published[] = JSON.parse(
  readFileSync(new URL('published.json', import.meta.url), 'utf8'),
);

/** The row with an id. Throws where there is none. */
export function rowOf(id: string): Published {
  const row = published.find((one) => one.id === id);
  if (!row) throw new Error(`published.json has no row ${id}`);
  return row;
}

/** A number among a row's inputs. Throws where there is none. */
export function input(row: Published, name: string): number {
  const value = typeof row.inputs === 'object' ? row.inputs[name] : undefined;
  if (typeof value !== 'number') throw new Error(`${row.id} has no number ${name}`);
  return value;
}

/** A row's published numbers. Throws where they are words. */
export function numbersOf(row: Published): readonly number[] {
  const values = [row.value].flat();
  if (values.some((value) => typeof value !== 'number')) throw new Error(`${row.id} is not a number`);
  return values as number[];
}

/** How far our value may be from the row's; the rounding of binary fractions is not a difference. */
export function allowance({ tolerance }: Pick<Published, 'tolerance'>, value: number): number {
  const rounding = 1e-9 * Math.max(1, Math.abs(value));
  return (tolerance.abs ?? (tolerance.rel ?? 0) * Math.abs(value)) + rounding;
}
