/** The classes of aircraft, as an aircraft's file, a file of faults and a lesson name them. */
export const aircraftClasses = ['weight-shift', 'three-axis', 'powered-parachute', 'glider'] as const;
export type AircraftClassName = (typeof aircraftClasses)[number];

/** Whether a row of a file of faults is for a class of aircraft: a row that names no class is for all. */
export function isForClass(
  { class: classes }: { readonly class?: readonly AircraftClassName[] | undefined },
  of: AircraftClassName,
): boolean {
  return classes === undefined || classes.includes(of);
}
