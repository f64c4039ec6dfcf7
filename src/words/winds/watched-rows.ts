import { isSound, leastSoundStart, type SoundStart } from '../../flight/questions/least-sound-start.ts';
import { inWind, type WindCase, type WindRow, windTable } from '../../flight/questions/wind-table.ts';
import type { PlanRequest } from '../../flight/terms/plan.ts';
import { heightStep } from '../figures/format.ts';
import type { PageUnits } from '../figures/page-units.ts';

/** The approach in one wind, as every table by wind has it: a packet's, a kneeboard's, a card's. */
export interface WatchedRow extends WindRow {
  /** From where it would be sound; undefined where it is sound as it is. */
  readonly start: SoundStart | undefined;
}

/** Each wind, flown, and for one in which the approach is not sound, the least height that works. Throws RequestError. */
export function watchedRows(
  request: PlanRequest,
  winds: readonly WindCase[],
  units: PageUnits,
): WatchedRow[] {
  return windTable(request, winds).map((row) => {
    const start = isSound(row) ? undefined : leastSoundStart(inWind(request, row), heightStep(units));
    return { ...row, start };
  });
}

/** Whether the figures of a row may be printed at all: the spot is made, and nothing in it is not to be flown. */
export function isFlyable({ made, grade }: WindRow): boolean {
  return made && grade !== 'not-to-be-flown';
}
