import { crab, stillAir } from '../../src/flight/air/wind.ts';
import { sinOfGlide } from '../../src/flight/aircraft/glide.ts';
import { spotTolerance } from '../../src/flight/approaches/approach-method.ts';
import type { Conditions } from '../../src/flight/flying/conditions.ts';
import { headingBeforeRollOut, speedHeldDownTo } from '../../src/flight/flying/motions.ts';
import { stillAirLead } from '../../src/flight/flying/pattern-legs.ts';
import { roundOutPull } from '../../src/flight/flying/round-out-pull.ts';
import { rootNear, seekRoot } from '../../src/flight/numerics/root.ts';
import { resolveRequest } from '../../src/flight/plan/request.ts';
import type { PlanRequest } from '../../src/flight/terms/plan.ts';
import type { OdexLegs, Scale } from './odex-leg.ts';
import { alongLine, holdingOff, inTurn, lastOfFinal, roundingOut } from './odex-rates.ts';

/** Metres; metres and a heading; metres, a speed and a path. */
const metres: Scale = [1, 1];
const turning: Scale = [1, 1, 1, 1 / 300];
const descending: Scale = [1, 1, 0.1];
const landing: Scale = [1, 1, 0.1, 0.01];
const stopping: Scale = [1, 0.1];

/** m: finer than the core's own (`open-approach.ts`). */
const lineTolerance = 1e-5;

/**
 * The numbers of a half circuit: how far past abeam the base turn starts, and how far from the centreline the final
 * one.
 */
export interface HalfCircuit {
  readonly pastAbeam: number;
  readonly lead: number;
}

interface Place {
  along: number;
  across: number;
  height: number;
  heading: number;
}

/** The half circuit of two turns in a request's conditions, flown by odex. */
interface Flights {
  /** From the downwind key to the touchdown, m along; the lead is found where `lead` is not given. */
  readonly touchdown: (pastAbeam: number, lead?: number) => number;
  /** The lead last flown. */
  readonly lead: () => number;
  readonly guess: number;
}

/**
 * Finds the two numbers of the half circuit with odex doing the flying, by the same shooting as the core's: the same
 * guesses, the same secants, the same tolerances. For an approach flown faster than the best glide.
 */
export function solveByOdex(request: PlanRequest, odex: OdexLegs): HalfCircuit {
  const { touchdown, lead, guess } = flights(request, odex);
  const sought = seekRoot(touchdown, { guess, slope: -2, within: [0, 30_000] }, spotTolerance);
  if (!sought?.found) throw new Error('odex did not come to the spot');
  return { pastAbeam: sought.x, lead: lead() };
}

/** Where a half circuit with these numbers touches down, m along. */
export function touchdownByOdex(request: PlanRequest, flown: HalfCircuit, odex: OdexLegs): number {
  return flights(request, odex).touchdown(flown.pastAbeam, flown.lead);
}

function flights(request: PlanRequest, odex: OdexLegs): Flights {
  const { conditions, flown } = resolveRequest(request);
  const pull = roundOutPull(conditions);
  const side = (request.circuit ?? request.runway.circuit) === 'right' ? 1 : -1;
  const flight = legsOf(conditions, side, flown.bank, pull, odex);
  const start = { along: 0, across: side * flown.spacing, height: flown.keyHeight, heading: 0 };
  let lead = stillAirLead(conditions, flown.bank);
  return {
    touchdown(pastAbeam, given) {
      const onBase = flight.turn(flight.downwind(start, pastAbeam), (-side * Math.PI) / 2);
      let final: Place = onBase;
      const offCentreline = (distance: number) => {
        final = flight.turn(flight.base(onBase, distance), 0);
        return final.across;
      };
      if (given === undefined) lead = rootNear(offCentreline, lead, side, lineTolerance) ?? Number.NaN;
      else offCentreline(given);
      return flight.land(final);
    },
    lead: () => lead,
    guess: (flown.keyHeight * conditions.polar.ratio - flown.spacing) / 2,
  };
}

function legsOf(conditions: Conditions, side: 1 | -1, bank: number, pull: number, odex: OdexLegs) {
  const { aircraft, polar, rollRate, speeds, tasOverEas, wind } = conditions;
  const eas = polar.speed;
  const drift = stillAir();
  const state = new Float64Array(9);
  const rollTime = bank / rollRate;
  const untilRollOut = [0, (-side * Math.PI) / 2].map((track) =>
    headingBeforeRollOut(conditions, track, side, rollRate),
  );
  const heading = (track: number, height: number) => {
    wind(height, drift);
    const sin = sinOfGlide(polar, eas, 1);
    return track + crab(track, eas * tasOverEas(height) * Math.sqrt(1 - sin * sin), drift);
  };
  const found = (y: number[] | undefined): number[] => {
    if (!y) throw new Error('a leg does not end');
    return y;
  };
  /** Distance flown along a line and the height left, up to `distance`. */
  const line = (track: number, height: number, distance: number) => {
    const rates = alongLine(conditions, track, eas, 0);
    const longest = (1.5 * distance) / rates(0, [0, height])[0]! + 1;
    return found(odex.until(rates, [0, height], (y) => distance - y[0]!, longest, metres));
  };
  return {
    downwind({ along, across, height }: Place, pastAbeam: number): Place {
      const [gone, left] = line(-side * Math.PI, height, along + pastAbeam) as [number, number];
      return { along: along - gone, across, height: left, heading: heading(-side * Math.PI, left) };
    },
    base({ along, across, height }: Place, lead: number): Place {
      const track = (-side * Math.PI) / 2;
      const [gone, left] = line(track, height, side * across - lead) as [number, number];
      return { along, across: across - side * gone, height: left, heading: heading(track, left) };
    },
    /** Rolls in, turns, and rolls out on to the heading that holds the track. */
    turn({ along, across, height, heading: before }: Place, track: number): Place {
      const start = [along, across, height, before];
      const rolledIn = odex.forTime(inTurn(conditions, eas, 0, side * rollRate), start, rollTime, turning);
      const toGo = untilRollOut[track === 0 ? 0 : 1]!;
      const left = (y: readonly number[]) => {
        state[2] = y[2]!;
        state[3] = y[3]!;
        state[4] = side * bank;
        state[5] = eas;
        return toGo(state);
      };
      const rates = inTurn(conditions, eas, side * bank, 0);
      const longest = left(rolledIn) / Math.abs(rates(0, rolledIn)[3]!) + 3;
      const turned = found(odex.until(rates, rolledIn, left, longest, turning));
      const end = odex.forTime(
        inTurn(conditions, eas, side * bank, -side * rollRate),
        turned,
        rollTime,
        turning,
      );
      const [x, y, h, psi] = end as [number, number, number, number];
      return { along: x, across: y, height: h, heading: psi };
    },
    /** From wings level on final to the touchdown, m along. */
    land({ along, height }: Place): number {
      const gain = 0.5;
      const faster = odex.forTime(
        alongLine(conditions, 0, eas, gain),
        [along, height],
        (speeds.approach - eas) / gain,
        metres,
      );
      const rates = alongLine(conditions, 0, speeds.approach, 0);
      const above = (least: number) => (y: readonly number[]) => y[1]! - least;
      const held = above(speedHeldDownTo);
      const longest = held(faster) / -rates(0, faster)[1]! + 1;
      const [x1, h1] = found(odex.until(rates, faster, held, longest, metres)) as [number, number];
      const toRoundOut = above(aircraft.roundOut.height);
      const [x, h, slower] = found(
        odex.until(lastOfFinal(conditions), [x1, h1, speeds.approach], toRoundOut, 30, descending),
      ) as [number, number, number];
      const path = Math.asin(sinOfGlide(polar, slower, 1));
      const [x2, level, entry] = found(
        odex.until(roundingOut(conditions, pull), [x, h, slower, path], (y) => y[3]!, 10, landing),
      ) as [number, number, number];
      const slowing = holdingOff(conditions, level, entry, speeds.touchdown);
      const stop = odex.until(slowing, [x2, entry], (y) => y[1]! - speeds.touchdown, 60, stopping);
      return found(stop)[0]!;
    },
  };
}
