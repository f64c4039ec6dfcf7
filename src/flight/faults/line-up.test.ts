import { describe, expect, it } from 'vitest';
import { requestFor, windOffRunway } from '../../../tests/flight-school.ts';
import { radiansPerDegree } from '../../units/factors.ts';
import { planForFaults } from './fault-plan.ts';
import { flyFault } from './fly-fault.ts';
import { lineUp } from './line-up.ts';

const plan = planForFaults(requestFor('osier', { wind: windOffRunway(-28, 12) }));
const { request, resolved, asked } = plan;
const { conditions } = resolved;
const back = (point: Parameters<typeof lineUp>[0], bank = asked.bank) =>
  lineUp(point, bank, request.runway.heading, conditions);

function turnWith(by: number) {
  const flight = flyFault(plan, { kind: 'final-turn-bank', amount: { by: by * radiansPerDegree } });
  if (!flight.flown) throw new Error(String(flight.reason));
  return flight.track;
}

describe('turning back to the centreline', () => {
  it('is the planned turn where it begins as the planned turn does', () => {
    const begins = turnWith(-12).findLast(({ phase }) => phase === 'base')!;
    const final = plan.pattern.keys.find(({ id }) => id === 'final')!;
    const made = back(begins)!;
    expect(Math.abs(made.height - final.height)).toBeLessThan(1);
    expect(Math.abs(made.along - final.along)).toBeLessThan(10);
  });
  it('costs more height and ends nearer to the spot the later it begins, from wings level beside the centreline', () => {
    const beside = turnWith(-12).filter(({ phase }) => phase === 'final');
    const [early, late] = [beside[2]!, beside[12]!];
    const [a, b] = [back(early)!, back(late)!];
    expect(b.height).toBeLessThan(a.height);
    expect(b.along).toBeGreaterThan(a.along);
    expect(a.height).toBeLessThan(early.height);
  });
  it('takes two turns of one radius in still air: 2 R (1 - cos a) across, 2 R sin a along', () => {
    const calm = planForFaults(requestFor('osier'));
    const level = calm.pattern.flight.track.find(({ phase }) => phase === 'final')!;
    const off = 20;
    const point = { ...level, across: off, height: 120 };
    const made = lineUp(point, asked.bank, request.runway.heading, calm.resolved.conditions)!;
    const tas = level.eas * calm.resolved.conditions.tasOverEas(110);
    const radius = (tas * tas) / (9.80665 * Math.tan(asked.bank));
    const angle = Math.acos(1 - off / (2 * radius));
    // Rolling in, over and out takes a few seconds that the circles do not count.
    const along = made.along - level.along;
    expect(along).toBeGreaterThan(2 * radius * Math.sin(angle));
    expect(along).toBeLessThan(2 * radius * Math.sin(angle) + 5 * tas);
  });
  it('goes straight on between the turns from far beside it, to either side alike in still air', () => {
    const calm = planForFaults(requestFor('osier'));
    const level = calm.pattern.flight.track.find(({ phase }) => phase === 'final')!;
    const from = (across: number) =>
      lineUp(
        { ...level, across, height: 200 },
        asked.bank,
        request.runway.heading,
        calm.resolved.conditions,
      )!;
    const [left, right] = [from(-250), from(250)];
    expect(left.height).toBeCloseTo(right.height, 2);
    expect(left.along).toBeCloseTo(right.along, 1);
    // 45 degrees: as far along as across, and the turns beyond that.
    expect(left.along - level.along).toBeGreaterThan(250);
  });
});
