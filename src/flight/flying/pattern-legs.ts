import { stillAir } from '../air/wind.ts';
import { turnRadius, turnRate } from '../aircraft/turns.ts';
import { sine } from '../numerics/steady-math.ts';
import type { Conditions } from './conditions.ts';
import type { Join } from './open-approach.ts';
import type { Leg, LineLeg, Side, TurnLeg } from './procedure.ts';

/** Tracks of the legs, rad from the landing direction: headings grow through a right-hand pattern up to 0 on final. */
export const downwindTrack = (side: Side) => -side * Math.PI;
export const baseTrack = (side: Side) => (-side * Math.PI) / 2;

/** A line flown to a place past abeam the spot, at the best-glide speed. */
export function downwindLeg(side: Side, pastAbeam: number, conditions: Conditions): LineLeg {
  return {
    kind: 'line',
    phase: 'downwind',
    track: downwindTrack(side),
    until: { reaches: 'along', value: -pastAbeam, growing: -1 },
    eas: conditions.polar.speed,
  };
}

/** A line towards the centreline, up to `lead` m from it. */
export function baseLeg(side: Side, lead: number, conditions: Conditions, track = baseTrack(side)): LineLeg {
  return {
    kind: 'line',
    phase: 'base',
    track,
    until: { reaches: 'across', value: side * lead, growing: side === 1 ? -1 : 1 },
    eas: conditions.polar.speed,
  };
}

export function baseTurn(side: Side, bank: number, rollOut = true): TurnLeg {
  return { kind: 'turn', phase: 'base-turn', track: baseTrack(side), side, bank, rollOut };
}

export function finalTurn(side: Side, bank: number): TurnLeg {
  return { kind: 'turn', phase: 'final-turn', track: 0, side, bank, rollOut: true };
}

/**
 * From base leg, turned in from it by `turn` rad, on to final: left open is the distance from the centreline at which
 * to turn.
 */
export function joinFromBase(side: Side, bank: number, conditions: Conditions, turn = 0): Join {
  return {
    legs: (lead) => [baseLeg(side, lead, conditions, baseTrack(side) + side * turn), finalTurn(side, bank)],
    guess: stillAirLead(conditions, bank) * (1 - sine(turn)) - side * driftInTurn(conditions, bank),
    slope: side,
  };
}

/** From wings level on final to the touchdown: the approach speed, the round-out, the hold-off. */
export function finalLegs(conditions: Conditions, pull: number, eas = conditions.speeds.approach): Leg[] {
  return [
    {
      kind: 'line',
      phase: 'final',
      track: 0,
      until: { reaches: 'height', value: conditions.aircraft.roundOut.height, growing: -1 },
      eas,
    },
    { kind: 'landing', pull, touchdownEas: conditions.speeds.touchdown },
  ];
}

/** m. The distance from the centreline at which a turn on to it starts in still air. */
export function stillAirLead(conditions: Conditions, bank: number): number {
  return turnRadius(conditions.polar.speed * conditions.tasOverEas(0), bank);
}

/** m to the right that the wind carries a quarter turn, roughly: with the wind half way down, for the time at full bank. */
function driftInTurn(conditions: Conditions, bank: number): number {
  const wind = stillAir();
  conditions.wind(usualHeight, wind);
  const seconds = Math.PI / 2 / turnRate(conditions.polar.speed, bank) + bank / conditions.rollRate;
  return wind.across * seconds;
}

/** m: roughly where the turn to final is flown. */
const usualHeight = 120;
