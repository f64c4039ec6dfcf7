import { describe, expect, it } from 'vitest';
import { type AircraftId, aircraftIds, requestFor, windOffRunway } from '../../../tests/flight-school.ts';
import type { Conditions } from '../flying/conditions.ts';
import { Flight } from '../flying/fly.ts';
import { flyPattern } from '../flying/fly-pattern.ts';
import { ACROSS, ALONG, HEIGHT } from '../flying/motions.ts';
import { finalLegs } from '../flying/pattern-legs.ts';
import type { Leg, LineLeg, Side, TurnLeg } from '../flying/procedure.ts';
import type { KeyId } from '../terms/key.ts';
import type { Gate, Plan, PlanRequest } from '../terms/plan.ts';
import { finalBand } from './final-band.ts';
import { bandOf, fromBaseKey } from './gates.ts';
import { planApproach, workOut } from './planner.ts';

const foot = 0.3048;
const soundFinal = 300 * foot;

const winds = [
  ['calm', 0, 0],
  ['8 kt ahead', 0, 8],
  ['12 kt, 30 degrees from the right', 30, 12],
  ['8 kt across from the left', -90, 8],
  ['4 kt from behind', 180, 4],
] as const;
const cases = aircraftIds.flatMap((id) => winds.map(([words, from, speed]) => ({ id, words, from, speed })));

const flown = new Map<string, Plan>();
/** The planned half circuit in a wind; the tests share the plans. */
function planned(id: AircraftId, from: number, speed: number, changes: Partial<PlanRequest> = {}): Plan {
  const name = JSON.stringify([id, from, speed, changes.circuit]);
  const plan =
    flown.get(name) ?? planApproach(requestFor(id, { wind: windOffRunway(from, speed), ...changes }));
  flown.set(name, plan);
  return plan;
}

const gate = (plan: Plan, at: KeyId): Gate => plan.gates.find((each) => each.at === at)!;
const key = (plan: Plan, id: KeyId) => plan.keys.find((each) => each.id === id)!;
const finalHeight = (plan: Plan) => key(plan, 'final')?.height ?? 0;

describe.each(cases)('gates of $id, $words', ({ id, from, speed }) => {
  const plan = planned(id, from, speed);
  const request = requestFor(id, { wind: windOffRunway(from, speed), detail: 'flight' });
  const { conditions } = workOut(request).resolved;

  it('stand at the downwind key, the base key and final, the plan below high', () => {
    expect(plan.gates.map(({ at }) => at)).toEqual(['downwind-key', 'base-key', 'final']);
    for (const { at, plan: planned, high } of plan.gates) {
      expect(planned).toBeCloseTo(key(plan, at).height, 9);
      expect(high, at).toBeGreaterThanOrEqual(planned - 0.1);
    }
  });

  it('hold a plan whose turn to final is complete at 300 ft', () => {
    for (const at of ['downwind-key', 'base-key'] as const) {
      const { low, plan: planned } = gate(plan, at);
      if (finalHeight(plan) >= soundFinal) expect(low, at).toBeLessThanOrEqual(planned + 0.1);
    }
    // Equal where the approach speed is the best there is.
    expect(gate(plan, 'final').low).toBeLessThanOrEqual(gate(plan, 'final').plan + 0.1);
  });

  it('are the same at the downwind key whatever height is planned there', () => {
    const { low, high } = gate(plan, 'downwind-key');
    for (const feet of [900, 1200]) {
      const other = planApproach({ ...request, height: feet * foot, detail: 'whole' });
      expect(gate(other, 'downwind-key').low).toBeCloseTo(low!, 0);
      expect(gate(other, 'downwind-key').high).toBeCloseTo(high!, 0);
    }
  });

  it('hold every height from which the planner makes the spot with a sound turn to final, and no base turn far out', () => {
    const { low, high } = gate(plan, 'downwind-key');
    let sound = 0;
    for (let feet = 500; feet <= 2400; feet += 100) {
      const height = feet * foot;
      const other = planApproach({ ...request, height });
      if (!other.made || finalHeight(other) < soundFinal) continue;
      if (-key(other, 'base-turn').along > 2 * other.flown.spacing) continue;
      sound++;
      expect(height, `${feet} ft`).toBeGreaterThanOrEqual(low! - 0.2);
      expect(height, `${feet} ft`).toBeLessThanOrEqual(high! + 0.2);
    }
    // With the wind behind, so fast a glide is complete by 300 ft only with a base turn far out.
    if (from !== 180) expect(sound).toBeGreaterThan(0);
  });

  it('a quarter circuit from the base key starts between its edges', () => {
    const at = key(plan, 'base-key');
    const straight = planApproach({
      ...request,
      approach: '90',
      options: { '90': { baseDistance: Math.abs(at.across) } },
    });
    const { low, high } = gate(plan, 'base-key');
    if (straight.made && finalHeight(straight) >= soundFinal && low !== null) {
      expect(low).toBeLessThanOrEqual(straight.flown.height + 0.5);
      // Its key is at 45 degrees, the other where the half circuit has it.
      if (Math.abs(at.along + Math.abs(at.across)) < 1) expect(high!).toBeGreaterThan(straight.flown.height);
    }
  });

  it('hold every height that, flown as planned, comes into the band of a later key', () => {
    expectCarriedOn(request, plan.gates, 5);
  });

  it('from the low edge on final one speed or another reaches the spot, and from 2 m lower none does', () => {
    const low = gate(plan, 'final').low!;
    const { along } = key(plan, 'final');
    const speeds = Array.from({ length: 60 }, (_, i) => 1.3 * conditions.speeds.stall + i * 0.3);
    const furthest = (height: number) =>
      Math.max(...speeds.map((eas) => straightIn(along, height, eas, false, conditions)));
    expect(furthest(low + 0.5)).toBeGreaterThanOrEqual(0);
    expect(furthest(low - 2)).toBeLessThan(0);
  });

  it('from 2 m under the high edge on final an S-turn or the steep approach alone ends short, from 2 m over it none', () => {
    const high = gate(plan, 'final').high!;
    const { along } = key(plan, 'final');
    const shortest = (height: number) =>
      Math.min(
        straightIn(along, height, conditions.steep!.speed, true, conditions),
        weaving(along, height, 1, request.aircraft.turns.bank, conditions),
        weaving(along, height, -1, request.aircraft.turns.bank, conditions),
      );
    expect(shortest(high + 2)).toBeGreaterThan(0);
    expect(shortest(high - 2)).toBeLessThan(0);
  });
});

/** Flies the plan from heights in steps of m: a flight in the band of a key was in the bands of the keys before it. */
function expectCarriedOn(request: PlanRequest, gates: readonly Gate[], step: number): void {
  const { solution, resolved } = workOut(request);
  const { start, legs } = solution!.closed.procedure;
  // From a plan that is itself too low, the lower edge is made by another path: nobody should fly on as planned.
  const lowOf = ({ low, plan: planned }: Gate) => Math.min(low ?? planned, planned);
  const isIn = (gate: Gate, height: number, slack = 0) =>
    height >= lowOf(gate) - slack && height <= (gate.high ?? gate.plan) + slack;
  for (let more = -60; more <= 300; more += step) {
    const higher = { start: { ...start, height: start.height + more }, legs };
    const { keys } = flyPattern(higher, resolved.conditions, request.runway.heading);
    const heightAt = (id: KeyId) => keys.find((each) => each.id === id)?.height;
    // A turn to final complete below 300 ft is not sound, whether or not the spot is in reach.
    if ((heightAt('final') ?? 0) < soundFinal) continue;
    gates.forEach((gate, i) => {
      for (const later of gates.slice(i + 1)) {
        const [here, there] = [heightAt(gate.at)!, heightAt(later.at)!];
        if (there < (later.low ?? later.plan) || !isIn(later, there)) continue;
        const words = `${here} m at the ${gate.at}, ${there} m at the ${later.at}`;
        expect(isIn(gate, here, 0.3), words).toBe(true);
      }
    });
  }
}

/**
 * An S-turn on final, off it and across it by as much as can be completed by 300 ft, 45 degrees at most, then the
 * steep approach: m beyond the spot.
 */
function weaving(along: number, height: number, side: Side, bank: number, conditions: Conditions): number {
  const at = (angle: number) => weave(along, height, side, bank, conditions, angle);
  let [small, wide] = [0, Math.PI / 4];
  if (at(wide).height >= soundFinal) return at(wide).beyond;
  for (let i = 0; i < 10; i++) {
    const middle = (small + wide) / 2;
    if (at(middle).height >= soundFinal) small = middle;
    else wide = middle;
  }
  // Less than 5 degrees is no S-turn.
  return small < Math.PI / 36 ? Number.POSITIVE_INFINITY : at(small).beyond;
}

function weave(
  along: number,
  height: number,
  side: Side,
  bank: number,
  conditions: Conditions,
  angle: number,
): { height: number; beyond: number } {
  const { speed } = conditions.polar;
  const turn = (track: number, way: Side, rollOut: boolean): TurnLeg => ({
    kind: 'turn',
    phase: 'final',
    track,
    side: way,
    bank,
    rollOut,
  });
  const other: Side = side === 1 ? -1 : 1;
  const eighth = side * angle;
  const fly = (turnBackAt: number) => {
    // No farther off final than the angle, not even while it rolls.
    const out = turn(eighth, side, true);
    const flight = new Flight(conditions, 0, 'search');
    flight.begin({ along, across: 0, height, eas: speed }, finalLegs(conditions, 1.2)[0]!);
    flight.leg(out);
    flight.leg(turn(-eighth, other, true));
    const across: LineLeg = {
      kind: 'line',
      phase: 'final',
      track: -eighth,
      until: { reaches: 'across', value: turnBackAt, growing: other },
      eas: speed,
    };
    flight.leg(across);
    flight.leg(turn(0, side, true));
    return flight;
  };
  // The farther out it turns back, the farther out it ends; found by halving.
  let [near, far] = [-300, 300];
  for (let i = 0; i < 24; i++) {
    const middle = (near + far) / 2;
    if (fly(middle).state[ACROSS]! > 0) far = middle;
    else near = middle;
  }
  const flight = fly((near + far) / 2);
  const ended = flight.state[HEIGHT]!;
  for (const leg of steepFinal(conditions.steep!.speed, true, conditions)) flight.leg(leg);
  return { height: ended, beyond: flight.state[ALONG]! };
}

/** Straight in at a speed down to 150 ft, then like every final: m beyond the spot. */
function straightIn(
  along: number,
  height: number,
  eas: number,
  steep: boolean,
  conditions: Conditions,
): number {
  const legs = steepFinal(eas, steep, conditions);
  const flight = new Flight(conditions, 0, 'honest');
  flight.begin({ along, across: 0, height, eas: conditions.polar.speed }, legs[0]!);
  for (const leg of legs) flight.leg(leg);
  return flight.state[ALONG]!;
}

function steepFinal(eas: number, steep: boolean, conditions: Conditions): Leg[] {
  const down: LineLeg = {
    kind: 'line',
    phase: 'final',
    track: 0,
    until: { reaches: 'height', value: 150 * foot, growing: -1 },
    eas,
    steep,
  };
  return [down, ...finalLegs(conditions, conditions.aircraft.roundOut.loadFactor)];
}

describe('the gates', () => {
  it.each(aircraftIds)('of %s mirror each other on the two hands', (id) => {
    const left = planned(id, 40, 10, { circuit: 'left' });
    const right = planned(id, -40, 10, { circuit: 'right' });
    left.gates.forEach((each, i) => {
      const other = right.gates[i]!;
      expect(other.at).toBe(each.at);
      for (const edge of ['low', 'plan', 'high'] as const) {
        if (each[edge] === null) expect(other[edge]).toBeNull();
        else expect(other[edge]).toBeCloseTo(each[edge], 2);
      }
    });
  });

  it.each(aircraftIds)('of %s reach less high without a steep approach, and no lower', (id) => {
    const request = requestFor(id, { wind: windOffRunway(20, 6) });
    const whole = planApproach(request);
    const plain = planApproach({ ...request, aircraft: { ...request.aircraft, steepApproach: undefined } });
    for (const at of ['downwind-key', 'base-key', 'final'] as const) {
      expect(gate(plain, at).low).toBeGreaterThanOrEqual(gate(whole, at).low! - 0.1);
      expect(gate(plain, at).high!).toBeLessThan(gate(whole, at).high!);
    }
  });

  it.each(aircraftIds)('of %s ask for more height a metre of final the more wind is ahead', (id) => {
    const slopes = [0, 5, 10, 15].map((knots) => {
      const plan = planned(id, 0, knots);
      return gate(plan, 'final').low! / -key(plan, 'final').along;
    });
    for (let i = 1; i < slopes.length; i++) expect(slopes[i]).toBeGreaterThan(slopes[i - 1]!);
  });

  it.each(
    aircraftIds.flatMap((id) => (['90', '360', 'spiral'] as const).map((approach) => ({ id, approach }))),
  )(
    'of the $approach of $id hold every height carried on into the band of a later key',
    ({ id, approach }) => {
      for (const [from, speed] of [
        [0, 0],
        [-30, 12],
        [180, 4],
      ] as const) {
        const request = requestFor(id, { approach, wind: windOffRunway(from, speed) });
        expectCarriedOn(request, planApproach(request).gates, 20);
      }
    },
  );

  it('are left out of a plan that is not made, and where only the flight is asked for', () => {
    expect(planApproach(requestFor('osier', { height: 70 })).gates).toEqual([]);
    expect(planApproach(requestFor('osier', { detail: 'flight' })).gates).toEqual([]);
  });

  it.each(aircraftIds)(
    'of %s have a low edge at the base key that leaves no room for an eighth turned in',
    (id) => {
      const request = requestFor(id, { approach: '90', height: 700 * foot, wind: windOffRunway(-28, 12) });
      const plan = planApproach(request);
      expect(finalHeight(plan)).toBeGreaterThan(soundFinal);
      // The corner cut, and the turn to final lower: each saves some of what the plan has over 300 ft, and none saves more.
      const saved = gate(plan, 'base-key').plan - gate(plan, 'base-key').low!;
      expect(saved).toBeGreaterThan(0);
      expect(saved).toBeLessThan(finalHeight(plan) - soundFinal);
    },
  );

  it('stand at the keys that each approach has', () => {
    const at = (approach: PlanRequest['approach']) =>
      planApproach(requestFor('osier', { approach })).gates.map((each) => each.at);
    expect(at('90')).toEqual(['base-key', 'final']);
    expect(at('360')).toEqual(['downwind-key', 'base-key', 'final']);
    expect(at('spiral')).toEqual(['downwind-key', 'base-key', 'final']);
  });
});

it('where no path has its turn to final complete by a strict minimum there is no high edge either', () => {
  for (const [id, feet] of [
    ['osier', 700],
    ['withy', 500],
    ['withy', 700],
  ] as const) {
    const request = requestFor(id, { detail: 'flight' });
    const key = planApproach(request).keys.find((one) => one.id === 'base-key')!;
    const {
      asked: planned,
      resolved: { conditions },
    } = workOut(request);
    const asked = { ...planned, leastFinal: feet * 0.3048 };
    const onFinal = finalBand(asked, conditions);
    const band = bandOf(fromBaseKey(key, asked, conditions), {
      asked,
      conditions,
      onFinal,
      guess: key.height,
    });
    expect(band, `${id}, ${feet} ft`).toEqual({ low: null, high: null });
  }
});

it("the planner's paths keep to the school's own least height of the turn to final", () => {
  const least = (finalTurn: number) =>
    workOut(requestFor('osier', { minimums: { finalTurn } })).asked.leastFinal;
  expect(least(121.92)).toBe(121.92);
  expect(least(60)).toBeCloseTo(91.44, 9);
});
