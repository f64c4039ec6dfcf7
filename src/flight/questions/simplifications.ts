import {
  kelvinAtZeroCelsius,
  metresPerSecondPerFootPerMinute,
  radiansPerDegree,
} from '../../units/factors.ts';
import { flownVeer } from '../air/flown-wind.ts';
import { stillAir, turningBends, turningWind, type WindField } from '../air/wind.ts';
import type { Conditions } from '../flying/conditions.ts';
import { power } from '../numerics/steady-math.ts';
import { workOut } from '../plan/planner.ts';
import type { Aircraft } from '../terms/aircraft.ts';
import type { FieldAir, PlanRequest } from '../terms/plan.ts';
import { flyUncorrected, type Uncorrected } from './sensitivity.ts';

/** Something in the world that the model leaves out or, for `wind-gradient`, that it includes. */
export type SimplificationCode =
  | 'wind-gradient'
  | 'idle-thrust'
  | 'windmilling'
  | 'veering-wind'
  | 'backing-wind'
  | 'wind-clockwise'
  | 'wind-anticlockwise'
  | 'sinking-air'
  | 'rising-air'
  | 'wet-wing'
  | 'humid-air';

/** What one such thing does to a planned approach. */
export interface Simplification {
  readonly code: SimplificationCode;
  /** m: how far it moves the touchdown along the runway, negative short. Only meaningful where `ends` is `on-final`. */
  readonly along: number;
  /** Where the flight with it comes down: on final or beyond, before final, or never. */
  readonly ends: Uncorrected['ends'];
}

/** Share of the glide ratio that a windmilling propeller takes (a figure of ours, no source). */
export const windmillingShare = 0.1;

/** Share of the glide ratio that a wet or dirty wing takes (a figure of ours, no source). */
export const wetWingShare = 0.05;

/** rad: how far a wind turns with height (common practice, no source); on top of the profile's own veer, where it has one. */
export const windTurn = 20 * radiansPerDegree;

/** m/s: air that sinks or rises from the start to the round-out (a figure of ours, no source). */
export const airMoves = 100 * metresPerSecondPerFootPerMinute;

/**
 * The size of each simplification in this plan: the planned procedure, with the number that was found, its marks on
 * the ground and its handling, flown again with one thing changed and nobody correcting anything. What does not apply
 * is left out, and so is everything where the approach found no procedure. Throws RequestError.
 */
export function simplifications(request: PlanRequest): Simplification[] {
  const { solution, resolved } = workOut(request);
  const procedure = solution?.closed.procedure;
  if (!procedure) return [];
  const { conditions, flown } = resolved;
  const planned = flyUncorrected(procedure, conditions);
  const moved = (code: SimplificationCode, changed: Conditions, sign: 1 | -1 = 1): Simplification => {
    const { along, ends } = flyUncorrected(procedure, changed);
    return { code, along: sign * (along - planned.along), ends };
  };
  const ofRatio = (ratio: number): Conditions => ({
    ...conditions,
    polar: { ...conditions.polar, ratio },
  });
  const found: Simplification[] = [];
  if (hasGradient(conditions.wind))
    found.push(moved('wind-gradient', { ...conditions, wind: withoutGradient(conditions.wind) }, -1));
  const idle = request.power === 'idle' ? idleRatioAt(conditions.aircraft, flown.mass) : undefined;
  if (idle !== undefined && idle !== conditions.polar.ratio) found.push(moved('idle-thrust', ofRatio(idle)));
  if (request.power === 'stopped')
    found.push(moved('windmilling', ofRatio(conditions.polar.ratio * (1 - windmillingShare))));
  if (flown.surfaceWind.speed > 0 && flown.windProfile !== 'layers') {
    const { wind, windBends = [] } = conditions;
    const turned = (by: number) => ({
      ...conditions,
      wind: turningWind(wind, by),
      windBends: [...windBends, ...turningBends],
    });
    const [right, left] =
      flownVeer({ flown, airfield: request.airfield }) === 0
        ? (['veering-wind', 'backing-wind'] as const)
        : (['wind-clockwise', 'wind-anticlockwise'] as const);
    found.push(moved(right, turned(windTurn)), moved(left, turned(-windTurn)));
  }
  found.push(
    moved('sinking-air', { ...conditions, sinkingAir: airMoves }),
    moved('rising-air', { ...conditions, sinkingAir: -airMoves }),
    moved('wet-wing', ofRatio(conditions.polar.ratio * (1 - wetWingShare))),
    moved('humid-air', humid(conditions)),
  );
  return found;
}

/**
 * The idling ratio at a mass (kg) with the same thrust as at the reference mass. In a steady glide drag less thrust,
 * over the weight, is 1/E; the same lift coefficient has the same drag over weight at any mass, 1/E stopped
 * (FAA-H-8083-13, chapter 5). So an idling propeller pulls t = 1/E stopped - 1/E idle of the reference weight, and
 * the same pull is t m_ref/m of another: 1/E(m) = 1/E stopped - t m_ref/m. For small angles, and a thrust that does
 * not change with the airspeed. Undefined where it is not known: no stopped glide, or so light that the propeller
 * would keep it level.
 */
export function idleRatioAt({ glide: { idle, stopped }, mass }: Aircraft, flown: number): number | undefined {
  if (!stopped) return undefined;
  if (flown === mass.reference) return idle.ratio;
  const thrust = 1 / stopped.ratio - 1 / idle.ratio;
  const left = 1 / stopped.ratio - (thrust * mass.reference) / flown;
  return left > 0 ? 1 / left : undefined;
}

/**
 * Density of saturated air over that of dry air at the same pressure and temperature: 1 - 0.378 e/p with
 * e = 6.11 x 10^(7.5 t/(237.7 + t)) hPa, t in degrees Celsius (US National Weather Service, density altitude: virtual
 * temperature T/(1 - (e/p)(1 - 0.622))).
 */
export function saturatedDensityShare({ temperature, pressure }: FieldAir): number {
  const celsius = temperature - kelvinAtZeroCelsius;
  const vapour = 611 * power(10, (7.5 * celsius) / (237.7 + celsius));
  return 1 - ((1 - 0.622) * vapour) / pressure;
}

function humid(conditions: Conditions): Conditions {
  const faster = 1 / Math.sqrt(saturatedDensityShare(conditions.air));
  return { ...conditions, tasOverEas: (height) => faster * conditions.tasOverEas(height) };
}

/** The energy that the wind gradient takes is left out; the wind itself is not. */
function withoutGradient(wind: WindField): WindField {
  return (height, out) => {
    wind(height, out);
    out.alongShear = 0;
    out.acrossShear = 0;
  };
}

/** m. Heights at which it is seen whether a wind changes at all. */
const looked = [5, 20, 60, 150, 300, 600];

function hasGradient(wind: WindField): boolean {
  const out = stillAir();
  return looked.some((height) => {
    wind(height, out);
    return out.alongShear !== 0 || out.acrossShear !== 0;
  });
}
