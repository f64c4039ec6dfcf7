import { metresPerFoot } from '../../units/factors.ts';
import { turnRadius } from '../aircraft/turns.ts';
import type { Conditions } from '../flying/conditions.ts';
import { Flight } from '../flying/fly.ts';
import { ALONG } from '../flying/motions.ts';
import { type ClosedApproach, closeApproach, type OpenApproach } from '../flying/open-approach.ts';
import { downwindLeg, finalLegs } from '../flying/pattern-legs.ts';
import type { CircleLeg, Leg } from '../flying/procedure.ts';
import { rootInBracket, seekRoot } from '../numerics/root.ts';
import {
  type ApproachMethod,
  type ApproachTask,
  plannedFinal,
  type Solution,
  spotTolerance,
} from './approach-method.ts';

/**
 * The full-circuit approach (FAA-H-8083-3A, chapter 8, 360-degree power-off approach): from over the spot, on the landing
 * heading, half a circle held on the ground to the downwind key, a downwind leg, the other half to final. Given the
 * start height, the radius of the circle is found, and with it the banks; given the bank, the start height.
 */
export const approach360: ApproachMethod = {
  id: '360',
  startsAt: 'overhead',
  usualStart: 2000 * metresPerFoot,
  finds: ['circle-radius', 'start-height'],
  hasOwnSpacing: false,
  isOneCircle: true,
  options: {},
  solve: (asked, conditions) =>
    asked.bankGiven && !asked.heightGiven ? findHeight(asked, conditions) : findRadius(asked, conditions),
};

/** m. */
const largestRadius = 5000;
const highestStart = 3000;

function findRadius(asked: ApproachTask, conditions: Conditions): Solution | undefined {
  const run = finalRun(asked, conditions);
  let last: ClosedApproach | undefined;
  const spare = (radius: number): number => {
    last = closeApproach(
      approaching360({ height: asked.height, radius, run }, asked, conditions),
      conditions,
    );
    return last ? last.finalHeight - plannedFinal(asked) : Number.NaN;
  };
  const slope = -(2 * Math.PI) / conditions.polar.ratio;
  const least = turnRadius(conditions.polar.speed, conditions.aircraft.turns.limit);
  const likely = { guess: asked.height / 3, slope, within: [least, largestRadius] } as const;
  const sought = seekRoot(spare, likely, spotTolerance / 100);
  if (!sought || !last) return undefined;
  return {
    closed: last,
    solved: { name: 'circle-radius', value: sought.x, unit: 'm' },
    made: sought.found && last.sound,
  };
}

function findHeight(asked: ApproachTask, conditions: Conditions): Solution | undefined {
  const run = finalRun(asked, conditions);
  let last: ClosedApproach | undefined;
  const spare = (height: number): number => {
    const still = turnRadius(conditions.polar.speed, asked.bank);
    const spareBank = (radius: number) => {
      last = closeApproach(approaching360({ height, radius, run }, asked, conditions), conditions);
      return last ? last.steepestCircle - asked.bank : Number.NaN;
    };
    const radius = rootInBracket(spareBank, [still / 4, still * 6], 1e-6);
    return last && radius !== undefined ? last.finalHeight - plannedFinal(asked) : Number.NaN;
  };
  const likely = { guess: asked.height, slope: 1, within: [plannedFinal(asked), highestStart] } as const;
  const sought = seekRoot(spare, likely, spotTolerance / 100);
  if (!sought || !last) return undefined;
  return {
    closed: last,
    solved: { name: 'start-height', value: sought.x, unit: 'm' },
    made: sought.found && last.sound,
  };
}

/** m over the ground from wings level on final, at the height of that, to the touchdown. */
function finalRun(asked: ApproachTask, conditions: Conditions): number {
  const flight = new Flight(conditions, 0, 'search');
  const legs = finalLegs(conditions, asked.pull);
  flight.begin({ along: 0, across: 0, height: plannedFinal(asked), eas: conditions.polar.speed }, legs[0]!);
  for (const leg of legs) flight.leg(leg);
  return flight.state[ALONG]! - (asked.touchdown ?? 0);
}

/** m: the start height, the radius of its two half circles, and how long the downwind leg between them is. */
interface FullCircuit {
  readonly height: number;
  readonly radius: number;
  readonly run: number;
}

/** Two half circles with a downwind leg of `run` between them, so that final is `run` long as well. */
function approaching360(
  { height, radius, run }: FullCircuit,
  asked: ApproachTask,
  conditions: Conditions,
): OpenApproach {
  const { side, pull } = asked;
  const half = side * Math.PI;
  const arc = (phase: CircleLeg['phase'], from: number, to: number): CircleLeg => ({
    kind: 'circle',
    phase,
    radius,
    side,
    from: from * half,
    to: to * half,
  });
  const before: Leg[] = [
    arc('circle', 0, 1),
    downwindLeg(side, run, conditions),
    arc('base-turn', 1, 1.5),
    arc('final-turn', 1.5, 2),
  ];
  return {
    start: { along: 0, across: 0, height, eas: conditions.polar.speed },
    stages: [{ before }],
    after: finalLegs(conditions, pull),
  };
}
