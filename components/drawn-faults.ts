import type { DrawnFault } from '../src/drawing/shared/drawn-fault.ts';
import { flownFault } from '../src/flight/faults/flown-fault.ts';
import type { FaultFlown } from '../src/flight/terms/fault.ts';
import { DirectiveError } from '../src/lesson/component.ts';
import { didYouMean } from '../src/messages/nearest-name.ts';
import { isForClass } from '../src/school/aircraft-classes.ts';
import type { Fault } from '../src/school/faults.ts';
import { placeWords } from '../src/words/faults/ground-words.ts';
import { faultRefusalWords } from '../src/words/refusals/fault-words.ts';
import type { PacketContext } from './context.ts';

/** Nobody can follow more than these over one plan. */
export const mostDrawn = 4;

/**
 * The faults of the school that a drawing shows, flown for this packet. `names` are ids of rows, with the file before
 * them (`final/low`) where two files have the same. Throws DirectiveError for a name that is not one of them, or that
 * cannot be flown.
 */
export function drawnFaults(
  names: readonly string[],
  { school, request, units, plan }: PacketContext,
): DrawnFault[] {
  const rows = [...school.faults].flatMap(([file, { faults }]) => faults.map((row) => ({ file, row })));
  return names.map((name) => {
    const named = rows.filter(({ file, row }) => row.id === name || `${file}/${row.id}` === name);
    const found = named.filter(({ row }) => isForClass(row, plan.aircraft.class));
    const [only] = found;
    if (named.length > 0 && !only) {
      throw new DirectiveError(`The fault \`${name}\` is for no ${plan.aircraft.class} aircraft`);
    }
    if (found.length > 1) {
      const whole = found.map(({ file }) => `\`${file}/${name}\``).join(' or ');
      throw new DirectiveError(`\`${name}\` is a row of several files: write ${whole}`);
    }
    if (!only) {
      const ids = rows.map(({ row }) => row.id);
      throw new DirectiveError(`No file of \`faults/\` has a row \`${name}\`${didYouMean(name, ids)}`);
    }
    return drawn(only.row, request, units);
  });
}

function drawn(
  { id, fault, fly }: Fault,
  request: PacketContext['request'],
  units: PacketContext['units'],
): DrawnFault {
  if (!fly)
    throw new DirectiveError(`The fault \`${id}\` has no \`fly\` line: there is no flight of it to draw`);
  const { flight } = flownFault(fly.change, request);
  if (!flight.flown) {
    const why = faultRefusalWords(flight.reason, units);
    throw new DirectiveError(`The fault \`${id}\` is not flown here: ${why}`);
  }
  const place = placeWords(flight.end, units);
  const met = metObstacle(flight);
  return {
    track: flight.track,
    name: fault,
    end: met === undefined ? place : `through the ${met}; were it not there, ${place}`,
  };
}

/**
 * What a flight meets on its way, by its name in the airfield's data: wherever it would end without that, it is not a
 * landing.
 */
function metObstacle({ cautions }: FaultFlown): string | undefined {
  for (const caution of cautions) {
    if (caution.code === 'obstacle-clearance' && caution.how === 'met') return caution.obstacle;
  }
  return undefined;
}
