import type { KeyPosition, Plan } from '../../flight/terms/plan.ts';
import { formatDistance } from '../../words/figures/format.ts';
import type { PageUnits } from '../../words/figures/page-units.ts';
import { type Point, pageVector, type Segment } from '../kit/geometry.ts';
import { type Ground, onPage, type PatternView } from './pattern-view.ts';

export interface Dimension {
  readonly line: Segment;
  readonly direction: Point;
  readonly extensions: readonly Segment[];
  readonly text: string;
}

/**
 * How far the downwind leg is from the centreline, and how far past abeam the base turn starts; for an approach
 * without a downwind leg, how far before the spot and to the side the base key is.
 */
export function dimensionsOf(
  plan: Plan,
  units: PageUnits,
  at: (place: Ground) => Point,
  view: PatternView,
): Dimension[] {
  const key = (id: KeyPosition['id']) => plan.keys.find((position) => position.id === id);
  const forward = pageVector(view.landing === 'up' ? 0 : Math.PI / 2);
  const right = { x: -forward.y, y: forward.x };
  const abeam = key('downwind-key');
  const turn = key('base-turn');
  const dimensions: Dimension[] = [];
  const spot = { along: 0, across: 0 };
  if (abeam) {
    const end = { along: 0, across: abeam.across };
    const text = formatDistance(Math.abs(abeam.across), units);
    dimensions.push({ line: { from: at(spot), to: at(end) }, direction: right, extensions: [], text });
    if (turn && Math.abs(onPage(view, turn.along)) > 3) {
      const off = Math.min((9 * view.scale) / 1000, Math.abs(abeam.across) * 0.4);
      const inside = abeam.across - Math.sign(abeam.across) * off;
      const from = { along: 0, across: inside };
      const to = { along: turn.along, across: inside };
      const where = turn.along < 0 ? 'past abeam' : 'before abeam';
      dimensions.push({
        line: { from: at(from), to: at(to) },
        direction: forward,
        extensions: [{ from: at(to), to: at(turn) }],
        text: `${formatDistance(Math.abs(turn.along), units)} ${where}`,
      });
    }
    return dimensions;
  }
  const base = key('base-key');
  if (base) {
    const corner = { along: 0, across: base.across };
    const sides = [
      { line: { from: at(corner), to: at(base) }, direction: forward, metres: base.along },
      { line: { from: at(spot), to: at(corner) }, direction: right, metres: base.across },
    ];
    for (const { line, direction, metres } of sides) {
      dimensions.push({ line, direction, extensions: [], text: formatDistance(Math.abs(metres), units) });
    }
  }
  return dimensions;
}
