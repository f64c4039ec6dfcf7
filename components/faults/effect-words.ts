import { missText } from '../../src/drawing/pattern-words.ts';
import type {
  FaultFlown,
  FaultLanding,
  FaultRecovery,
  KeyDifference,
  RecoveryWay,
} from '../../src/flight/fault.ts';
import { soundFinal } from '../../src/flight/gates.ts';
import {
  formatDistance,
  formatHeight,
  formatLowHeight,
  formatSink,
  formatSpeed,
} from '../../src/units/format.ts';
import type { PageUnits } from '../../src/units/page-units.ts';
import { numberText } from '../../src/units/rounding.ts';
import { formatEdge } from '../safe-rounding.ts';
import type { FlownFault } from './flown-fault.ts';

/** m: less than the page can print of a distance is none. */
const printed = 5;
/** m: less than the page can print of a height. */
const printedHeight = 3;
/** Of the stall speed: a margin that has shrunk by less than this is not worth a word. */
const shrunk = 0.03;

/**
 * What flying a fault came to, as an instructor would say it: where it ends, where it shows first, what it takes of the
 * margin over the stall, and down to what height the spot can still be made. Where the model is not honest any more it
 * says so, and gives no figure.
 */
export function effectWords({ flight, recoveries }: FlownFault, units: PageUnits): string {
  if (!flight.flown) return `Not flown here: ${flight.reason}`;
  return [
    endWords(flight, units),
    inTheLanding(flight) ? '' : showsWords(flight.shows, units),
    marginWords(flight),
    landingWords(flight.landing, units),
    recoveryWords(flight, recoveries(), units),
  ]
    .filter((words) => words !== '')
    .join(' ');
}

const howItEnds = {
  touched: 'The wheels touch',
  struck: 'The wheels strike',
  dropped: 'It drops',
  'no-landing': 'It meets the ground',
} as const;

function endWords({ end, landing }: FaultFlown, units: PageUnits): string {
  return `${howItEnds[landing.how]} ${placeWords(end, units)}.`;
}

/** Where a flight ends, from the spot: `250 m short`, `40 m right of the centreline`, `at the spot`. */
export function placeWords(
  { along, across }: Pick<FaultFlown['end'], 'along' | 'across'>,
  units: PageUnits,
): string {
  const parts = [
    ...(Math.abs(along) < printed ? [] : [missText(along, units)]),
    ...(Math.abs(across) < printed
      ? []
      : [`${formatDistance(Math.abs(across), units)} ${across < 0 ? 'left' : 'right'} of the centreline`]),
  ];
  return parts.join(' and ') || 'at the spot';
}

/** A fault of the last seconds: no key comes after it. */
function inTheLanding({ change: { kind } }: FaultFlown): boolean {
  return kind.startsWith('round-out') || kind.startsWith('touchdown');
}

function showsWords(shows: KeyDifference | undefined, units: PageUnits): string {
  if (!shows) return 'No key shows it before.';
  const { at, label, heightThere } = shows;
  const by =
    heightThere === undefined || Math.abs(heightThere) < printedHeight
      ? ''
      : `, ${formatHeight(Math.abs(heightThere), units)} ${heightThere < 0 ? 'low' : 'high'} there`;
  const where = at === 'final' ? 'on final' : `at the ${label.toLowerCase()}`;
  return `It shows first ${where}${by}.`;
}

function marginWords({ stall: { planned, flown } }: FaultFlown): string {
  const words = (['turning', 'straight'] as const).flatMap((where) => {
    const [was, is] = [planned[where], flown[where]];
    if (was === undefined || is === undefined || was - is < shrunk) return [];
    const part = where === 'turning' ? 'in the turns' : 'wings level';
    // A margin is rounded down: less is never printed as more.
    return `Slowest ${part}: ${margin(is)} times the stall speed there (planned ${margin(was)}).`;
  });
  return words.join(' ');
}

function margin(value: number): string {
  return numberText(Math.floor(value * 100 + 1e-6) / 100, 0.01);
}

function landingWords(landing: FaultLanding, units: PageUnits): string {
  const balloon = landing.balloon;
  const words = balloon ? [`It balloons ${formatLowHeight(balloon.rise, units)}.`] : [];
  if (landing.how === 'touched' && Math.abs(landing.side) >= 0.5)
    words.push(`It drifts sideways at ${formatSpeed(Math.abs(landing.side), units)} as it touches.`);
  if (landing.how === 'struck') words.push(`It sinks ${formatSink(landing.sink, units)} as they strike.`);
  if (landing.how === 'dropped') words.push(`The speed is gone ${formatLowHeight(landing.drop, units)} up.`);
  if (landing.beyond !== undefined) words.push(landing.beyond);
  return words.join(' ');
}

const ways: Readonly<Record<RecoveryWay, string>> = {
  'cut-corner': 'Cutting the corner',
  'best-speed': 'The best speed into the wind on final',
  widen: 'Turning out on base',
  's-turn': 'An S-turn on final',
  'steep-approach': 'The steep approach',
};

function recoveryWords(
  { end, finalHeight }: FaultFlown,
  recoveries: readonly FaultRecovery[],
  units: PageUnits,
): string {
  if (recoveries.length === 0 || Math.abs(end.along) < printed) return '';
  const made = recoveries
    .filter((recovery) => recovery.makes)
    // No S-turn is flown below the height at which the turn to final is complete.
    .filter(({ by }) => by !== 's-turn' || (finalHeight ?? 0) > soundFinal);
  if (made.length === 0) {
    return end.along < 0
      ? 'No glide brings it to the spot: power, or another field.'
      : 'No way of losing height brings it to the spot: go around, or land farther in.';
  }
  return made
    .map(({ by, height, lasts }) =>
      lasts
        ? `${ways[by]} still makes the spot.`
        : `${ways[by]} makes the spot down to ${formatEdge(by === 's-turn' ? Math.max(height, soundFinal) : height, 'low', units)}.`,
    )
    .join(' ');
}
