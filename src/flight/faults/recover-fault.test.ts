import { describe, expect, it } from 'vitest';
import { requestFor, windOffRunway } from '../../../tests/flight-school.ts';
import { metresPerSecondPerKnot, radiansPerDegree } from '../../units/factors.ts';
import { Flight } from '../flying/fly.ts';
import { ACROSS, ALONG, HEIGHT } from '../flying/motions.ts';
import { finalLegs } from '../flying/pattern-legs.ts';
import type { Side } from '../flying/procedure.ts';
import { finalLine, soundFinal, steepUntil } from '../plan/final-band.ts';
import type { FaultChange, FaultFlown, RecoveryWay } from '../terms/fault.ts';
import type { TrackSample } from '../terms/plan.ts';
import { type FaultPlan, planForFaults } from './fault-plan.ts';
import { flyFault } from './fly-fault.ts';
import { part } from './last-point.ts';
import { fromSound, recoveredFrom, recoverFault, spareAfter } from './recover-fault.ts';

const kt = metresPerSecondPerKnot;
const deg = radiansPerDegree;

function flownWith(plan: FaultPlan, change: FaultChange): FaultFlown {
  const flight = flyFault(plan, change);
  if (!flight.flown) throw new Error(String(flight.reason));
  return flight;
}

/** The point of a track at a height, looked for from the end. */
function atHeight(track: readonly TrackSample[], height: number): TrackSample {
  const next = track.findIndex((sample) => sample.height <= height);
  const [a, b] = [track[next - 1]!, track[next]!];
  return { ...part(a, b, (a.height - height) / (a.height - b.height)), phase: b.phase };
}

const changes: FaultChange[] = [
  { kind: 'spacing', amount: { factor: 1.4 } },
  { kind: 'spacing', amount: { factor: 0.6 } },
  { kind: 'base-turn', seconds: 6 },
  { kind: 'base-turn', seconds: -4 },
  { kind: 'wind', amount: { by: 5 * kt } },
  { kind: 'power-stopped' },
  { kind: 'throttle', seconds: 5 },
  { kind: 'glide-speed', factor: 1.2 },
  { kind: 'start-speed', amount: { by: 12 * kt } },
  { kind: 'final-height', by: 15 },
  { kind: 'final-turn-bank', amount: { by: -12 * deg } },
  { kind: 'final-turn-bank', amount: { by: 10 * deg } },
];

/** When a way first fails, every second of the flight looked at: the pair of times between which it does. */
function failsBetween(by: RecoveryWay, plan: FaultPlan, fault: FaultFlown): [number, number] | undefined {
  const spare = spareAfter(by, plan, fault.change)!;
  const points = fromSound(by, recoveredFrom(by, fault), spare);
  let good = Number.NEGATIVE_INFINITY;
  for (const point of points) {
    if (point.time < good + 1 && point !== points.at(-1)) continue;
    if (!(spare(point) >= 0)) return [good, point.time];
    good = point.time;
  }
  return undefined;
}

const longFaults: FaultChange[] = [
  { kind: 'start-speed', amount: { by: 12 * kt } },
  { kind: 'spacing', amount: { factor: 0.7 } },
  { kind: 'final-height', by: 15 },
  { kind: 'final-height', by: 25 },
];

/**
 * Every S-turn of 5 to 45 degrees to either side from a point of final, flown leg by leg: where its last turn is
 * complete, and where the wheels then touch, by the steep approach down to 150 ft.
 */
function sTurnsFlown(from: TrackSample, { asked, resolved: { conditions } }: FaultPlan) {
  const ends: { height: number; miss: number }[] = [];
  const steep = { ...finalLine(steepUntil, conditions.steep!.speed), steep: true };
  for (const side of [1, -1] as const) {
    for (let angle = 5; angle <= 45; angle += 1) {
      const turn = { kind: 'turn', phase: 'final', bank: asked.bank } as const;
      const off: Side = side === 1 ? -1 : 1;
      const fly = (across: number) => {
        const flight = new Flight(conditions, 0, 'search');
        const { along, height } = from;
        const out = { ...turn, track: side * angle * deg, side, rollOut: true };
        flight.begin({ along, across: 0, height, eas: conditions.polar.speed }, out);
        flight.leg(out);
        flight.leg({ ...turn, track: -side * angle * deg, side: off, rollOut: true });
        flight.leg({
          kind: 'line',
          phase: 'final',
          track: -side * angle * deg,
          until: { reaches: 'across', value: across, growing: off },
          eas: conditions.polar.speed,
        });
        flight.leg({ ...turn, track: 0, side, rollOut: true });
        return flight;
      };
      // The last turn begins where it ends on the centreline.
      let lead = 0;
      for (let tries = 0; tries < 12; tries++) lead -= fly(lead).state[ACROSS]!;
      const flight = fly(lead);
      if (Math.abs(flight.state[ACROSS]!) > 0.5) continue;
      const height = flight.state[HEIGHT]!;
      if (height > steepUntil) flight.leg(steep);
      for (const leg of finalLegs(conditions, asked.pull)) flight.leg(leg);
      ends.push({ height, miss: flight.state[ALONG]! });
    }
  }
  return ends;
}

describe('the last height of a recovery', () => {
  for (const id of ['osier', 'withy'] as const) {
    const plan = planForFaults(requestFor(id, { wind: windOffRunway(-28, 10) }));
    it.each(changes)(`makes the spot a metre higher and not a metre lower: ${id}, $kind`, (change) => {
      const fault = flownWith(plan, change);
      const ways = recoverFault(plan, fault);
      for (const way of ways) {
        if (!way.makes || way.lasts) continue;
        const spare = spareAfter(way.by, plan, change)!;
        expect(
          spare(atHeight(fault.track, way.height + 1)),
          `${way.by} a metre higher`,
        ).toBeGreaterThanOrEqual(0);
        // A turn may bring it back for a moment.
        const lower = [1, 2].map((by) => spare(atHeight(fault.track, way.height - by)));
        expect(Math.min(...lower), `${way.by} a metre or two lower`).toBeLessThan(0);
      }
    });
  }
  for (const id of ['osier', 'withy'] as const) {
    it.each([
      [0, 0],
      [-28, 10],
      [50, 12],
    ])(`is where looking at every second finds it: ${id}, %d degrees off the nose at %d kt`, (off, knots) => {
      const plan = planForFaults(requestFor(id, { wind: windOffRunway(off, knots) }));
      for (const change of changes) {
        const fault = flownWith(plan, change);
        for (const way of recoverFault(plan, fault)) {
          if (!way.makes && !spareAfter(way.by, plan, change)) continue;
          const [good, bad] = failsBetween(way.by, plan, fault) ?? [];
          const about = `${change.kind}, ${way.by}`;
          expect(way.makes, about).toBe(
            good !== Number.NEGATIVE_INFINITY && recoveredFrom(way.by, fault).length > 0,
          );
          if (!way.makes) continue;
          expect(way.lasts, about).toBe(good === undefined);
          if (good === undefined || bad === undefined) continue;
          expect(way.time, about).toBeGreaterThanOrEqual(good);
          expect(way.time, about).toBeLessThanOrEqual(bad);
        }
      }
    });
  }
  it('is found for the base turn flown late: the corner cut above it', () => {
    const plan = planForFaults(requestFor('osier', { wind: windOffRunway(-28, 12) }));
    const [cut] = recoverFault(plan, flownWith(plan, { kind: 'base-turn', seconds: 6 }));
    expect(cut).toMatchObject({ by: 'cut-corner', makes: true, phase: 'downwind' });
  });
  it('is one way alone for another bank in the turn to final: back to the centreline, from above 300 ft', () => {
    const plan = planForFaults(requestFor('osier', { wind: windOffRunway(-28, 12) }));
    for (const by of [-12, 10]) {
      const [back, ...more] = recoverFault(
        plan,
        flownWith(plan, { kind: 'final-turn-bank', amount: { by: by * deg } }),
      );
      expect(more).toEqual([]);
      expect(back).toMatchObject({ by: 'line-up', makes: true, lasts: false });
      expect(back?.makes && back.height).toBeGreaterThan(soundFinal);
    }
  });
  it('is for an S-turn one that a flown S-turn bears out: complete by 300 ft or by more, and not past the spot', () => {
    let found = 0;
    for (const id of ['osier', 'withy'] as const) {
      for (const finalTurn of [undefined, 400 * 0.3048]) {
        const request = requestFor(id, { wind: windOffRunway(-28, 12), minimums: { finalTurn } });
        const plan = planForFaults(request);
        const least = finalTurn ?? soundFinal;
        for (const change of longFaults) {
          const fault = flownWith(plan, change);
          const turned = recoverFault(plan, fault).find(({ by }) => by === 's-turn');
          if (!turned?.makes) continue;
          found++;
          const ends = sTurnsFlown(atHeight(fault.track, turned.height), plan);
          const about = `${id}, ${change.kind}, ${turned.height}, ${JSON.stringify(ends.filter((e) => e.height > least - 3))}`;
          // Some S-turn ends wings level at the least height or higher, and from there the spot is not passed.
          expect(
            ends.some(({ height, miss }) => height >= least - 0.1 && miss <= 1),
            about,
          ).toBe(true);
          // None that is complete so high does it from where the height is all but that.
          const late = sTurnsFlown(atHeight(fault.track, least + 3), plan);
          for (const { height } of late) expect(height, about).toBeLessThan(least);
        }
      }
    }
    expect(found).toBeGreaterThan(3);
  });
  it('is nowhere for a landing: that has its own figures', () => {
    const plan = planForFaults(requestFor('osier'));
    expect(recoverFault(plan, flownWith(plan, { kind: 'round-out-height', amount: { factor: 2 } }))).toEqual(
      [],
    );
  });
});
