import { describe, expect, it } from 'vitest';
import { requestFor, windOffRunway } from '../../../tests/flight-school.ts';
import { metresPerSecondPerKnot } from '../../units/factors.ts';
import { standardGravity } from '../air/constants.ts';
import { planForFaults } from './fault-plan.ts';
import { flyFault } from './fly-fault.ts';
import {
  backToThePath,
  beginsFinal,
  belowThePath,
  floatFrom,
  slowOnFinal,
  steepApproachLoses,
} from './on-final.ts';
import { spareAfter } from './recover-fault.ts';

const kt = metresPerSecondPerKnot;
const calm = planForFaults(requestFor('osier', { wind: windOffRunway(0, 0) }));
const windy = planForFaults(requestFor('osier', { wind: windOffRunway(0, 12) }));
const { approach } = calm.resolved.conditions.speeds;

describe('low on final', () => {
  it('needs level flight over the height lost times the glide ratio of final', () => {
    const back = backToThePath(calm, 20)!;
    const final = calm.pattern.flight.track.findLast(({ phase }) => phase === 'final')!;
    // Less by what the path first drops while the speed rises from best glide to the approach speed.
    const gained =
      (1.02 ** 2 * (approach ** 2 - calm.resolved.conditions.polar.speed ** 2)) / (2 * standardGravity);
    const level = (20 - gained) * (final.groundspeed / final.sink);
    expect(back.distance / level).toBeGreaterThan(0.97);
    expect(back.distance / level).toBeLessThan(1.05);
    expect(back.seconds).toBeGreaterThan(back.distance / (approach * 1.03));
  });
  it('takes longer against a wind', () => {
    const [still, wind] = [backToThePath(calm, 10)!, backToThePath(windy, 10)!];
    expect(wind.distance / wind.seconds).toBeLessThan(still.distance / still.seconds);
  });
  it('too low to have a final left has no such answer', () => {
    expect(backToThePath(calm, 400)).toBeUndefined();
  });
});

describe('below the planned path', () => {
  const start = beginsFinal(calm.pattern.flight.track)!;
  it('is nothing on it, and counts straight down from it', () => {
    for (const { along, height } of calm.pattern.flight.track.filter(({ phase }) => phase === 'final'))
      expect(belowThePath(calm, { along, height })).toBeCloseTo(0, 9);
    expect(belowThePath(calm, { along: start.along, height: start.height - 12 })).toBeCloseTo(12, 9);
    expect(belowThePath(calm, { along: start.along / 2, height: 300 })).toBeLessThan(-200);
  });
  it('goes on backwards at the steady glide, where a late base turn comes to final farther out', () => {
    const out = { along: start.along - 100, height: start.height };
    const steady = calm.pattern.flight.track.findLast(({ phase }) => phase === 'final')!;
    const below = belowThePath(calm, out)!;
    expect(below / ((100 * steady.sink) / steady.groundspeed)).toBeCloseTo(1, 1);
    const back = backToThePath(calm, out)!;
    expect(back.distance).toBeCloseTo(100, 9);
    expect(back.height).toBe(start.height);
    // From the same height below, farther out, it is met as much sooner: the same level flight.
    const lower = backToThePath(calm, { along: out.along, height: start.height - 20 })!;
    expect(lower.along).toBeCloseTo(backToThePath(calm, 20)!.along, 9);
  });
  it('is not known past where final ends', () => {
    expect(belowThePath(calm, { along: 0, height: 10 })).toBeUndefined();
  });
});

describe('high on final', () => {
  it('loses with the steep approach what brings the wheels to the spot, and not a metre more', () => {
    const most = steepApproachLoses(calm)!;
    expect(most).toBeGreaterThan(10);
    const high = flyFault(calm, { kind: 'final-height', by: most });
    expect(high.flown && high.end.along).toBeGreaterThan(50);
    const spareFrom = (by: number) => {
      const change = { kind: 'final-height', by } as const;
      const fault = flyFault(calm, change);
      return fault.flown ? spareAfter('steep-approach', calm, change)!(fault.track[0]!) : Number.NaN;
    };
    expect(spareFrom(most - 1)).toBeGreaterThan(0);
    expect(spareFrom(most + 1)).toBeLessThan(0);
  });
  it('has less to lose the nearer it begins, and nothing at 150 ft', () => {
    const start = beginsFinal(calm.pattern.flight.track)!;
    const { eas } = start;
    const from = (share: number) => steepApproachLoses(calm, { along: start.along * share, eas });
    expect(from(1)).toBeCloseTo(steepApproachLoses(calm)!, 6);
    expect(from(0.8)).toBeLessThan(from(1)!);
    expect(from(1.2)).toBeGreaterThan(from(1)!);
    expect(from(0.3)).toBeUndefined();
  });
  it('has no answer for an aircraft without a steep approach', () => {
    const request = requestFor('osier');
    const bare = { ...request, aircraft: { ...request.aircraft, steepApproach: undefined } };
    expect(steepApproachLoses(planForFaults(bare))).toBeUndefined();
  });
});

describe('slow on final', () => {
  it('takes more height to put right than the speed is worth in energy', () => {
    const slow = slowOnFinal(calm, approach - 8 * kt);
    expect(slow.energyHeight).toBeGreaterThan(0);
    expect(slow.height).toBeGreaterThan(slow.energyHeight);
    // The rest is the sink of the glide meanwhile.
    expect((slow.height - slow.energyHeight) / slow.time).toBeGreaterThan(
      0.9 * Math.min(slow.sink, slow.plannedSink) * 0.95,
    );
    // At about 1 kt a second.
    expect(slow.time).toBeCloseTo((8 * kt) / 0.5, 6);
  });
  it('is behind the drag curve below the best-glide speed, and not above it', () => {
    const best = calm.resolved.conditions.polar.speed;
    expect(slowOnFinal(calm, best * 0.95).behindTheDragCurve).toBe(true);
    expect(slowOnFinal(calm, best * 1.02).behindTheDragCurve).toBe(false);
  });
  it('costs nothing at the approach speed', () => {
    expect(slowOnFinal(calm, approach)).toMatchObject({ energyHeight: 0, time: 0 });
  });
});

describe('fast at the round-out', () => {
  it('floats the planned way at the planned speed', () => {
    const planned = floatFrom(windy, approach)!;
    const start = windy.pattern.flight.track.findLast(({ phase }) => phase === 'final')!;
    expect(planned.landing).toBeCloseTo(-start.along, 1);
  });
  it('floats farther with every knot', () => {
    const ways = [0, 2, 5, 10].map((knots) => floatFrom(windy, approach + knots * kt)!.landing);
    for (let i = 1; i < ways.length; i++) expect(ways[i]).toBeGreaterThan(ways[i - 1]!);
  });
  it('has no landing where the speed does not last to the ground', () => {
    expect(floatFrom(calm, calm.resolved.conditions.speeds.touchdown * 1.001)).toBeUndefined();
  });
});
