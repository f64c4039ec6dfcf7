import type { Aircraft } from '../../terms/aircraft.ts';
import type { Runway } from '../../terms/airfield.ts';
import type { LimitSource } from '../../terms/caution.ts';
import type { KeyId } from '../../terms/key.ts';
import type { Flown, KeyPosition, Minimums, Phase, TrackSample } from '../../terms/plan.ts';

/** What the cautions look at: a flight, and what it was flown with. */
export interface Examined {
  readonly aircraft: Aircraft;
  readonly runway: Runway;
  readonly flown: Flown;
  readonly track: readonly TrackSample[];
  readonly keys: readonly KeyPosition[];
  /** The load factor of the round-out. */
  readonly pull: number;
  readonly minimums?: Minimums | undefined;
}

/** The stricter of a built-in least value and the school's own, and where it comes from. */
export function stricter(
  builtIn: number,
  source: LimitSource,
  own: number | undefined,
): { limit: number; source: LimitSource } {
  return own !== undefined && own > builtIn + 1e-9
    ? { limit: own, source: 'school-minimum' }
    : { limit: builtIn, source };
}

/** Samples before the round-out: what comes after is meant to come near the stall. */
export const beforeRoundOut = ({ phase }: Pick<TrackSample, 'phase'>) =>
  phase !== 'round-out' && phase !== 'hold-off';

const keyOfPhase: Readonly<Record<Phase, KeyId>> = {
  overhead: 'overhead',
  circle: 'overhead',
  downwind: 'downwind-key',
  'base-turn': 'base-turn',
  base: 'base-key',
  'final-turn': 'final-turn',
  final: 'final',
  'round-out': 'touchdown',
  'hold-off': 'touchdown',
};

/** The key position of a leg of the flight; undefined where the flight has none there. */
export function keyAtPhase(phase: Phase, keys: readonly KeyPosition[]): KeyId | undefined {
  return keys.find(({ id }) => id === keyOfPhase[phase])?.id;
}

/** The item with the least figure; undefined for an empty list. */
export function leastOf<T>(items: readonly T[], figure: (item: T) => number): T | undefined {
  let [found, least]: [T | undefined, number] = [undefined, Number.POSITIVE_INFINITY];
  for (const item of items) {
    const value = figure(item);
    if (value < least) [found, least] = [item, value];
  }
  return found;
}
