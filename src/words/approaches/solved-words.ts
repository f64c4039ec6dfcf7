import type { SolvedName } from '../../flight/terms/approach.ts';
import type { Plan } from '../../flight/terms/plan.ts';
import { formatAngle } from '../../units/angle-text.ts';
import { formatDistance, formatHeight } from '../figures/format.ts';
import type { PageUnits } from '../figures/page-units.ts';

interface SolvedWords {
  /** In words that follow "found was …". */
  readonly name: string;
  /** What was found, in a phrase of its own. */
  readonly phrase: (value: number, units: PageUnits) => string;
}

const words: Readonly<Record<SolvedName, SolvedWords>> = {
  'past-abeam': {
    name: 'how far past abeam the spot the turn to base begins',
    phrase: (value, units) => `Base turn: ${formatDistance(value, units)} past abeam the spot`,
  },
  'throttle-height': {
    name: 'the height at which the throttle closes',
    phrase: (value, units) => `Throttle closed at ${formatHeight(value, units)}`,
  },
  'base-distance': {
    name: 'the distance of the base leg from the spot',
    phrase: (value, units) => `Base leg: ${formatDistance(value, units)} from the spot`,
  },
  'circle-radius': {
    name: 'the radius of the circle held on the ground',
    phrase: (value, units) => `Circle held on the ground: radius ${formatDistance(value, units)}`,
  },
  'circle-bank': {
    name: 'the bank of the circles',
    phrase: (value) => `Circles at ${formatAngle(value)} of bank`,
  },
  'start-height': {
    name: 'the height over the spot at the start',
    phrase: (value, units) => `Start: ${formatHeight(value, units)} over the spot`,
  },
};

/** What was left open, in words. */
export function solvedName({ solved }: Plan): string {
  return solved.name === 'none' ? solved.name : words[solved.name].name;
}

/**
 * What was found, rounded as a pilot uses it: `Base turn: 550 m past abeam the spot`. Throws RangeError where nothing
 * was found.
 */
export function solvedPhrase({ solved }: Plan, units: PageUnits): string {
  if (solved.name === 'none') throw new RangeError('nothing was found that could be said');
  return words[solved.name].phrase(solved.value, units);
}
