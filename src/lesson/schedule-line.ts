/** What one item of a schedule says: how long, and what is done. */
export interface ScheduleLine {
  readonly minutes: number;
  /** Where in the text the description of what is done begins. */
  readonly textAt: number;
}

/** The beginning of an item of a schedule: `10 min: what is done`. Undefined where the text does not begin like that. */
export function scheduleLine(text: string): ScheduleLine | undefined {
  const found = /^\s*(\d{1,3})\s*min\s*:\s*/u.exec(text);
  return found && Number(found[1]) > 0 ? { minutes: Number(found[1]), textAt: found[0].length } : undefined;
}

/** What to type where `scheduleLine` finds nothing. */
export const scheduleAdvice =
  'begin every item with its whole minutes and a colon, such as `- 10 min: briefing`';
