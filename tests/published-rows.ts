import type { Published } from '../src/checks/published.ts';

export type { Published };

/** How far our value may be from the row's; the rounding of binary fractions is not a difference. */
export function allowance({ tolerance }: Published, value: number): number {
  const rounding = 1e-9 * Math.max(1, Math.abs(value));
  return (tolerance.abs ?? (tolerance.rel ?? 0) * Math.abs(value)) + rounding;
}

/** What a test is called: quantity, inputs, source. */
export function title({ quantity, inputs, source, status }: Published): string {
  const given = typeof inputs === 'string' ? inputs : JSON.stringify(inputs).replaceAll('"', '');
  return `${quantity} ${given}: ${source}${status === 'MEMORY' ? ' (from memory)' : ''}`;
}
