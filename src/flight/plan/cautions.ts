import type { Caution, CautionCode, Found, Grade } from '../terms/caution.ts';
import type { Examined } from './cautions/examined.ts';
import { groundCautions } from './cautions/ground-cautions.ts';
import { massCautions } from './cautions/mass-cautions.ts';
import { obstacleCautions } from './cautions/obstacle-cautions.ts';
import { patternCautions } from './cautions/pattern-cautions.ts';
import { speedCautions } from './cautions/speed-cautions.ts';
import { windCautions } from './cautions/wind-cautions.ts';

export type { Examined } from './cautions/examined.ts';

/** The grade of each caution where its size does not make it graver. */
const usualGrade: Readonly<Record<CautionCode, Grade>> = {
  'beyond-reach': 'not-to-be-flown',
  'wind-over-glide': 'not-to-be-flown',
  'obstacle-clearance': 'beyond-good-practice',
  'stall-margin': 'beyond-good-practice',
  slow: 'beyond-good-practice',
  'approach-speed-not-reached': 'beyond-good-practice',
  'bank-over-limit': 'not-to-be-flown',
  'bank-over-medium': 'beyond-good-practice',
  'wind-over-limit': 'not-to-be-flown',
  'crosswind-over-limit': 'not-to-be-flown',
  tailwind: 'beyond-good-practice',
  gust: 'beyond-good-practice',
  mass: 'not-to-be-flown',
  'off-runway': 'not-to-be-flown',
  'aim-before-threshold': 'beyond-good-practice',
  'landing-distance': 'not-to-be-flown',
  'final-turn-low': 'beyond-good-practice',
  'downwind-key-height': 'worth-knowing',
  'base-turn-far': 'worth-knowing',
  'round-out-pull': 'worth-knowing',
};

/**
 * Multiple of the stall speed below which no flight is to be planned, turning or straight: a gust or a tighter turn
 * stalls it (common practice, no source).
 */
const leastToBeFlown = 1.1;

/** A caution with its grade: for some, how far past the limit it is decides. */
export function graded(found: Found): Caution {
  const { code, value, limit, grade } = found;
  const grave =
    (code === 'obstacle-clearance' && value <= 0) ||
    ((code === 'stall-margin' || code === 'slow') && value < leastToBeFlown) ||
    // Lower than the least height by more than a third of it.
    (code === 'final-turn-low' && value < (2 / 3) * limit);
  return { ...found, grade: grade ?? (grave ? 'not-to-be-flown' : usualGrade[code]) };
}

/** Every caution that a flight brings. Values and limits in m, m/s, kg, degrees or as plain ratios. */
export function cautionsOf(examined: Examined): Caution[] {
  const found = [
    ...patternCautions(examined),
    ...speedCautions(examined),
    ...windCautions(examined),
    ...massCautions(examined),
    ...obstacleCautions(examined),
    ...groundCautions(examined),
  ];
  return tooShort(found).map(graded);
}

/** Where the spot would have to be both farther in and nearer the landing end, no place for it works. */
function tooShort(found: readonly Found[]): readonly Found[] {
  const isOfSpot = ({ code }: Found) => code === 'aim-before-threshold' || code === 'landing-distance';
  if (new Set(found.filter(isOfSpot).map(({ code }) => code)).size < 2) return found;
  return found.map((each) =>
    each.code === 'aim-before-threshold' || each.code === 'landing-distance'
      ? { ...each, remedy: { tooShort: true } }
      : each,
  );
}
