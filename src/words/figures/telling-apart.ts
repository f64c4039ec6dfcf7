import {
  metresPerFoot,
  metresPerSecondPerKmh,
  metresPerSecondPerKnot,
  metresPerSecondPerMph,
  radiansPerDegree,
} from '../../units/factors.ts';
import { numberText, roundDownTo, roundTo, roundUpTo, withUnit } from '../../units/rounding.ts';

/** The size of a unit in SI or rad, and the step that its figures have on a page. */
const units = {
  ft: { size: metresPerFoot, step: 10, isLow: 50 },
  m: { size: 1, step: 10 },
  kt: { size: metresPerSecondPerKnot, step: 1 },
  'km/h': { size: metresPerSecondPerKmh, step: 1 },
  mph: { size: metresPerSecondPerMph, step: 1 },
  kg: { size: 1, step: 1 },
  '°': { size: radiansPerDegree, step: 1 },
  times: { size: 1, step: 0.01 },
  g: { size: 1, step: 0.01 },
} as const;

export type ToldUnit = keyof typeof units;

/** What kind of limit it is: not to be exceeded (`most`, a wind), or not to be fallen short of (`least`, a height). */
export type LimitKind = 'most' | 'least';

/** m, m/s, kg or rad; plain ratios for `times` and `g`. */
export interface BesideLimit {
  readonly value: number;
  readonly limit: number;
}

export interface Choices {
  /** `margin` for what is to spare, as a clearance is: it is never rounded up. `need` for what is needed: never down. */
  readonly value?: 'measured' | 'margin' | 'need';
  /** The first step that is tried, in the unit: the one that the page uses for figures of this kind. */
  readonly step?: number;
}

export interface ToldApart {
  readonly value: string;
  readonly limit: string;
  /** The step that the value is rounded to, in the unit. */
  readonly step: number;
}

/** Where steps ten, a hundred and a thousand times as fine do not tell them apart, they count as alike. */
const finest = 3;

/**
 * A value beside its limit, rounded as everywhere on the page; where that does not show on which side of the limit it
 * lies, with as many digits as do: `13 kt` and `9 kt`, but `8.2 kt` and `8.1 kt`, `297 ft` and `300 ft`. Both read
 * alike only where they are alike. A limit is rounded to its safe side, `most` down and `least` up; a measured value
 * to the nearest step, a margin down, a need up. Feet under 50 have a step of 1 as low heights do.
 *
 * @throws RangeError where one is not finite
 */
export function tellingApart(
  { value, limit }: BesideLimit,
  unit: ToldUnit,
  kind: LimitKind,
  choices: Choices = {},
): ToldApart {
  const ofUnit = units[unit];
  const [v, l] = [value / ofUnit.size, limit / ofUnit.size];
  const low = 'isLow' in ofUnit && Math.min(Math.abs(v), Math.abs(l)) < ofUnit.isLow;
  const first = choices.step ?? (low ? 1 : ofUnit.step);
  const ofValue = { margin: roundDownTo, need: roundUpTo, measured: roundTo }[choices.value ?? 'measured'];
  const ofLimit = kind === 'most' ? roundDownTo : roundUpTo;
  const steps = Array.from({ length: finest + 1 }, (_, i) => first / 10 ** i);
  const shows = (step: number) => Math.sign(ofValue(v, step) - ofLimit(l, step)) === Math.sign(v - l);
  const alike = Math.abs(v - l) < steps[finest]!;
  const step = alike ? first : (steps.find(shows) ?? first);
  // A limit that is a whole number of coarser steps is printed as it is everywhere else.
  const exact = steps.find((each) => Math.abs(roundTo(l, each) - l) < 1e-6) ?? step;
  return {
    value: text(ofValue(v, step), step, unit),
    limit: text(ofLimit(l, step), Math.max(step, exact), unit),
    step,
  };
}

function text(rounded: number, step: number, unit: ToldUnit): string {
  if (unit === '°') return `${numberText(rounded, step)}°`;
  return withUnit(rounded, step, unit);
}
