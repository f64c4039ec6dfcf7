import { type ToldApart, tellingApart } from '../../../words/figures/telling-apart.ts';
import type { Aircraft } from '../../terms/aircraft.ts';
import type { Runway } from '../../terms/airfield.ts';
import type {
  Caution,
  Flown,
  Grade,
  KeyId,
  KeyPosition,
  Minimums,
  Phase,
  TrackSample,
} from '../../terms/plan.ts';

/** What the cautions look at: a flight, and what it was flown with. */
export interface Examined {
  readonly aircraft: Aircraft;
  readonly runway: Runway;
  readonly flown: Flown;
  readonly track: readonly TrackSample[];
  readonly keys: readonly KeyPosition[];
  /** Load factor with which the round-out is flown. */
  readonly pull: number;
  readonly minimums?: Minimums | undefined;
}

/** A caution before it is graded; with a grade where its code and size do not say it all. */
export type Found = Omit<Caution, 'grade'> & { readonly grade?: Grade | undefined };

/** The handbook that most limits of good practice come from. */
export const handbook = 'FAA-H-8083-3';

export const dataOf = ({ source }: Pick<Aircraft, 'source'>) => `aircraft data: ${source}`;

/** The stricter of a least value that is built in and the school's own, and where it comes from. */
export function stricter(
  builtIn: number,
  source: string,
  own: number | undefined,
): { limit: number; source: string } {
  return own !== undefined && own > builtIn + 1e-9
    ? { limit: own, source: "the school's own minimum" }
    : { limit: builtIn, source };
}

/** A value beside its limit, as a sentence says them: `8.2 kt` and `8.1 kt`, `46 degrees` and `45 degrees`. */
export function told(...asked: Parameters<typeof tellingApart>): ToldApart {
  const { value, limit, ...how } = tellingApart(...asked);
  return { value: spoken(value), limit: spoken(limit), ...how };
}

const spoken = (figure: string) => figure.replaceAll('\u00a0', ' ').replace('°', ' degrees');

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

/** The item of which a figure is least; undefined of none. */
export function leastOf<T>(items: readonly T[], figure: (item: T) => number): T | undefined {
  let [found, least]: [T | undefined, number] = [undefined, Number.POSITIVE_INFINITY];
  for (const item of items) {
    const value = figure(item);
    if (value < least) [found, least] = [item, value];
  }
  return found;
}
