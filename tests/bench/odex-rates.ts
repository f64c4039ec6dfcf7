import { standardGravity } from '../../src/flight/air/constants.ts';
import { stillAir } from '../../src/flight/air/wind.ts';
import { dragOverWeight, sinOfGlide } from '../../src/flight/aircraft/glide.ts';
import { inducedDragReduction } from '../../src/flight/aircraft/ground-effect.ts';
import type { Conditions } from '../../src/flight/flying/conditions.ts';
import type { Rates } from './odex-solver.ts';

/*
 * Right-hand sides for odex, written for speed: the core's own air, wind and glide. Only what changes in a leg is
 * integrated; what is a known function of time (the bank rolled in, the speed picked up) is not; and each fills an
 * array of its own, which odex copies from.
 */

const g = standardGravity;

/**
 * 1 plus what the thinning air and the change of the wind take from a metre of height, `shear` being the air velocity
 * times that change.
 */
const worthOf = (conditions: Conditions, height: number, tas: number, shear: number) =>
  1 + (tas * tas * conditions.thinning(height) + shear) / g;

/** Distance and height along a ground line, with the speed growing by `gain` m/s EAS a second from `eas`. */
export function alongLine(conditions: Conditions, track: number, eas: number, gain: number): Rates {
  const rates = [0, 0];
  const drift = stillAir();
  const [cos, sin] = [Math.cos(track), Math.sin(track)];
  return (time, y) => {
    const height = y[1]!;
    const speed = eas + gain * time;
    const factor = conditions.tasOverEas(height);
    const tas = speed * factor;
    const sink = sinOfGlide(conditions.polar, speed, 1);
    conditions.wind(height, drift);
    const off = drift.across * cos - drift.along * sin;
    const ahead = Math.sqrt(tas * tas * (1 - sink * sink) - off * off);
    const shear =
      ahead * (drift.alongShear * cos + drift.acrossShear * sin) -
      off * (drift.acrossShear * cos - drift.alongShear * sin);
    rates[0] = drift.along * cos + drift.across * sin + ahead;
    rates[1] = -(tas * sink + (tas * gain * factor) / g) / worthOf(conditions, height, tas, shear);
    return rates;
  };
}

/** Distance, height and speed in the last part of final, with the nose where it is. */
export function lastOfFinal(conditions: Conditions): Rates {
  const rates = [0, 0, 0];
  const drift = stillAir();
  return (_time, y) => {
    const [, height, speed] = y as [number, number, number];
    const factor = conditions.tasOverEas(height);
    const tas = speed * factor;
    const sink = sinOfGlide(conditions.polar, speed, 1);
    conditions.wind(height, drift);
    const ahead = Math.sqrt(tas * tas * (1 - sink * sink) - drift.across * drift.across);
    const shear = ahead * drift.alongShear - drift.across * drift.acrossShear;
    rates[0] = drift.along + ahead;
    rates[1] = -tas * sink;
    rates[2] = (g * sink * (worthOf(conditions, height, tas, shear) - 1)) / factor;
    return rates;
  };
}

/** Along, across, height and heading in a gliding turn, with the bank growing by `roll` rad/s from `bank`. */
export function inTurn(conditions: Conditions, eas: number, bank: number, roll: number): Rates {
  const rates = [0, 0, 0, 0];
  const drift = stillAir();
  return (time, y) => {
    const heading = y[3]!;
    const now = bank + roll * time;
    const tas = eas * conditions.tasOverEas(y[2]!);
    const sink = sinOfGlide(conditions.polar, eas, Math.cos(now));
    const horizontal = tas * Math.sqrt(1 - sink * sink);
    conditions.wind(y[2]!, drift);
    const [ahead, aside] = [horizontal * Math.cos(heading), horizontal * Math.sin(heading)];
    rates[0] = ahead + drift.along;
    rates[1] = aside + drift.across;
    const shear = ahead * drift.alongShear + aside * drift.acrossShear;
    rates[2] = (-tas * sink) / worthOf(conditions, y[2]!, tas, shear);
    rates[3] = (g * Math.tan(now)) / tas;
    return rates;
  };
}

/** Along, height, airspeed and path in the round-out. */
export function roundingOut(conditions: Conditions, pull: number): Rates {
  const rates = [0, 0, 0, 0];
  const drift = stillAir();
  const factor = conditions.tasOverEas(0);
  return (_time, y) => {
    const [, height, eas, path] = y as [number, number, number, number];
    const tas = eas * factor;
    const horizontal = tas * Math.cos(path);
    conditions.wind(height, drift);
    const drag = dragOverWeight(conditions.polar, eas, pull, inducedLeft(conditions, height));
    const ahead = Math.sqrt(horizontal * horizontal - drift.across * drift.across);
    const sink = tas * Math.sin(path);
    rates[0] = drift.along + ahead;
    rates[1] = -sink;
    const shear = ahead * drift.alongShear - drift.across * drift.acrossShear;
    rates[2] = (g * (Math.sin(path) - drag) + (sink * shear) / tas) / factor;
    rates[3] = (-g * (pull - Math.cos(path))) / tas;
    return rates;
  };
}

/** Along and airspeed in the hold-off; the height goes in proportion to the airspeed. */
export function holdingOff(conditions: Conditions, level: number, entry: number, touchdown: number): Rates {
  const rates = [0, 0];
  const drift = stillAir();
  const factor = conditions.tasOverEas(0);
  const perSpeed = level / ((entry - touchdown) * factor);
  return (_time, y) => {
    const eas = y[1]!;
    const tas = eas * factor;
    const height = level * ((eas - touchdown) / (entry - touchdown));
    conditions.wind(height, drift);
    const drag = dragOverWeight(conditions.polar, eas, 1, inducedLeft(conditions, height));
    const ahead = Math.sqrt(tas * tas - drift.across * drift.across);
    const shear = ahead * drift.alongShear - drift.across * drift.acrossShear;
    rates[0] = drift.along + ahead;
    rates[1] = (-g * drag) / (1 + (perSpeed * (g + shear)) / tas) / factor;
    return rates;
  };
}

function inducedLeft({ aircraft: { wing } }: Conditions, height: number): number {
  return 1 - inducedDragReduction((Math.max(height, 0) + wing.aboveWheels) / wing.span);
}
