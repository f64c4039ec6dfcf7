import { type Approached, type Approaching, approach } from '../flying/approaching.ts';
import type { Conditions } from '../flying/conditions.ts';
import { finalLegs, joinFromBase, stillAirLead } from '../flying/pattern-legs.ts';
import { seekRoot } from '../numerics/root.ts';
import {
  type Answer,
  type ApproachMethod,
  type Asked,
  plannedFinal,
  spotTolerance,
} from './approach-method.ts';

/**
 * The 90: the throttle closes at the base key, on base leg, where the spot lies 45 degrees off the
 * track (FAA-H-8083-3, chapter 9, 90-degree power-off approach). Given the distance of the base leg from the spot, the
 * height is found; given the height, the distance. Given neither, the base leg lies where downwind does, or so much farther
 * out that the turn to final is complete with something in hand.
 */
export const approach90: ApproachMethod = {
  id: '90',
  answer: (asked, conditions) => {
    if (asked.heightGiven) return findDistance(asked, conditions);
    const found = findHeight(asked, conditions);
    const isAsked = asked.baseDistance !== undefined;
    if (isAsked || (found?.made && found.approached.finalHeight >= plannedFinal(asked))) return found;
    return withInHand(asked, conditions) ?? found;
  },
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

/** The lowest height from which the turn to final is complete with that in hand; undefined where none is found. */
function withInHand(asked: Asked, conditions: Conditions): Answer | undefined {
  const wanted = plannedFinal(asked);
  let last: Answer | undefined;
  const spare = (height: number): number => {
    last = findDistance({ ...asked, height }, conditions);
    return last?.made ? last.approached.finalHeight - wanted : Number.NaN;
  };
  const sought = seekRoot(spare, 2 * wanted, 1, heights, heightTolerance);
  if (!sought?.found || !last) return undefined;
  return { ...last, solved: { name: 'throttle-height', value: sought.x, unit: 'm' } };
}

/** m: a tenth of a foot, about. */
const heightTolerance = 0.03;

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
