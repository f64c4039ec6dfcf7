import type { FlownFault } from '../../flight/faults/flown-fault.ts';
import { isInTheLanding } from '../../flight/faults/list.ts';
import type { FaultFlown, KeyDifference } from '../../flight/terms/fault.ts';
import { formatDistance, formatHeight } from '../figures/format.ts';
import type { PageUnits } from '../figures/page-units.ts';
import { formatMargin } from '../figures/safe-rounding.ts';
import { keyNames } from '../keys/key-names.ts';
import { faultRefusalWords } from '../refusals/fault-words.ts';
import { finalWords } from './final-words.ts';
import { endWords, printedDistance } from './ground-words.ts';
import { landingWords } from './landing-words.ts';
import { recoveryWords } from './recovery-words.ts';
import { fastWords, offApproachSpeed, slowWords } from './speed-words.ts';

/** m: less than the page can print of a height. */
const printedHeight = 3;
/** In multiples of the stall speed: a margin that has shrunk by less than this is not worth a word. */
const shrunk = 0.03;

/**
 * What flying a fault came to, as an instructor would say it: where it ends, where it shows first, what it takes of
 * the margin over the stall, what it amounts to on final or in the landing, and from what height the spot can still
 * be made. Slow on final is said first: it is urgent, wherever it ends. Where the model cannot be trusted it says so,
 * and gives no figure.
 */
export function effectWords(
  { flight, plan, recoveries, heldOffAfresh }: FlownFault,
  units: PageUnits,
): string {
  if (!flight.flown) return `Not flown here: ${faultRefusalWords(flight.reason, units)}`;
  const [slow, margin] = [slowWords(flight, plan, units), marginWords(flight)];
  const end = endWords(flight, plan, units);
  const onFinal = isInTheLanding(flight.change) ? '' : finalWords(flight, plan, recoveries, units);
  return [
    ...(slow ? [margin, slow, end] : [end, showsWords(flight, plan, onFinal !== '', units), margin]),
    landingWords(flight, plan, heldOffAfresh, units),
    fastWords(flight, plan, units),
    recoveryWords(flight, recoveries(), plan, units),
    onFinal,
  ]
    .filter((words) => words !== '')
    .join(' ');
}

function showsWords(
  flight: FaultFlown,
  plan: FlownFault['plan'],
  saidLater: boolean,
  units: PageUnits,
): string {
  if (isInTheLanding(flight.change)) return '';
  if (offApproachSpeed(flight, plan) !== undefined) return 'No key shows it before: the airspeed does.';
  const { shows, change } = flight;
  if (!shows) return 'No key shows it before.';
  const { at } = shows;
  const label = keyNames[at];
  const where = at === 'final' ? 'on final' : `at the ${label.toLowerCase()}`;
  // A base turn in another place is not low there: it is somewhere else.
  const elsewhere = at === 'base-turn' && change.kind.startsWith('base-turn');
  return `It shows first ${where}${elsewhere || (saidLater && at === 'final') ? '' : offThere(flight, shows, units)}.`;
}

/** High there and short in the end, or the other way round: what is said at a key must explain the end. */
function offThere({ end }: FaultFlown, { at, heightThere, along }: KeyDifference, units: PageUnits): string {
  if (heightThere === undefined || Math.abs(heightThere) < printedHeight) return '';
  const off = `${formatHeight(Math.abs(heightThere), units)} ${heightThere < 0 ? 'low' : 'high'} there`;
  if (heightThere * end.along >= 0 || Math.abs(end.along) < printedDistance) return `, ${off}`;
  if (along === undefined || along * end.along <= 0 || Math.abs(along) < printedDistance) return '';
  const part = at.endsWith('turn') ? 'the turn begins' : at === 'final' ? 'final begins' : 'the leg lies';
  return `: ${off}, but ${part} ${formatDistance(Math.abs(along), units)} ${along < 0 ? 'farther out' : 'nearer in'}`;
}

function marginWords({ stall: { planned, flown } }: FaultFlown): string {
  const words = (['turning', 'straight'] as const).flatMap((where) => {
    const [was, is] = [planned[where], flown[where]];
    if (was === undefined || is === undefined || was - is < shrunk) return [];
    const part = where === 'turning' ? 'in the turns' : 'wings level';
    return `Slowest ${part}: ${formatMargin(is)} times the stall speed there (planned ${formatMargin(was)}).`;
  });
  return words.join(' ');
}
