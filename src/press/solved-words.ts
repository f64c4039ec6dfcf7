import type { Plan } from '../flight/plan.ts';
import { formatAngle, formatDistance, formatHeight } from '../units/format.ts';
import type { PageUnits } from '../units/page-units.ts';

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

/** What was found, rounded as a pilot uses it. */
export function solvedValue({ solved }: Plan, units: PageUnits): string {
  if (solved.unit === 'deg') return formatAngle(solved.value);
  return solved.name.endsWith('height')
    ? formatHeight(solved.value, units)
    : formatDistance(solved.value, units);
}
