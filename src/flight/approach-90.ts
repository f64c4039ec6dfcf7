import { type Answer, type ApproachMethod, type Asked, spotTolerance } from './approach-method.ts';
import { type Approached, type Approaching, approach } from './approaching.ts';
import type { Conditions } from './conditions.ts';
import { finalLegs, joinFromBase, stillAirLead } from './pattern-legs.ts';
import { seekRoot } from './root.ts';

/**
 * The quarter-circuit approach: the throttle closes at the base key, on base leg, where the spot lies 45 degrees off the
 * track (FAA-H-8083-3, chapter 9, 90-degree power-off approach). Given the distance of the base leg from the spot, the
 * height is found; given the height, the distance.
 */
export const approach90: ApproachMethod = {
  id: '90',
  answer: (asked, conditions) =>
    asked.heightGiven ? findDistance(asked, conditions) : findHeight(asked, conditions),
};

/** m. */
const heights = [20, 3000] as const;
const furthest = 20_000;

function findHeight(asked: Asked, conditions: Conditions): Answer | undefined {
  const distance = asked.baseDistance ?? asked.spacing;
  return answer(
    'throttle-height',
    (height) => approaching90(height, distance, asked, conditions),
    asked,
    conditions,
    {
      guess: (2 * distance) / conditions.polar.ratio,
      slope: conditions.polar.ratio,
      range: heights,
    },
  );
}

function findDistance(asked: Asked, conditions: Conditions): Answer | undefined {
  const least = stillAirLead(conditions, asked.bank);
  return answer(
    'base-distance',
    (distance) => approaching90(asked.height, distance, asked, conditions),
    asked,
    conditions,
    {
      guess: (asked.height * conditions.polar.ratio) / 2,
      slope: -2,
      range: [least, furthest],
    },
  );
}

function answer(
  name: string,
  approaching: (x: number) => Approaching,
  { touchdown = 0 }: Asked,
  conditions: Conditions,
  { guess, slope, range }: { guess: number; slope: number; range: readonly [number, number] },
): Answer | undefined {
  let last: Approached | undefined;
  const miss = (x: number): number => {
    last = approach(approaching(x), conditions, last?.joined);
    return last ? last.miss - touchdown : Number.NaN;
  };
  const sought = seekRoot(miss, guess, slope, range, spotTolerance);
  if (!sought || !last) return undefined;
  return { approached: last, solved: { name, value: sought.x, unit: 'm' }, made: sought.found && last.sound };
}

/** From the base key, `distance` m from the spot both along and across, its join still open. */
function approaching90(height: number, distance: number, asked: Asked, conditions: Conditions): Approaching {
  const { side, bank, pull } = asked;
  return {
    start: { along: -distance, across: side * distance, height, eas: conditions.polar.speed },
    stages: [{ before: [], join: joinFromBase(side, bank, conditions) }],
    after: finalLegs(conditions, pull),
  };
}
