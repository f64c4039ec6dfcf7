import type { Element } from 'hast';
import { describe, expect, it } from 'vitest';
import { windAt } from '../../flight/air/wind.ts';
import { reachFrom } from '../../flight/flying/reach.ts';
import { planApproach, workOut } from '../../flight/plan/planner.ts';
import { turnFigures } from '../../flight/questions/turn-figures.ts';
import type { Plan, PlanRequest } from '../../flight/terms/plan.ts';
import { createNodeBoard } from '../../press/printing/node-board.ts';
import { radiansPerDegree } from '../../units/factors.ts';
import { aviation } from '../../words/figures/aviation.ts';
import { keyNames } from '../../words/keys/key-names.ts';
import { finalSightDrawing } from '../final-sight/final-sight.ts';
import { patternDrawing } from '../pattern/pattern.ts';
import { profileDrawing } from '../profile/profile.ts';
import { reachDrawing } from '../reach/reach.ts';
import { reachField } from '../reach/reach-ground.ts';
import type { ReachScene } from '../reach/reach-scene.ts';
import { roundOutDrawing } from '../round-out/round-out.ts';
import { aircraft, airfieldOf, fasterAircraft, runwayOf } from '../shared/test-plans.ts';
import { turnsDrawing } from '../turns/turns.ts';
import { normalForm } from './normal-form.ts';

// Every drawing as it is, kept beside this file: what changes in one of them is to be looked at as a picture before
// `npx vitest run src/drawing/snapshots -u` renews it.

const options = { units: aviation, board: createNodeBoard(), id: 'd', maxWidth: 174, maxHeight: 150 };
const runway = runwayOf({ length: 640, spot: 150 });

/** Left-hand with the one aircraft, right-hand with the other; the wind 43 degrees from the right of final. */
function requestOf(approach: PlanRequest['approach'], circuit: 'left' | 'right'): PlanRequest {
  return {
    aircraft: circuit === 'left' ? aircraft : fasterAircraft,
    airfield: airfieldOf(runway),
    runway,
    approach,
    circuit,
    power: 'idle',
    wind: { from: 280 * radiansPerDegree, speed: 5 },
  };
}

function reachOf(request: PlanRequest, plan: Plan): ReachScene {
  const key = plan.keys.find(({ id }) => id === 'downwind-key') ?? plan.keys[0]!;
  const { heading } = plan.track.find(({ time }) => time >= key.time)!;
  const from = {
    along: key.along,
    across: key.across,
    height: key.height,
    heading: heading - runway.heading,
  };
  const { conditions } = workOut(request).resolved;
  const outline = reachFrom(from, plan.flown.bank, conditions);
  const meadow = { name: 'meadow', along: -500, across: -600, heading: 3.5, length: 300, width: 90 };
  return {
    plan,
    from,
    label: keyNames[key.id],
    bank: plan.flown.bank,
    aloft: windAt(conditions.wind, from.height, runway.heading),
    outline,
    fields: [reachField({ ...meadow, surface: 'grass', obstacles: [] }, runway.heading, outline)],
  };
}

function turnsOf(plan: Plan): Element {
  const turns = [20, 30, 45].map((degrees) => {
    const bank = degrees * radiansPerDegree;
    const [half, whole] = [Math.PI, 2 * Math.PI].map((angle) => turnFigures(plan, bank, angle).flown!);
    return {
      bank,
      radius: whole!.radius,
      heightLost: { half: half!.heightLost, whole: whole!.heightLost },
    };
  });
  return turnsDrawing(turns, { ...options, aircraft: plan.aircraft.name, note: 'In still air.' }).svg;
}

describe.each(['left', 'right'] as const)('%s-hand, as it was drawn before', (circuit) => {
  const keep = (name: string, svg: Element) =>
    expect(normalForm(svg)).toMatchFileSnapshot(`kept/${name}-${circuit}.svg`);

  it.each(['90', '180', '360', 'spiral'] as const)('the %s', async (approach) => {
    const request = requestOf(approach, circuit);
    const plan = planApproach(request);
    await keep(`pattern-${approach}`, patternDrawing(plan, options).svg);
    await keep(`profile-${approach}`, profileDrawing(plan, { ...options, maxHeight: 90 }).svg);
    await keep(`reach-${approach}`, reachDrawing(reachOf(request, plan), options).svg);
  });

  it('what is the same after any approach', async () => {
    const plan = planApproach(requestOf('180', circuit));
    await keep('round-out', roundOutDrawing(plan, { ...options, maxHeight: 90 }).svg);
    await keep('final-sight', finalSightDrawing(plan, options).svg);
    await keep('turns', turnsOf(plan));
  });
});
