import type { AircraftClass } from '../flight/terms/aircraft-class.ts';

/** Whether a row of a table of faults is for a class of aircraft: one that names none is for all. */
export function isForClass(
  { class: classes }: { readonly class?: readonly AircraftClass[] | undefined },
  of: AircraftClass,
): boolean {
  return classes === undefined || classes.includes(of);
}
