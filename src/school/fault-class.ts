/** The classes of aircraft that a row of a table of faults can be for. */
export const faultClasses = ['weight-shift', 'three-axis', 'powered-parachute', 'glider'] as const;
export type FaultClass = (typeof faultClasses)[number];

/** Whether a row is for a class of aircraft: one that names none is for all. */
export function isForClass(
  { class: classes }: { readonly class?: readonly FaultClass[] | undefined },
  of: FaultClass,
): boolean {
  return classes === undefined || classes.includes(of);
}
