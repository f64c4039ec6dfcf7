import { readFileSync } from 'node:fs';

/** One value that somebody else printed; see reference/README.md. */
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
  /** What the document's own formula gives, where the print is wrong. */
  readonly exact?: number;
}

export const published: readonly Published[] = JSON.parse(
  readFileSync(new URL('reference/published.json', import.meta.url), 'utf8'),
);

/** A number among a row's inputs. */
export function input(row: Published, name: string): number {
  const value = typeof row.inputs === 'object' ? row.inputs[name] : undefined;
  if (typeof value !== 'number') throw new Error(`${row.id} has no number ${name}`);
  return value;
}

/** How far a row lets us be from its value; rounding of binary fractions is not a difference. */
export function allowance({ tolerance }: Published, value: number): number {
  const rounding = 1e-9 * Math.max(1, Math.abs(value));
  return (tolerance.abs ?? (tolerance.rel ?? 0) * Math.abs(value)) + rounding;
}

/** What a test is called: quantity, inputs, source. */
export function title({ quantity, inputs, source, status }: Published): string {
  const given = typeof inputs === 'string' ? inputs : JSON.stringify(inputs).replaceAll('"', '');
  return `${quantity} ${given}: ${source}${status === 'MEMORY' ? ' (from memory)' : ''}`;
}
