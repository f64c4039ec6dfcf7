import type { Choice } from './exercise.ts';

/** A figure that a fault leads to; undefined where the fault leads to none. */
export interface FaultyFigure {
  readonly value: number | undefined;
  readonly fault: string;
}

/**
 * The figures of real faults, as wrong choices. One that is nearer than `gap` to the right figure or to an earlier
 * one is left out: nobody could tell which was meant. So is one that is not a positive number.
 */
export function wrongFigures(
  right: number,
  faulty: readonly FaultyFigure[],
  gap: number,
  print: (value: number) => string,
): Required<Choice>[] {
  const taken = [right];
  return faulty.flatMap(({ value, fault }) => {
    if (value === undefined || !Number.isFinite(value) || value <= 0) return [];
    if (taken.some((other) => Math.abs(other - value) < gap)) return [];
    taken.push(value);
    return [{ text: print(value), fault }];
  });
}
