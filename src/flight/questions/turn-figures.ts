import { airspeedFactor } from '../air/air.ts';
import { sinOfGlide } from '../aircraft/glide.ts';
import { loadFactor, stallSpeedUnder, turnRadius, turnRate } from '../aircraft/turns.ts';
import type { Plan } from '../terms/plan.ts';

/** A steady gliding turn in still air. m, s, m/s EAS. */
export interface TurnFigures {
  readonly loadFactor: number;
  readonly stallSpeed: number;
  /** Undefined where no steady glide exists at this bank: the wing stalls, or the path would be a dive. */
  readonly flown: FlownTurn | undefined;
}

export interface FlownTurn {
  readonly radius: number;
  readonly heightLost: number;
  readonly time: number;
}

/**
 * What a turn through `angle` at a bank (rad) takes in this plan's aircraft: at its best-glide speed, in the air at
 * the height of the downwind key, with the bank held from beginning to end. Sink and the angle of the path as the
 * core flies them (`sinOfGlide`); rate g tan(bank)/V; the radius is that of the circle over the ground, V
 * cos(path)/rate.
 */
export function turnFigures({ air, flown }: Plan, bank: number, angle: number): TurnFigures {
  const load = loadFactor(bank);
  const stallSpeed = stallSpeedUnder(load, flown.stallSpeed);
  const polar = { speed: flown.glideSpeed, ratio: flown.glideRatio };
  const sin = sinOfGlide(polar, polar.speed, Math.cos(bank));
  if (sin >= 1 || stallSpeed >= polar.speed) return { loadFactor: load, stallSpeed, flown: undefined };
  const tas = polar.speed * airspeedFactor(air)(flown.keyHeight);
  const time = angle / turnRate(tas, bank);
  const radius = turnRadius(tas, bank) * Math.sqrt(1 - sin * sin);
  return { loadFactor: load, stallSpeed, flown: { radius, heightLost: tas * sin * time, time } };
}
