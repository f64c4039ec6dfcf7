import { describe, expect, it } from 'vitest';
import type { AircraftId } from '../../../tests/flight-school.ts';
import { requestFor, windOffRunway } from '../../../tests/flight-school.ts';
import { landingRunOf } from '../aircraft/landing-run.ts';
import { Flight } from '../flying/fly.ts';
import { ACROSS, ALONG, HEIGHT } from '../flying/motions.ts';
import { finalLegs } from '../flying/pattern-legs.ts';
import type { LineLeg, Side } from '../flying/procedure.ts';
import { type Position, takeUp } from '../flying/reach.ts';
import { flyOnTo } from '../flying/turn-on-to.ts';
import { finalLine, soundFinal, steepUntil } from '../plan/final-band.ts';
import { type WorkedOut, workOut } from '../plan/planner.ts';
import { straightIn } from './straight-in.ts';

const foot = 0.3048;
const worked = (id: AircraftId, off: number, knots: number) =>
  workOut(requestFor(id, { power: 'stopped', wind: windOffRunway(off, knots), detail: 'flight' }));
const { runway } = requestFor('osier');
const direct = (from: Position, flown: WorkedOut, finalTurn?: number) =>
  straightIn(from, runway, flown, finalTurn === undefined ? undefined : { finalTurn })!;

describe('a straight-in arrival in still air', () => {
  const calm = worked('osier', 0, 0);
  const { ratio } = calm.resolved.conditions.polar;
  const onFinal = (before: number): Position => ({
    along: -before,
    across: 0,
    height: 700 * foot,
    heading: 0,
  });

  it('costs each metre of a straight way on the centreline its share by the glide ratio', () => {
    // The glide ratio is the distance forward over the height lost (FAA-H-8083-3, chapter 3, glides).
    const [near, far] = [2000, 2400].map((before) => direct(onFinal(before), calm));
    expect(near!.spare).toBeLessThan(0);
    expect(near!.spare - far!.spare).toBeCloseTo(400 / ratio, 0);
  });

  it('lacks what a straight line to the near end lacks, but for the round-out and the hold-off', () => {
    // Down to the least height for the turn, and from there to the near end, all at one ratio.
    for (const before of [1800, 2400]) {
      const line = 700 * foot - (before - runway.spot) / ratio;
      expect(Math.abs(direct(onFinal(before), calm).spare - line)).toBeLessThan(60 * foot);
    }
  });

  it('is the same from the left as from the right', () => {
    const from: Position = { along: -900, across: -500, height: 900 * foot, heading: 2 };
    const mirrored = direct({ ...from, across: 500, heading: -2 }, calm);
    expect(mirrored.spare).toBeCloseTo(direct(from, calm).spare, 0);
  });
});

describe('a straight-in arrival in wind', () => {
  /** Places, headings, aircraft and winds far apart from each other; all of them too low. */
  const cases: readonly (readonly [Position, AircraftId, number, number])[] = [
    [{ along: -900, across: -300, height: 500 * foot, heading: -2.6 }, 'osier', -28, 12],
    [{ along: 300, across: 600, height: 500 * foot, heading: 0.5 }, 'osier', 0, 0],
    [{ along: -1500, across: 700, height: 500 * foot, heading: 3 }, 'withy', 40, 10],
    [{ along: -300, across: -900, height: 500 * foot, heading: 1.5 }, 'withy', -28, 12],
  ];

  it.each(cases)('is found from %o by flying every way there, and just below it none is', (low, ...asked) => {
    const flown = worked(...asked);
    const least = leastHeight(low, flown);
    expect(isFlown({ ...low, height: least - 1.5 }, flown)).toBe(false);
    expect(isFlown({ ...low, height: least + 6 }, flown)).toBe(true);
  });

  it('says where it comes over the near end, and where it touches with room to stop', () => {
    const flown = worked('osier', -28, 12);
    const found = direct({ ...cases[0]![0], height: 1100 * foot }, flown);
    expect(found.height).toBeGreaterThanOrEqual(soundFinal);
    expect(found.overNearEnd).toBeGreaterThan(0);
    expect(found.touchdown).toBeGreaterThan(-runway.spot);
    const left = runway.length - runway.spot - found.touchdown;
    expect(left).toBeGreaterThanOrEqual(rollOf(flown));
    expect(found.cautions.map(({ code }) => code)).not.toContain('landing-distance');
  });

  it('comes high to its spot, or as near beyond it as a sound final allows, with the roll of this wind left', () => {
    for (const [off, knots] of [
      [0, 12],
      [180, 5],
    ] as const) {
      const flown = worked('osier', off, knots);
      const { touchdown, along } = direct({ ...cases[0]![0], height: 2500 * foot }, flown);
      const nearest = direct({ along, across: 0, height: soundFinal + 0.1, heading: 0 }, flown).touchdown;
      expect(touchdown).toBeGreaterThan(-1);
      expect(touchdown).toBeLessThan(Math.max(1, nearest + 1));
      const left = runway.length - runway.spot - touchdown;
      const asGiven = flown.resolved.conditions.aircraft.landingRoll;
      expect(Math.abs(rollOf(flown) - asGiven)).toBeGreaterThan(10);
      expect(left - rollOf(flown)).toBeGreaterThanOrEqual(0);
    }
  });

  it('is joinValues no nearer than leaves, beyond the touchdown, the roll that this wind makes of the one as given', () => {
    const flown = worked('osier', 0, 12);
    const roll = rollOf(flown);
    // From over the field itself, final is joined as near as possible.
    const short = { ...runway, length: runway.spot + roll + 40 };
    const at = straightIn(
      { along: -150, across: 0, height: 320 * foot, heading: 0 },
      short,
      flown,
      undefined,
    )!;
    expect(short.length - short.spot - at.touchdown).toBeGreaterThanOrEqual(roll);
  });

  it('keeps to the height that the school wants for the turn to final', () => {
    const flown = worked('osier', -28, 12);
    const from = { ...cases[0]![0], height: 900 * foot };
    const own = 500 * foot;
    expect(direct(from, flown, own).height).toBeGreaterThanOrEqual(own);
    expect(direct(from, flown, own).spare).toBeLessThan(direct(from, flown).spare);
    // Never loosened.
    expect(direct(from, flown, 100 * foot).spare).toBeCloseTo(direct(from, flown).spare, 6);
  });

  it('has height to lose where it comes too high', () => {
    const flown = worked('osier', -28, 12);
    expect(direct({ ...cases[0]![0], height: 2500 * foot }, flown).excess).toBeGreaterThan(0);
  });
});

/** m: the landing roll in the wind and air of a flight. */
function rollOf({ resolved: { conditions, flown } }: WorkedOut): number {
  return landingRunOf({ ...conditions, flown, runway });
}

/** m: the lowest height from which an arrival is found. */
function leastHeight(from: Position, flown: WorkedOut): number {
  let [below, above] = [300 * foot, 3000 * foot];
  while (above - below > 0.25) {
    const height = (below + above) / 2;
    if (direct({ ...from, height }, flown).spare >= 0) above = height;
    else below = height;
  }
  return above;
}

/** Whether any turn, straight way and turn on to final, tried one by one, brings the wheels to ground that can be landed on. */
function isFlown(from: Position, flown: WorkedOut): boolean {
  const {
    asked,
    resolved: { conditions },
  } = flown;
  const farthest = runway.length - runway.spot - rollOf(flown);
  const start = takeUp(from, conditions).state;
  const sides: readonly Side[] = [1, -1];
  const over = (flight: Flight, state: Float64Array) => {
    flight.state.set(state);
    return flight;
  };
  const flight = new Flight(conditions, 0, 'search');
  const lands = () => {
    const state = Float64Array.from(flight.state);
    return [[], [finalLine(steepUntil, conditions.polar.speed)]].some((first) => {
      over(flight, state);
      for (const leg of [...first, ...finalLegs(conditions, asked.pull)]) flight.leg(leg);
      return flight.state[ALONG]! >= -runway.spot && flight.state[ALONG]! <= farthest;
    });
  };
  for (let bearing = -180; bearing < 180; bearing += 6) {
    for (const first of sides) {
      over(flight, start);
      const track = (bearing * Math.PI) / 180;
      flyOnTo(track, first, asked.bank, flight);
      const straight: LineLeg = {
        kind: 'line',
        phase: 'base',
        track,
        until: { lasts: 0.5 },
        eas: conditions.polar.speed,
      };
      while (flight.state[HEIGHT]! > soundFinal) {
        const here = Float64Array.from(flight.state);
        for (const last of sides) {
          over(flight, here);
          flyOnTo(0, last, asked.bank, flight);
          const isOnFinal = Math.abs(flight.state[ACROSS]!) < 8 && flight.state[HEIGHT]! >= soundFinal;
          if (isOnFinal && lands()) return true;
        }
        over(flight, here);
        flight.leg(straight);
      }
    }
  }
  return false;
}
