import { describe, expect, it } from 'vitest';
import { sampleRequest } from '../../tests/press-sample.ts';
import { positiveAngle } from '../flight/air/wind.ts';
import { planApproach } from '../flight/plan/planner.ts';
import { planTable } from './plan-table.ts';

const windLine = (speed: number, turned: number) => {
  const from = positiveAngle(sampleRequest.runway.heading + turned);
  const plan = planApproach({ ...sampleRequest, wind: { from, speed }, detail: 'flight' });
  const lines = planTable(plan).replaceAll('\u00a0', ' ').split('\n');
  return lines.find((line) => line.startsWith('Wind '))!;
};

describe('the wind of a plan in a terminal', () => {
  it('is a headwind, a tailwind, or neither, as it blows', () => {
    // 4 m/s is 7.8 kt.
    expect(windLine(4, 0)).toMatch(/^Wind 238° 8 kt: headwind 8 kt; density altitude/);
    expect(windLine(4, Math.PI)).toMatch(/^Wind 058° 8 kt: tailwind 8 kt; density altitude/);
    expect(windLine(4, Math.PI / 2)).toMatch(/^Wind 328° 8 kt: 8 kt from the right; density altitude/);
    expect(windLine(0, 0)).toMatch(/^Wind calm: no wind; density altitude/);
  });
});
