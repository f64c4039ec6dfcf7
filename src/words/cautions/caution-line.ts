import { indicatedSpeed } from '../../flight/aircraft/calibration.ts';
import type { Aircraft } from '../../flight/terms/aircraft.ts';
import type { Caution, CautionCode } from '../../flight/terms/caution.ts';
import { distancesApart, heightsApart, marginsApart, speedsApart } from '../figures/apart.ts';
import type { PageUnits } from '../figures/page-units.ts';
import { type LimitKind, type ToldApart, tellingApart } from '../figures/telling-apart.ts';
import { banks } from './caution-words.ts';

/** What a line about a caution is made from: its value and limit as the core has them, in SI units or as plain ratios. */
interface Said {
  readonly value: number;
  readonly limit: number;
  readonly units: PageUnits;
  readonly aircraft: Pick<Aircraft, 'calibration'>;
}

/**
 * A caution where there is room for one line only: what, its value, the limit, in the units of the page: `turn to
 * final complete at 280 ft, at least 300 ft`. No capital letter and no full stop.
 */
export function cautionLine(
  { code, value, limit }: Caution,
  aircraft: Pick<Aircraft, 'calibration'>,
  units: PageUnits,
): string {
  return lines[code]({ value, limit, units, aircraft });
}

const lines: Readonly<Record<CautionCode, (said: Said) => string>> = {
  'beyond-reach': (said) => `the spot is missed by ${farther(said)}`,
  'wind-over-glide': () => 'the wind is stronger than the glide',
  'obstacle-clearance': (said) => {
    const { value, limit } = height(said, 'least', 'margin');
    return said.value <= 0
      ? `an obstacle is met, to be cleared by ${limit}`
      : `obstacle within ${value}, at least ${limit}`;
  },
  'stall-margin': (said) => `in a turn ${marginWords(said)}`,
  slow: (said) => `in straight flight ${marginWords(said)}`,
  'approach-speed-not-reached': ({ aircraft, ...said }) => {
    const shown = (eas: number) => indicatedSpeed(eas, aircraft);
    const kind = said.value > said.limit ? 'most' : 'least';
    const pair = { value: shown(said.value), limit: shown(said.limit) };
    const { value, limit } = speedsApart(pair, kind, said.units);
    return `approach speed of ${limit} not reached: ${value}`;
  },
  'bank-over-limit': (said) => over('bank', banks(said)),
  'bank-over-medium': (said) => over('bank', banks(said)),
  'wind-over-limit': (said) => over('wind', speed(said)),
  'crosswind-over-limit': (said) => over('crosswind', speed(said)),
  tailwind: (said) => over('tailwind', speed(said)),
  gust: (said) => `gusts: ${marginWords(said)}`,
  mass: ({ value, limit }) =>
    value > limit
      ? over('mass', tellingApart({ value, limit }, 'kg', 'most'))
      : under('mass', tellingApart({ value, limit }, 'kg', 'least')),
  'off-runway': (said) => `touchdown ${farther(said)} off the runway`,
  'aim-before-threshold': (said) => `landing begins ${farther(said)} before the runway`,
  'landing-distance': (said) => over('landing roll', distance(said, 'need')),
  'final-turn-low': (said) => under('turn to final complete at', height(said, 'least')),
  'downwind-key-height': (said) => {
    const isLow = said.value < said.limit;
    const { value, limit } = height(said, isLow ? 'least' : 'most');
    return `downwind key at ${value}, usual ${isLow ? 'from' : 'to'} ${limit}`;
  },
  'base-turn-far': (said) => over('base turn past abeam by', distance(said)),
  'round-out-pull': ({ value, limit }) => over('round-out pull', tellingApart({ value, limit }, 'g', 'most')),
};

const over = (what: string, { value, limit }: ToldApart) => `${what} ${value}, at most ${limit}`;
const under = (what: string, { value, limit }: ToldApart) => `${what} ${value}, at least ${limit}`;

function speed({ units, ...pair }: Said): ToldApart {
  return speedsApart(pair, 'most', units);
}

function marginWords({ value, limit }: Said): string {
  const told = marginsApart(value, limit);
  return `${told.value} the stall speed, at least ${told.limit}`;
}

function height(
  { units, ...pair }: Said,
  kind: LimitKind,
  choice: 'measured' | 'margin' = 'measured',
): ToldApart {
  return heightsApart(pair, kind, units, { value: choice });
}

function distance({ units, ...pair }: Said, choice: 'measured' | 'need' = 'measured'): ToldApart {
  return distancesApart(pair, 'most', units, { value: choice });
}

/** How far off, where nothing at all is allowed: rounded up. */
function farther({ value, units }: Said): string {
  return distancesApart({ value: 0, limit: value }, 'least', units).limit;
}

/** What a caution is about, where there is no room for its figures. */
export const cautionNames: Readonly<Record<CautionCode, string>> = {
  'beyond-reach': 'the spot is not made',
  'wind-over-glide': 'the wind is stronger than the glide',
  'obstacle-clearance': 'too near an obstacle',
  'stall-margin': 'too near the stall in a turn',
  slow: 'too near the stall',
  'approach-speed-not-reached': 'approach speed not reached',
  'bank-over-limit': 'bank over the limit',
  'bank-over-medium': 'bank over medium',
  'wind-over-limit': 'wind over the limit',
  'crosswind-over-limit': 'crosswind over the limit',
  tailwind: 'tailwind over the limit',
  gust: 'gusts too strong',
  mass: 'mass out of limits',
  'off-runway': 'off the runway',
  'aim-before-threshold': 'landing begins before the runway',
  'landing-distance': 'runway too short',
  'final-turn-low': 'turn to final too low',
  'downwind-key-height': 'unusual key height',
  'base-turn-far': 'base turn far out',
  'round-out-pull': 'hard pull in the round-out',
};
