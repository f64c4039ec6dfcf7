import type { AircraftClass } from '../flight/terms/aircraft-class.ts';

/** Whether a row of a file of faults is for a class of aircraft: a row that names no class is for all. */
export function isForClass(
  { class: classes }: { readonly class?: readonly AircraftClass[] | undefined },
  of: AircraftClass,
): boolean {
  return classes === undefined || classes.includes(of);
}
