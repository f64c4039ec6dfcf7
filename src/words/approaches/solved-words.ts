import type { Plan } from '../../flight/terms/plan.ts';
import { formatAngle } from '../../units/angle-text.ts';
import { formatDistance, formatHeight } from '../figures/format.ts';
import type { PageUnits } from '../figures/page-units.ts';

/** What the number that a plan left open is, in words that follow "found was …". */
const names: Readonly<Record<string, string>> = {
  'past-abeam': 'how far past abeam the spot the turn to base begins',
  'throttle-height': 'the height at which the throttle closes',
  'base-distance': 'the distance of the base leg from the spot',
  'circle-radius': 'the radius of the circle held on the ground',
  'circle-bank': 'the bank of the circles',
  'start-height': 'the height over the spot at the start',
};

/** What was left open, in words. */
export function solvedName({ solved }: Plan): string {
  return names[solved.name] ?? solved.name.replaceAll('-', ' ');
}

/** What was found, rounded as a pilot uses it, in a phrase of its own: `Base turn: 550 m past abeam the spot`. */
export function solvedPhrase({ solved }: Plan, units: PageUnits): string {
  const distance = () => formatDistance(solved.value, units);
  const height = () => formatHeight(solved.value, units);
  const phrases: Readonly<Record<string, () => string>> = {
    'past-abeam': () => `Base turn: ${distance()} past abeam the spot`,
    'throttle-height': () => `Throttle closed at ${height()}`,
    'base-distance': () => `Base leg: ${distance()} from the spot`,
    'circle-radius': () => `Circle held on the ground: radius ${distance()}`,
    'circle-bank': () => `Circles at ${formatAngle(solved.value)} of bank`,
    'start-height': () => `Start: ${height()} over the spot`,
  };
  const phrase = phrases[solved.name];
  if (!phrase) throw new RangeError(`nothing says what ${solved.name} is`);
  return phrase();
}
