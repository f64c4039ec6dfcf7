import type { KeyPosition } from '../../flight/terms/plan.ts';
import { formatDistance } from '../figures/format.ts';
import type { PageUnits } from '../figures/page-units.ts';

type Place = Pick<KeyPosition, 'along' | 'across'>;

/** Distances that would be printed as nothing are put into words. */
function figure(metres: number, units: PageUnits): string | undefined {
  const text = formatDistance(Math.abs(metres), units);
  return text === formatDistance(0, units) ? undefined : text;
}

/** `420 m before the spot`, `60 m past the spot`, `abeam the spot`. */
export function alongWords({ along }: Place, units: PageUnits): string {
  const far = figure(along, units);
  if (far === undefined) return 'abeam the spot';
  return `${far} ${along < 0 ? 'before' : 'past'} the spot`;
}

/** How far before or past the spot, in words: `140 m short`. */
export function missText(along: number, units: PageUnits): string {
  return `${formatDistance(Math.abs(along), units)} ${along < 0 ? 'short' : 'long'}`;
}

/** `500 m to the left`, seen in the landing direction; `on the centreline`. */
export function acrossWords({ across }: Place, units: PageUnits): string {
  const wide = figure(across, units);
  if (wide === undefined) return 'on the centreline';
  return `${wide} to the ${across < 0 ? 'left' : 'right'}`;
}

/** Where a key position lies from the spot: `abeam the spot, 500 m to the left`, `420 m past abeam, 500 m to the left`. */
export function placeWords(key: Pick<KeyPosition, 'id' | 'along' | 'across'>, units: PageUnits): string {
  const far = figure(key.along, units);
  const wide = figure(key.across, units);
  if (far === undefined && wide === undefined) return key.id === 'overhead' ? 'over the spot' : 'at the spot';
  // The aircraft flies away from the spot there, so "before" would be read the wrong way round.
  if (key.id === 'base-turn' && far !== undefined && key.along < 0) {
    return `${far} past abeam, ${acrossWords(key, units)}`;
  }
  return `${alongWords(key, units)}, ${acrossWords(key, units)}`;
}
