import type { SoundStart } from '../../flight/questions/least-sound-start.ts';
import type { Aircraft } from '../../flight/terms/aircraft.ts';
import type { Caution } from '../../flight/terms/caution.ts';
import type { KeyId } from '../../flight/terms/key.ts';
import { cautionLine } from '../cautions/caution-line.ts';
import { formatDistance, formatHeight } from '../figures/format.ts';
import type { PageUnits } from '../figures/page-units.ts';
import { requestSentence } from '../refusals/request-words.ts';
import type { WatchedRow } from './watched-rows.ts';

type Calibrated = Pick<Aircraft, 'calibration'>;

/**
 * `sound from 1,150 ft at the downwind key`; `no height makes it sound: crosswind 12 kt, at most 9 kt`, leaving out
 * what was `said` before it.
 */
export function startWords(start: SoundStart, aircraft: Calibrated, units: PageUnits, said = ''): string {
  if (start.height === undefined) {
    const why = start.against.map((caution) => cautionLine(caution, aircraft, units));
    const unsaid = why.filter((line) => !said.includes(line));
    return `no height makes it sound${unsaid.length === 0 ? '' : `: ${unsaid.join('; ')}`}`;
  }
  const heights =
    start.upTo === undefined
      ? formatHeight(start.height, units)
      : `${formatHeight(start.height, units)} to ${formatHeight(start.upTo, units)}`;
  const place = `${heights} ${places[start.at] ?? 'at the start'}`;
  const out = distanceOut(start, units);
  return `sound from ${place}${out === undefined ? '' : `, ${out} before the spot and to its side`}`;
}

/** For the 90, whose base leg lies farther out the higher it begins: that distance. */
export function distanceOut(start: SoundStart, units: PageUnits): string | undefined {
  if (start.height === undefined || start.at !== 'base-key') return undefined;
  return formatDistance(Math.abs(start.plan.keys[0]!.across), units);
}

const places: Partial<Record<KeyId, string>> = {
  'downwind-key': 'at the downwind key',
  'base-key': 'at the base key',
  overhead: 'over the spot',
};

/** What keeps the flight of a row from being sound, in lines; what is only worth knowing is left out. */
export function rowAgainst(row: WatchedRow, aircraft: Calibrated, units: PageUnits): string {
  const grave = row.cautions.filter(({ grade }) => grade !== 'worth-knowing');
  return row.refused ? requestSentence(row.refused, units) : cautionWords(grave, aircraft, units);
}

export function cautionWords(cautions: readonly Caution[], aircraft: Calibrated, units: PageUnits): string {
  return cautions.map((caution) => cautionLine(caution, aircraft, units)).join('; ');
}
