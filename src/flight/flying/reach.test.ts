import { describe, expect, it } from 'vitest';
import { requestFor, runwayHeading } from '../../../tests/flight-school.ts';
import { standardGravity } from '../air/constants.ts';
import { turnRadius } from '../aircraft/turns.ts';
import { angleBetween } from '../numerics/angle.ts';
import { resolveRequest } from '../plan/request.ts';
import type { PlanRequest } from '../terms/plan.ts';
import { Flight } from './fly.ts';
import { ACROSS, ALONG, HEADING, HEIGHT, speedHeldDownTo } from './motions.ts';
import type { LineLeg } from './procedure.ts';
import { type GroundPoint, type Position, reachFrom, takeUp } from './reach.ts';
import { flyOnTo } from './turn-on-to.ts';

const degrees = Math.PI / 180;
const bank = 30 * degrees;
const step = 5 * degrees;

const conditionsIn = (speed: number, from = 0, profile: PlanRequest['windProfile'] = 'uniform') =>
  resolveRequest(requestFor('osier', { windProfile: profile, wind: { from, speed } })).conditions;
const calm = conditionsIn(0);

const at = (height: number, heading: number): Position => ({ along: -150, across: 400, height, heading });
const away = (point: GroundPoint, from: Position) =>
  Math.hypot(point.along - from.along, point.across - from.across);

describe('the ground within reach in still air', () => {
  const { polar } = calm;
  const position = at(300, 40 * degrees);
  const ring = reachFrom(position, bank, calm);

  it('is a closed ring, a point every 5 degrees', () => {
    expect(ring).toHaveLength(73);
    expect(ring[72]).toEqual(ring[0]);
  });

  /**
   * m: the height, plus what the true airspeed of a constant equivalent one gives back as it falls on the way down:
   * the energy height h + V^2/2g is what a glide in still air spends. Below 50 ft the nose stays, and the true
   * airspeed with it.
   */
  const spentFrom = (height: number) => {
    const factors = calm.tasOverEas(height) ** 2 - calm.tasOverEas(speedHeldDownTo) ** 2;
    return height + (polar.speed ** 2 * factors) / (2 * standardGravity);
  };

  it('straight ahead is the glide ratio times the height, what the thicker air gives back counted', () => {
    for (const height of [30, 100, 300, 800]) {
      const from = at(height, 40 * degrees);
      expect(away(reachFrom(from, bank, calm)[8]!, from) / (polar.ratio * spentFrom(height))).toBeCloseTo(
        1,
        5,
      );
    }
  });

  it('lies nowhere farther than that, and nearer the more there is to turn', () => {
    const ideal = polar.ratio * spentFrom(position.height);
    for (const point of ring) expect(away(point, position)).toBeLessThanOrEqual(ideal * (1 + 1e-6));
    const tips = Array.from({ length: 36 }, (_, i) => away(ring[8 + i]!, position));
    for (let i = 1; i < tips.length; i++) expect(tips[i]).toBeLessThan(tips[i - 1]!);
  });

  it('is the same to both sides of the heading', () => {
    const { cos, sin } = Math;
    const inFlight = ({ along, across }: GroundPoint) => {
      const [dx, dy] = [along - position.along, across - position.across];
      return {
        ahead: dx * cos(position.heading) + dy * sin(position.heading),
        right: -dx * sin(position.heading) + dy * cos(position.heading),
      };
    };
    for (let i = 1; i < 36; i++) {
      const right = inFlight(ring[8 + i]!);
      const left = inFlight(ring[(8 - i + 72) % 72]!);
      expect(right.ahead).toBeCloseTo(left.ahead, 6);
      expect(right.right).toBeCloseTo(-left.right, 6);
      expect(right.right).toBeGreaterThan(0);
    }
  });

  it('is a circular arc and a straight glide, but for the second of rolling', () => {
    // A turn at a bank: radius V^2 cos g/(g0 tan bank), sink from n = cos g/cos bank; worked out at one height's air.
    const tas = polar.speed * calm.tasOverEas(position.height);
    const cosBest = Math.cos(Math.atan(1 / polar.ratio));
    let sin = 0;
    for (let i = 0; i < 100; i++) {
      sin = (cosBest / (2 * polar.ratio)) * (1 + (1 - sin * sin) / (cosBest * Math.cos(bank)) ** 2);
    }
    const cosGlide = Math.sqrt(1 - sin * sin);
    const radius = turnRadius(tas, bank) * cosGlide;
    for (const turn of [45, 90, 135, 175]) {
      const angle = turn * degrees;
      const left = position.height - radius * angle * (sin / cosGlide);
      const ahead = radius * Math.sin(angle) + left * polar.ratio * Math.cos(angle);
      const right = radius * (1 - Math.cos(angle)) + left * polar.ratio * Math.sin(angle);
      const { heading } = position;
      const point = ring[(8 + turn / 5) % 72]!;
      const expected = {
        along: position.along + ahead * Math.cos(heading) - right * Math.sin(heading),
        across: position.across + ahead * Math.sin(heading) + right * Math.cos(heading),
      };
      const rolling = (bank / calm.rollRate) * tas;
      const apart = Math.hypot(point.along - expected.along, point.across - expected.across);
      expect(apart).toBeLessThan(1.2 * rolling);
    }
  });
});

/** A glide on to a track and straight on to the ground. */
function glideOut(position: Position, track: number, conditions: typeof calm) {
  const flight = takeUp(position, conditions);
  flyOnTo(track, undefined, bank, flight);
  const heading = flight.state[HEADING]!;
  const out: LineLeg = {
    kind: 'line',
    phase: 'final',
    track: heading + angleBetween(heading, track),
    until: { reaches: 'height', value: 0, growing: -1 },
    eas: conditions.polar.speed,
  };
  flight.leg(out);
  const { state, time } = flight;
  return { along: state[ALONG]!, across: state[ACROSS]!, height: state[HEIGHT]!, time };
}

describe('a wind shifts the ground within reach', () => {
  const position = at(300, 0);
  const still = reachFrom(position, bank, calm);

  it('straight into it and straight away from it by the wind times the time of the glide, exactly', () => {
    for (const speed of [3, 8, -5]) {
      const from = speed > 0 ? runwayHeading : runwayHeading - Math.PI;
      const wind = conditionsIn(Math.abs(speed), from);
      const ring = reachFrom(position, bank, wind);
      for (const [i, track] of [
        [0, 0],
        [36, Math.PI],
      ] as const) {
        const { time } = glideOut(position, track, calm);
        expect(ring[i]!.along).toBeCloseTo(still[i]!.along - speed * time, 3);
        expect(ring[i]!.across).toBeCloseTo(still[i]!.across, 3);
      }
    }
  });

  it('straight ahead for as long as height over sink lasts', () => {
    const { time } = glideOut(position, 0, calm);
    const { polar } = calm;
    // What the falling airspeed gives back of the sink is not paid for in height: sink (1 + V dV/dh /g) = V
    // sin(glide).
    const tasAt = (height: number) => polar.speed * calm.tasOverEas(height);
    const sin = Math.sin(Math.atan(1 / polar.ratio));
    const sinkAt = (height: number) => {
      const growth = tasAt(height + 1) - tasAt(height - 1);
      return (tasAt(height) * sin) / (1 + (tasAt(height) * growth) / (2 * standardGravity));
    };
    // Simpson's rule over the height: the true airspeed changes a little on the way down, but not in the last 50 ft.
    const last = speedHeldDownTo;
    const [low, middle, high] = [sinkAt(last), sinkAt((300 + last) / 2), sinkAt(300)];
    const held = ((300 - last) / 6) * (1 / low + 4 / middle + 1 / high);
    expect(time).toBeCloseTo(held + last / (tasAt(last) * sin), 3);
  });

  it.each([0, 60, 90, 200, 300])('on every track, from %i degrees off the runway', (off) => {
    const speed = 6;
    const turn = 2 * Math.PI;
    const from = (((runwayHeading + off * degrees) % turn) + turn) % turn;
    const wind = conditionsIn(speed, from);
    const [along, across] = [-speed * Math.cos(off * degrees), -speed * Math.sin(off * degrees)];
    const ring = reachFrom(position, bank, wind);
    let held = 0;
    ring.slice(0, 72).forEach((point, i) => {
      const flown = glideOut(position, i * step, wind);
      expect(flown.height).toBeCloseTo(0, 6);
      expect(Math.hypot(flown.along - point.along, flown.across - point.across)).toBeLessThan(1e-6);
      // Where the turn changes sides the outline has a step, and a point there has no neighbour.
      const airTrack = Math.atan2(
        point.across - across * flown.time - position.across,
        point.along - along * flown.time - position.along,
      );
      if (Math.abs(airTrack) > 165 * degrees) return;
      held++;
      const inStillAir = {
        along: point.along - along * flown.time,
        across: point.across - across * flown.time,
      };
      expect(distanceTo(still, inStillAir), `bearing ${i * 5}`).toBeLessThan(6);
    });
    expect(held).toBeGreaterThan(50);
  });

  it('and lets no point be farther than the still glide and the drift together', () => {
    const wind = conditionsIn(8, runwayHeading, 'uniform');
    const { time } = glideOut(position, 0, calm);
    for (const point of reachFrom(position, bank, wind)) {
      expect(away(point, position)).toBeLessThan(wind.polar.ratio * position.height + 8 * time + 0.01);
    }
  });

  it('so far that where it is stronger than the glide nothing upwind is reached', () => {
    const wind = conditionsIn(30, runwayHeading);
    for (const point of reachFrom(position, bank, wind)) {
      expect(Number.isFinite(point.along) && Number.isFinite(point.across)).toBe(true);
      expect(point.along).toBeLessThan(position.along);
    }
  });
});

/** m from a point to the nearest side of a ring. */
function distanceTo(ring: readonly GroundPoint[], { along, across }: GroundPoint): number {
  let least = Number.POSITIVE_INFINITY;
  for (let i = 1; i < ring.length; i++) {
    const [a, b] = [ring[i - 1]!, ring[i]!];
    const [dx, dy] = [b.along - a.along, b.across - a.across];
    const share = ((along - a.along) * dx + (across - a.across) * dy) / (dx * dx + dy * dy);
    const on = Math.min(1, Math.max(0, share));
    least = Math.min(least, Math.hypot(along - a.along - on * dx, across - a.across - on * dy));
  }
  return least;
}

describe('a flight', () => {
  it('turned on to the track that it is on does not turn', () => {
    const flight = takeUp(at(300, 1), calm);
    flyOnTo(1, undefined, bank, flight);
    expect(flight.time).toBe(0);
    expect(flight).toBeInstanceOf(Flight);
  });

  it('turns its nose into a crosswind to hold a track, and takes the time that it takes', () => {
    const windy = conditionsIn(8, runwayHeading + Math.PI / 2);
    for (const track of [0, 0.25, -0.25]) {
      const flight = takeUp(at(300, 0), windy);
      flyOnTo(track, undefined, bank, flight);
      const nose = flight.state[HEADING]!;
      expect(nose - track).toBeGreaterThan(0.2);
      expect(flight.time).toBeGreaterThan(0.5);
      // From there straight on the nose does not move: it held the track already.
      const on: LineLeg = {
        kind: 'line',
        phase: 'final',
        track,
        until: { lasts: 1 },
        eas: windy.polar.speed,
      };
      flight.leg(on);
      expect(flight.state[HEADING]!).toBeCloseTo(nose, 1);
    }
  });

  it('takes the shorter way round', () => {
    expect(angleBetween(350 * degrees, 10 * degrees)).toBeCloseTo(20 * degrees, 12);
    expect(angleBetween(10 * degrees, 350 * degrees)).toBeCloseTo(-20 * degrees, 12);
    expect(angleBetween(-3 * Math.PI, Math.PI)).toBeCloseTo(0, 12);
  });
});
