import type { KeyId } from './key.ts';

/**
 * How grave a caution is. `not-to-be-flown`: it can hurt, and no packet is printed. `beyond-good-practice`: past a
 * limit that a careful pilot keeps to. `worth-knowing`: unusual, and no more.
 */
export type Grade = 'not-to-be-flown' | 'beyond-good-practice' | 'worth-knowing';

/** The gravest grade of a plan's cautions; `sound` where it has none. */
export type PlanGrade = Grade | 'sound';

/** Where a limit comes from: data of the aircraft or the airfield, the school, what the plan itself flew, or a publication. */
export type LimitSource =
  | 'aircraft'
  | 'airfield'
  | 'landing-roll'
  | 'school-minimum'
  | 'school-limit'
  | 'flown'
  | 'screen-height'
  | 'sideways-clearance'
  | 'power-off-approaches'
  | 'usual-key-heights'
  | 'usual-base-turn'
  | 'aim-on-the-runway'
  | 'medium-bank'
  | 'approach-margin'
  | 'turning-margin'
  | 'load-at-stall'
  | 'gust-allowance'
  | 'usual-tailwind';

/** What the wind's limits allow: the most wind from the same direction that passes none, m/s, gusts counted. */
export interface WithinWinds {
  readonly most: number;
}

/** The spot moved along the runway, m: farther in, or nearer the landing end. */
export interface MovedSpot {
  readonly spot: 'farther-in' | 'nearer-end';
  readonly by: number;
}

/** No place for the spot works: the runway is too short for this landing. */
export interface RunwayTooShort {
  readonly tooShort: true;
}

/** What each caution has to say besides its value and its limit. `remedy`: what would be flyable. SI, rad. */
export interface CautionFacts {
  'beyond-reach': {
    /**
     * The spot is made from this start height (m), or in this wind from the same direction (m/s), each alone; both
     * are left out where neither works.
     */
    readonly remedy: { readonly height?: number | undefined; readonly wind?: number | undefined };
  };
  'wind-over-glide': { readonly leg: 'downwind' | 'base' | 'final' };
  'obstacle-clearance': {
    /** Its name, as in the airfield's data. */
    readonly obstacle: string;
    readonly how: 'met' | 'above' | 'beside';
    /**
     * A higher path (by how many m, and its height at the nearest key), or the spot farther in. Given where the path
     * meets the obstacle.
     */
    readonly remedy?:
      | MovedSpot
      | {
          readonly higher: number;
          readonly near?: { readonly key: KeyId; readonly height: number } | undefined;
        }
      | undefined;
  };
  'stall-margin': {
    /**
     * The most bank (rad) that keeps the margin; where that is too little for a turn, the least speed (m/s EAS) that
     * keeps it in this one.
     */
    readonly remedy: { readonly bank: number } | { readonly eas: number };
  };
  slow: {
    /** The least speed that keeps the margin, m/s EAS, of the glide or of final. */
    readonly remedy: { readonly eas: number; readonly of: 'glide' | 'approach' };
  };
  'approach-speed-not-reached': Record<never, never>;
  'bank-over-limit': { readonly turn: 'circle' | 'turns' };
  'bank-over-medium': { readonly turn: 'circle' | 'turns' };
  'wind-over-limit': { readonly inGusts: boolean; readonly remedy: WithinWinds };
  'crosswind-over-limit': { readonly inGusts: boolean; readonly remedy: WithinWinds };
  tailwind: { readonly inGusts: boolean; readonly remedy: WithinWinds };
  gust: {
    /** m/s: how much the gusts are above the wind. */
    readonly over: number;
    /** The least approach speed that allows for them, m/s EAS. */
    readonly remedy: { readonly eas: number };
  };
  mass: { readonly which: 'most' | 'least' | 'reference' };
  'off-runway': {
    readonly where: 'short' | 'long' | 'beside';
    /** Left out where the touchdown is too far off for the spot to be moved. */
    readonly remedy?: MovedSpot | undefined;
  };
  'aim-before-threshold': {
    /**
     * How far before the runway the aim point is, m, where it is before it; otherwise it is the round-out that begins
     * there.
     */
    readonly aim?: number | undefined;
    /** m from the landing end to the spot. */
    readonly spot: number;
    readonly remedy: MovedSpot | RunwayTooShort;
  };
  'landing-distance': {
    readonly remedy:
      | {
          /** m: the roll landed the other way, where the wind is from behind. */
          readonly otherWay?: number | undefined;
          readonly tooShort?: undefined;
        }
      | RunwayTooShort;
  };
  'final-turn-low': Record<never, never>;
  'downwind-key-height': Record<never, never>;
  'base-turn-far': Record<never, never>;
  'round-out-pull': {
    /** True where the wing cannot take the pull at its speed. */
    readonly stalls: boolean;
    readonly remedy:
      | {
          /** The least approach speed (m/s EAS) at which the wing can take the aircraft's own pull. */
          readonly eas: number;
          readonly own: number;
        }
      | {
          /** m: the height from which the aircraft's own pull is enough; left out where nobody begins so high. */
          readonly height?: number | undefined;
          readonly own: number;
        };
  };
}

export type CautionCode = keyof CautionFacts;

/** `value` and `limit` in SI units, degrees or as plain ratios; `source` says where the limit comes from. */
export interface Judged {
  readonly grade: Grade;
  readonly value: number;
  readonly limit: number;
  readonly source: LimitSource;
  /** The key position where a mark on drawings and tables belongs; undefined where it belongs to the whole approach. */
  readonly at?: KeyId | undefined;
}

/** A caution of one code: a code and figures; `words/cautions` makes sentences of it. */
export type CautionOf<Code extends CautionCode> = Judged & { readonly code: Code } & CautionFacts[Code];

export type Caution = { readonly [Code in CautionCode]: CautionOf<Code> }[CautionCode];

/** A caution before it is graded; with a grade where its code and size do not say it all. */
export type Found = {
  readonly [Code in CautionCode]: Omit<Judged, 'grade'> & { readonly grade?: Grade | undefined } & {
    readonly code: Code;
  } & CautionFacts[Code];
}[CautionCode];
