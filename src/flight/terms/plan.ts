import type { Aircraft, Power } from './aircraft.ts';
import type { AircraftData } from './aircraft-data.ts';
import type { Airfield, Circuit, Runway } from './airfield.ts';
import type { Approach, ApproachOptions, SolvedName } from './approach.ts';
import type { Caution, PlanGrade } from './caution.ts';
import type { KeyId } from './key.ts';

/** What a plan is asked for. SI units and radians; directions true; anything left out takes its stated default. */
export interface PlanRequest {
  readonly aircraft: AircraftData;
  readonly airfield: Airfield;
  readonly runway: Runway;
  readonly approach: Approach;
  /** Engine idling or stopped. */
  readonly power: Power;
  /** Default: the runway's. */
  readonly circuit?: Circuit | undefined;
  /** Surface wind at 10 m. */
  readonly wind: SurfaceWind;
  /** m/s; highest gust, not less than the wind, compared with the aircraft's limits. Default: none. */
  readonly gust?: number | undefined;
  /** Default: the power law with the airfield's exponent. */
  readonly windProfile?: WindProfileKind | undefined;
  /** Winds at heights, for the profile `layers`. */
  readonly windLayers?: readonly WindAtHeight[] | undefined;
  /** K at the field. Default: standard for the elevation. */
  readonly temperature?: number | undefined;
  /** Pa. Default: standard. */
  readonly qnh?: number | undefined;
  /** kg. Default: the aircraft's flown mass. */
  readonly mass?: number | undefined;
  /**
   * m above the spot at the start: at the base key of the 90, the downwind key of the 180, over the spot of the 360, at
   * the top of the spiral. Default: found for the 90, the turn to final complete 100 ft higher than it must be; the pattern's height for the 180 (the aircraft's own, else the
   * airfield's); 2,000 ft for the 360; 2,500 ft for the spiral.
   */
  readonly height?: number | undefined;
  /** m from the centreline to the downwind leg. Default: the aircraft's pattern, else the airfield's. */
  readonly spacing?: number | undefined;
  /** rad. Default: the aircraft's planned bank. For the 360 without a height, its steepest bank. */
  readonly bank?: number | undefined;
  /** What is asked of one approach only: options of the others are ignored. */
  readonly options?: ApproachOptions | undefined;
  /** The school's own limits: they tighten the built-in ones and never loosen them. */
  readonly minimums?: Minimums | undefined;
  /** The steps that a start height and a wind which would work are given in. Default: 10 ft and 1 kt. */
  readonly steps?: Steps | undefined;
  /** `flight` leaves out what takes many flights: the gates, and the nearest value that would work. Default `whole`. */
  readonly detail?: 'whole' | 'flight' | undefined;
}

/** What a school asks for beyond the built-in limits: heights in m, and the most tailwind in m/s. */
export interface Minimums {
  readonly finalTurn?: number | undefined;
  readonly obstacleClearance?: number | undefined;
  readonly mostTailwind?: number | undefined;
}

/** m and m/s: what a person can ask for is a whole number of these. */
export interface Steps {
  readonly height: number;
  readonly speed: number;
}

export type WindProfileKind = 'power' | 'uniform' | 'layers';

/** The direction the wind blows from (rad true) and its speed (m/s). */
export interface SurfaceWind {
  readonly from: number;
  readonly speed: number;
}

export interface WindAtHeight extends SurfaceWind {
  /** m above the field. */
  readonly height: number;
}

/**
 * An approach as flown. SI units and radians in the spot frame: origin on the ground at the landing spot, `along`
 * grows in the landing direction, `across` to the right of it, `height` above the spot. Headings are true.
 */
export interface Plan {
  readonly aircraft: Aircraft;
  readonly airfield: Airfield;
  readonly runway: Runway;
  readonly air: FieldAir;
  /** The wind as flown, lowest first. */
  readonly wind: readonly WindAtHeight[];
  readonly approach: Approach;
  readonly power: Power;
  readonly circuit: Circuit;
  /** What the plan was flown with, every default resolved. */
  readonly flown: Flown;
  readonly solved: Solved;
  /** For a spiral: whole circles flown, and how many the height allows with no more than a medium bank. */
  readonly circles?: { readonly flown: number; readonly allowed: number } | undefined;
  readonly track: readonly TrackSample[];
  readonly keys: readonly KeyPosition[];
  readonly gates: readonly Gate[];
  readonly touchdown: Touchdown;
  readonly roundOut: RoundOutFigures;
  readonly cautions: readonly Caution[];
  /** The gravest grade of its cautions. */
  readonly grade: PlanGrade;
  /** True where the flight of `track` ends on the ground at the spot, level, by a sound path. */
  readonly made: boolean;
}

export interface Flown {
  readonly surfaceWind: SurfaceWind;
  readonly gust?: number | undefined;
  readonly windProfile: WindProfileKind;
  /** kg. */
  readonly mass: number;
  /** m at the start, m at the downwind key, m, rad. */
  readonly height: number;
  readonly keyHeight: number;
  readonly spacing: number;
  readonly bank: number;
  /** m/s EAS, at the flown mass. */
  readonly glideSpeed: number;
  readonly approachSpeed: number;
  readonly touchdownSpeed: number;
  readonly stallSpeed: number;
  /** The best-glide ratio of the power setting. */
  readonly glideRatio: number;
}

export interface FieldAir {
  /** m, K, Pa, kg/m3, m. */
  readonly elevation: number;
  readonly temperature: number;
  readonly pressure: number;
  readonly density: number;
  readonly densityAltitude: number;
}

/** The number that the planner found, m or rad. */
export interface Solved {
  readonly name: SolvedName | 'none';
  readonly value: number;
  readonly unit: 'm' | 'deg';
}

export type Phase =
  | 'overhead'
  | 'circle'
  | 'downwind'
  | 'base-turn'
  | 'base'
  | 'final-turn'
  | 'final'
  | 'round-out'
  | 'hold-off';

export interface TrackSample {
  /** s from the start. */
  readonly time: number;
  readonly along: number;
  readonly across: number;
  readonly height: number;
  /** rad true. */
  readonly heading: number;
  /** rad, positive to the right. */
  readonly bank: number;
  readonly eas: number;
  readonly tas: number;
  /** m/s, positive downward. */
  readonly sink: number;
  readonly groundspeed: number;
  readonly phase: Phase;
}

export interface KeyPosition {
  readonly id: KeyId;
  readonly time: number;
  readonly along: number;
  readonly across: number;
  readonly height: number;
}

/** Heights (m) at a key from which the spot is still made; null where there is no edge. */
export interface Gate {
  readonly at: KeyId;
  readonly low: number | null;
  readonly plan: number;
  readonly high: number | null;
}

export interface Touchdown {
  readonly along: number;
  readonly across: number;
  readonly time: number;
  /** m/s over the ground. */
  readonly speed: number;
}

export interface RoundOutFigures {
  /** m from the aim point to the end of the round-out, and from there to touchdown. */
  readonly roundOutDistance: number;
  readonly holdOffDistance: number;
  /** The load factor that the pull needed: the aircraft's own, or more where that would not be level in time. */
  readonly loadFactor: number;
}
