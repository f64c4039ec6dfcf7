import type { KeyPosition, Plan } from '../../flight/terms/plan.ts';
import { metresPerFoot } from '../../units/factors.ts';
import { withUnit } from '../../units/rounding.ts';
import { formatLowHeight, formatTime } from '../../words/figures/format.ts';
import type { PageUnits } from '../../words/figures/page-units.ts';
import { type Box, between, distance, type Point, pageVector } from '../kit/geometry.ts';
import { size } from '../kit/ink.ts';
import { markRadius, markReach } from '../kit/marks.ts';
import type { WantedLabel } from '../labels/labels.ts';
import { groupKeys } from '../shared/key-groups.ts';
import type { Dimension } from './pattern-dimensions.ts';
import type { Tick } from './pattern-marks.ts';
import { drawnObstacles, type Ground, type PatternView, pagePoint } from './pattern-view.ts';
import { touchesAtSpot } from './pattern-words.ts';

/** Unit vector towards the inside of the pattern, seen from a place on the track. */
function inward(plan: Plan, direction: Point): Point {
  const sign = plan.circuit === 'left' ? -1 : 1;
  return { x: -direction.y * sign, y: direction.x * sign };
}

export function tickLabel(plan: Plan, tick: Tick): WantedLabel {
  const text = formatTime(tick.time - plan.track[0]!.time);
  return {
    lines: [{ text }],
    size: size.small,
    anchor: tick.at,
    radius: 1.3,
    prefer: inward(plan, tick.direction),
    reach: 6.5,
  };
}

export function keyLabels(
  plan: Plan,
  units: PageUnits,
  at: (place: Ground) => Point,
  view: PatternView,
): WantedLabel[] {
  const placed = plan.keys.map((key) => {
    const spot = key.id === 'touchdown' && touchesAtSpot(plan);
    return { key, at: at(spot ? { along: 0, across: 0 } : key) };
  });
  const wanted = groupKeys(plan, placed, units).map(({ key, at: anchor, lines, grade }): WantedLabel => {
    const spot = key.id === 'touchdown' && touchesAtSpot(plan);
    const kind = spot ? 'spot' : key.id === 'aim-point' ? 'aim' : 'key';
    const radius = markReach({ kind, grade });
    return { lines, size: size.label, anchor, radius, prefer: outward(plan, key, view), reach: 52 };
  });
  if (touchesAtSpot(plan)) return wanted;
  const spot: WantedLabel = {
    lines: [{ text: 'Spot' }],
    size: size.label,
    anchor: view.spot,
    radius: markRadius.spot,
    reach: 52,
  };
  return [...wanted, spot];
}

/** Away from the inside of the pattern. */
function outward(plan: Plan, key: KeyPosition, view: PatternView): Point {
  const index = Math.max(
    1,
    plan.track.findIndex((sample) => sample.time >= key.time),
  );
  const a = pagePoint(view, plan.track[index - 1]!);
  const b = pagePoint(view, plan.track[index] ?? plan.track.at(-1)!);
  const length = distance(a, b) || 1;
  const inside = inward(plan, { x: (b.x - a.x) / length, y: (b.y - a.y) / length });
  return { x: -inside.x, y: -inside.y };
}

/** Beside the landing end, its top in the landing direction. */
export function runwayNumber(plan: Plan, view: PatternView, runway: Box): WantedLabel {
  const away = pageVector(Math.PI / 2);
  const sign = plan.circuit === 'left' ? 1 : -1;
  const anchor =
    view.landing === 'up'
      ? { x: runway.x + runway.width / 2, y: runway.y + runway.height - 1.6 }
      : { x: runway.x + 1.6, y: runway.y + runway.height / 2 };
  const across = (view.landing === 'up' ? runway.width : runway.height) / 2;
  return {
    lines: [{ text: plan.runway.name, bold: true }],
    size: size.number,
    turned: view.landing === 'right',
    anchor,
    radius: across + 0.2,
    prefer: view.landing === 'up' ? { x: away.x * sign, y: 0 } : { x: 0, y: sign },
    reach: 16,
  };
}

export function runwayCaption(plan: Plan, units: PageUnits, view: PatternView, runway: Box): WantedLabel {
  const { length, width, surface } = plan.runway;
  const anchor =
    view.landing === 'up'
      ? { x: runway.x + runway.width / 2, y: runway.y + Math.min(3, runway.height / 4) }
      : { x: runway.x + runway.width - Math.min(3, runway.width / 4), y: runway.y + runway.height / 2 };
  const across = (view.landing === 'up' ? runway.width : runway.height) / 2;
  const lines = [
    { text: `Runway ${runwaySize(length, units)}` },
    { text: `${runwaySize(width, units)} wide, ${surface}` },
  ];
  return { lines, size: size.small, anchor, radius: across + 0.2, reach: 40 };
}

/** A runway's size is given, not computed: to 1 m or 1 ft. */
export function runwaySize(metres: number, units: PageUnits): string {
  return units.distance === 'ft' ? withUnit(metres / metresPerFoot, 1, 'ft') : withUnit(metres, 1, 'm');
}

export function dimensionLabel({ line, text }: Dimension): WantedLabel {
  const alternatives = [0.4, 0.6, 0.3, 0.7, 0.2, 0.8].map((share) => between(line, share));
  const anchor = between(line, 0.5);
  return { lines: [{ text }], size: size.small, anchor, alternatives, radius: 0.1, reach: 34 };
}

/** What each obstacle is and how high; `boxes` are their places on the page. */
export function obstacleLabels(plan: Plan, units: PageUnits, boxes: readonly Box[]): WantedLabel[] {
  return drawnObstacles(plan).map((obstacle, index): WantedLabel => {
    const text = `${obstacle.what} ${formatLowHeight(obstacle.height, units)}`;
    const { x, y, width, height } = boxes[index]!;
    const anchor = { x: x + width / 2, y: y + height / 2 };
    return { lines: [{ text }], size: size.small, anchor, radius: 0.7, reach: 30 };
  });
}
