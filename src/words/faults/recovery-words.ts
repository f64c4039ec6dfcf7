import type { FaultPlan } from '../../flight/faults/fault-plan.ts';
import type { FaultFlown, FaultRecovery, RecoveryWay } from '../../flight/terms/fault.ts';
import { lowerFirst } from '../figures/letter-case.ts';
import type { PageUnits } from '../figures/page-units.ts';
import { formatEdge } from '../figures/safe-rounding.ts';
import { leastFinal } from '../gates/least-final.ts';
import { enginesStopped } from './final-words.ts';
import { besideRunway, leftAtStop, printedDistance } from './ground-words.ts';
import { offApproachSpeed } from './speed-words.ts';

const ways: Readonly<Record<RecoveryWay, string>> = {
  'cut-corner': 'Cutting the corner',
  'best-speed': 'The best speed for the wind on final',
  'move-out': 'Moving the base turn out',
  widen: 'Turning out on base',
  's-turn': 'An S-turn on final',
  'steep-approach': 'The steep approach',
  'line-up': 'Turning back to the centreline at the planned bank',
};

/** From what height of its path each way of putting it right still makes the spot, and what remains where none does. */
export function recoveryWords(
  flight: FaultFlown,
  recoveries: readonly FaultRecovery[],
  plan: FaultPlan,
  units: PageUnits,
): string {
  const [lineUp] = recoveries;
  if (lineUp?.by === 'line-up') return lineUpWords(lineUp, flight, plan, units);
  if (recoveries.length === 0 || !heightPutsItRight(flight, plan)) return '';
  const made = recoveries.filter((recovery) => recovery.makes);
  if (made.length === 0) return noneMakes(flight, plan);
  return made
    .map(({ by, height, lasts }, i) => {
      const way = by === 'line-up' ? lineUpName(flight, plan) : ways[by];
      if (lasts) return `${way} still makes the spot.`;
      // An approach that is not right by the height of a sound final is gone around from: no steep approach begins
      // below it.
      const least = by === 'steep-approach' ? leastFinal(plan.request) : 0;
      const from = begunAt(Math.max(height, least), units);
      return `${way} ${made[i - 1]?.lasts === false ? 'does' : 'still makes the spot'} if begun ${from}.`;
    })
    .join(' ');
}

/** The height is one on the faulty path: at the same height on another path the spot is nearer, or farther. */
const begunAt = (height: number, units: PageUnits) =>
  `on this path at ${formatEdge(height, 'low', units)} or higher`;

/** Past the centreline, or inside it: how long a turn no steeper than planned still comes back in time. */
function lineUpWords(lineUp: FaultRecovery, flight: FaultFlown, plan: FaultPlan, units: PageUnits): string {
  const instead = enginesStopped(flight, plan) ? 'land straight ahead of you' : 'go around';
  if (!lineUp.makes) {
    return `Turned back to the centreline no steeper than planned, it is not lined up in time to make the spot: ${instead}.`;
  }
  if (isGoAround(flight, plan) && !lineUp.lasts && isBeforeLine(lineUp.height, flight, plan)) {
    return `The planned bank, taken up ${begunAt(lineUp.height, units)}, still makes the spot; past the centreline, go around, or with no engine land straight ahead of you.`;
  }
  const way = lineUpName(flight, plan);
  if (lineUp.lasts) return `${way} still makes the spot.`;
  const lower = isGoAround(flight, plan) ? '' : `; lower, ${instead}`;
  return `${way} still makes the spot if begun ${begunAt(lineUp.height, units)}${lower}.`;
}

/** A pilot who has an engine and is past the centreline goes around, whatever a turn back would do. */
function lineUpName(flight: FaultFlown, plan: FaultPlan): string {
  const turning = ways['line-up'];
  return isGoAround(flight, plan)
    ? `Past the centreline, go around; with no engine, ${lowerFirst(turning)}`
    : turning;
}

/** Whether the flight at a height (m) is still on the pattern's side of the centreline. */
function isBeforeLine(height: number, { track }: FaultFlown, { asked }: FaultPlan): boolean {
  const at = track.find((sample) => sample.height <= height);
  return at !== undefined && at.across * asked.side > 0;
}

/** The pattern is on the side `side` of the runway: past the line is on the other. */
function isGoAround(flight: FaultFlown, plan: FaultPlan): boolean {
  return !enginesStopped(flight, plan) && flight.end.across * plan.asked.side < 0;
}

/** A miss to the side is put right by a turn, and speed on final by letting it go: neither by losing height. */
function heightPutsItRight(flight: FaultFlown, plan: FaultPlan): boolean {
  const { along, across } = flight.end;
  if (Math.abs(along) < printedDistance) return false;
  if (besideRunway(flight.end, plan) && Math.abs(across) > Math.abs(along)) return false;
  return along < 0 || (offApproachSpeed(flight, plan) ?? 0) <= 0;
}

function noneMakes(flight: FaultFlown, plan: FaultPlan): string {
  const stopped = enginesStopped(flight, plan);
  const { end, landing } = flight;
  if (end.along < 0) {
    const onRunway =
      landing.how === 'touched' && end.along > -plan.request.runway.spot && !besideRunway(end, plan);
    const instead = onRunway ? 'land short of it' : 'another field';
    return `No glide brings it to the spot: ${stopped ? '' : 'power, or '}${instead}.`;
  }
  const none = 'No one way of losing height brings it to the spot by itself';
  const fits = leftAtStop(end, plan) >= 0;
  if (stopped) return fits ? `${none}: land farther in.` : `${none}.`;
  return `${none}: go around${fits ? '; with no engine, land farther in' : ''}.`;
}
