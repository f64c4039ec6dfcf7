import type { Conditions } from '../flying/conditions.ts';
import { type ClosedApproach, closeApproach, type OpenApproach } from '../flying/open-approach.ts';
import { finalLegs, joinFromBase, stillAirLead } from '../flying/pattern-legs.ts';
import { seekRoot, type Whereabouts } from '../numerics/root.ts';
import type { SolvedName } from '../terms/approach.ts';
import { number, optional } from '../terms/rules.ts';
import {
  type ApproachMethod,
  type ApproachTask,
  plannedFinal,
  type Solution,
  spotTolerance,
} from './approach-method.ts';

/**
 * The 90: the throttle closes at the base key, on base leg, where the spot lies 45 degrees off the track
 * (FAA-H-8083-3, chapter 9, 90-degree power-off approach). Given the distance of the base leg from the spot, the
 * height is found; given the height, the distance. Given neither, the base leg lies where downwind does, or far
 * enough out for the turn to final to be complete with height in hand.
 */
export const approach90: ApproachMethod = {
  id: '90',
  startsAt: 'base-key',
  usualStart: 'pattern',
  finds: ['throttle-height', 'base-distance'],
  hasOwnSpacing: false,
  options: { baseDistance: optional(number(50, 5000, 'length')) },
  insteadOfHeight: ['baseDistance'],
  solve: (asked, conditions) => {
    if (asked.heightGiven) return findDistance(asked, conditions);
    const found = findHeight(asked, conditions);
    const isAsked = asked.options['90']?.baseDistance !== undefined;
    if (isAsked || (found?.made && found.closed.finalHeight >= plannedFinal(asked))) return found;
    return withInHand(asked, conditions) ?? found;
  },
};

/** m. */
const heights = [20, 3000] as const;
const furthest = 20_000;

function findHeight(asked: ApproachTask, conditions: Conditions): Solution | undefined {
  const distance = asked.options['90']?.baseDistance ?? asked.spacing;
  const open: OpenNumber = {
    name: 'throttle-height',
    approaching: (height) => approaching90(height, distance, asked, conditions),
    guess: (2 * distance) / conditions.polar.ratio,
    slope: conditions.polar.ratio,
    within: heights,
  };
  return solve(open, asked, conditions);
}

/** The lowest height from which the turn to final is complete with that height in hand; undefined where none is found. */
function withInHand(asked: ApproachTask, conditions: Conditions): Solution | undefined {
  const wanted = plannedFinal(asked);
  let last: Solution | undefined;
  const spare = (height: number): number => {
    last = findDistance({ ...asked, height }, conditions);
    return last?.made ? last.closed.finalHeight - wanted : Number.NaN;
  };
  const sought = seekRoot(spare, { guess: 2 * wanted, slope: 1, within: heights }, heightTolerance);
  if (!sought?.found || !last) return undefined;
  return { ...last, solved: { name: 'throttle-height', value: sought.x, unit: 'm' } };
}

/** m: about a tenth of a foot. */
const heightTolerance = 0.03;

function findDistance(asked: ApproachTask, conditions: Conditions): Solution | undefined {
  const open: OpenNumber = {
    name: 'base-distance',
    approaching: (distance) => approaching90(asked.height, distance, asked, conditions),
    guess: (asked.height * conditions.polar.ratio) / 2,
    slope: -2,
    within: [stillAirLead(conditions, asked.bank), furthest],
  };
  return solve(open, asked, conditions);
}

/** The number that the approach leaves open, what is known of it, and what is flown with it. */
interface OpenNumber extends Whereabouts {
  readonly name: SolvedName;
  readonly approaching: (x: number) => OpenApproach;
}

function solve(
  { name, approaching, ...likely }: OpenNumber,
  { touchdown = 0 }: ApproachTask,
  conditions: Conditions,
): Solution | undefined {
  let last: ClosedApproach | undefined;
  const miss = (x: number): number => {
    last = closeApproach(approaching(x), conditions, last?.joinValues);
    return last ? last.miss - touchdown : Number.NaN;
  };
  const sought = seekRoot(miss, likely, spotTolerance);
  if (!sought || !last) return undefined;
  return { closed: last, solved: { name, value: sought.x, unit: 'm' }, made: sought.found && last.sound };
}

/** From the base key, `distance` m from the spot both along and across, with its join still open. */
function approaching90(
  height: number,
  distance: number,
  asked: ApproachTask,
  conditions: Conditions,
): OpenApproach {
  const { side, bank, pull } = asked;
  return {
    start: { along: -distance, across: side * distance, height, eas: conditions.polar.speed },
    stages: [{ before: [], join: joinFromBase(side, bank, conditions) }],
    after: finalLegs(conditions, pull),
  };
}
