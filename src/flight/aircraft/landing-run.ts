import { seaLevelDensity } from '../air/constants.ts';
import { headwind } from '../air/wind.ts';
import type { Aircraft } from '../terms/aircraft.ts';
import type { FieldAir, Flown, SurfaceWind } from '../terms/plan.ts';

/**
 * The shares of the reported wind along the runway that a landing distance counts on: no more than half of a
 * headwind, no less than one and a half times a tailwind (Regulation (EU) 965/2012, CAT.POL.A.330(c), for small
 * aeroplanes).
 */
const countedShare = { headwind: 0.5, tailwind: 1.5 };

/** What decides how far an aircraft rolls. SI, rad. */
export interface Rolling {
  readonly aircraft: Pick<Aircraft, 'landingRoll' | 'speeds'>;
  /** m/s true airspeed as the wheels touch. */
  readonly tas: number;
  readonly wind: SurfaceWind;
  /** m/s; the headwind in it is not counted on, the tailwind is. */
  readonly gust?: number | undefined;
  /** Landing direction, rad true. */
  readonly heading: number;
}

/**
 * The landing roll, m, in a wind and an air: the roll as given times the square of the groundspeed at touchdown over
 * the groundspeed it is given for (FAA-H-8083-25, Aircraft Performance, landing: 10 % of headwind takes 19 % off, 10
 * % of tailwind adds 21 %). As given it holds for a calm, standard air at sea level, the reference mass and the
 * surface it was measured on; the groundspeed is then the touchdown speed itself. The touchdown speed goes with the
 * square root of the mass and, as a true airspeed, with that of the thinness of the air, so the roll is proportional
 * to both.
 *
 * A headwind counts half, a tailwind one and a half times. So the roll comes out shorter than as given in a headwind,
 * but by no more than the rules on landing distances allow; it also comes out shorter below the reference mass. It is
 * not changed for the surface: the file does not say what surface the figure was measured on.
 */
export function landingRun({ aircraft, tas, wind, gust, heading }: Rolling): number {
  const against = landingHeadwind({ surfaceWind: wind, gust }, heading);
  return aircraft.landingRoll * runScale(tas - countedHeadwind(against), aircraft.speeds.touchdown);
}

/** m/s against the landing direction: gusts count where the wind is from behind, and are not counted on where it is ahead. */
export function landingHeadwind(
  { surfaceWind, gust = 0 }: Pick<Flown, 'surfaceWind' | 'gust'>,
  heading: number,
): number {
  const steady = headwind(surfaceWind, heading);
  if (steady >= 0) return steady;
  return headwind({ ...surfaceWind, speed: Math.max(surfaceWind.speed, gust) }, heading);
}

/** How a groundspeed at touchdown changes a roll that is given for another: by the square of their ratio. */
export function runScale(groundspeed: number, given: number): number {
  return Math.max(0, groundspeed / given) ** 2;
}

/** m/s: the part of a wind against the landing direction (negative from behind) that a landing distance counts on. */
export function countedHeadwind(against: number): number {
  return against * (against > 0 ? countedShare.headwind : countedShare.tailwind);
}

/** The day and the runway of a flight: a plan has all of this. */
export interface LandingDay {
  readonly aircraft: Pick<Aircraft, 'landingRoll' | 'speeds'>;
  readonly air: Pick<FieldAir, 'density'>;
  readonly flown: Pick<Flown, 'touchdownSpeed' | 'surfaceWind' | 'gust'>;
  readonly runway: { readonly heading: number };
}

/** The landing roll, m, of a flight that touches down at the touchdown speed of its mass, or at another (m/s EAS). */
export function landingRunOf(
  { aircraft, air, flown, runway }: LandingDay,
  eas: number = flown.touchdownSpeed,
): number {
  return landingRun({
    aircraft,
    tas: eas * Math.sqrt(seaLevelDensity / air.density),
    wind: flown.surfaceWind,
    gust: flown.gust,
    heading: runway.heading,
  });
}
