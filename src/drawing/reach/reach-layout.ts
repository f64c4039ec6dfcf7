import type { GroundPoint } from '../../flight/flying/reach.ts';
import { formatHeight } from '../../words/figures/format.ts';
import type { DrawingOptions } from '../kit/drawing.ts';
import {
  around,
  type Box,
  between,
  boxOf,
  contains,
  grown,
  type Point,
  pageVector,
  type Segment,
  segmentsOf,
  shifted,
  simplified,
  unit,
} from '../kit/geometry.ts';
import { size, weight } from '../kit/ink.ts';
import { dimensionEnds, markRadius } from '../kit/marks.ts';
import { smoothRing } from '../kit/smooth-ring.ts';
import type { Line } from '../labels/label.ts';
import { type DrawnLabel, placeWanted, type WantedLabel } from '../labels/labels.ts';
import { runwayNumber } from '../pattern/pattern-labels.ts';
import { type PatternView, pagePoint } from '../pattern/pattern-view.ts';
import { distanceToRing, reachedWords } from './reach-ground.ts';
import type { ReachScene } from './reach-scene.ts';
import { reachDistances, reachText } from './reach-words.ts';

/** Everything of the drawing with its place on the page. */
export interface ReachLayout {
  readonly view: PatternView;
  readonly outline: readonly Point[];
  readonly runway: Box;
  readonly fields: readonly (readonly Point[])[];
  readonly start: Point;
  /** The direction in which the aircraft flies there. */
  readonly onward: Segment;
  readonly distances: readonly { readonly line: Segment; readonly direction: Point }[];
  readonly labels: readonly DrawnLabel[];
  readonly hidden: number;
}

/** mm: the arrow that says which way the aircraft flies at the start. */
const arrowLength = 7;

export function layOutReach(
  scene: ReachScene,
  { units, board }: DrawingOptions,
  view: PatternView,
  frame: Box,
): ReachLayout {
  const { plan, from, label } = scene;
  const at = (place: GroundPoint) => pagePoint(view, place);
  const outline = smoothRing(scene.outline.map(at));
  const runway = runwayBox(scene, view);
  const start = at(from);
  const ahead = onPageDirection(view, from.heading);
  const onward = { from: shifted(start, ahead, 1.2), to: shifted(start, ahead, arrowLength) };
  const drawn = scene.fields
    .map((field) => ({ field, corners: field.corners.map(at) }))
    .filter(({ corners }) => contains(grown(frame, -1), boxOf(corners)));
  const distances = reachDistances(scene, units).map((distance) => {
    const direction = onPageDirection(view, distance.direction);
    const line = { from: start, to: shifted(start, direction, (distance.metres * 1000) / view.scale) };
    return { ...distance, line, direction };
  });
  const spot = { along: 0, across: 0 };
  const lines: Line[] = [
    ...segmentsOf(simplified(outline, 0.05)).map((segment) => ({
      ...segment,
      halfWidth: weight.straight / 2,
    })),
    { ...onward, halfWidth: 1 },
    ...distances.flatMap(({ line, direction }) =>
      [line, ...dimensionEnds(line, direction)].map((segment) => ({ ...segment, halfWidth: 0.2 })),
    ),
  ];
  const boxes = [
    grown(runway, 0.4),
    ...drawn.map(({ corners }) => grown(boxOf(corners), 0.3)),
    around(start, markRadius.key),
    around(at(spot), markRadius.spot),
  ];
  const wanted: WantedLabel[] = [
    runwayNumber(plan, view, runway),
    {
      lines: [{ text: label }, { text: formatHeight(from.height, units), bold: true }],
      size: size.label,
      anchor: start,
      radius: markRadius.key,
      reach: 40,
    },
    {
      lines: [{ text: 'Spot' }],
      size: size.label,
      anchor: at(spot),
      radius: markRadius.spot,
      reach: 40,
    },
    ...distances.map(
      ({ line, metres, where }): WantedLabel => ({
        lines: [{ text: `${reachText(metres, units)} ${where}` }],
        size: size.small,
        anchor: between(line, 0.6),
        alternatives: [0.5, 0.7, 0.4, 0.8, 0.3].map((share) => between(line, share)),
        radius: 0.1,
        reach: 30,
      }),
    ),
    ...drawn.map(({ field, corners }): WantedLabel => {
      const box = boxOf(corners);
      const anchor = { x: box.x + box.width / 2, y: box.y + box.height / 2 };
      return {
        lines: [{ text: field.name, bold: true }, { text: reachedWords[field.reached] }],
        size: size.small,
        anchor,
        radius: Math.max(box.width, box.height) / 2,
        reach: 40,
      };
    }),
  ];
  const placed = placeWanted(board, wanted, { frame: grown(frame, -0.6), boxes, lines });
  const first = wanted.length - drawn.length;
  const labels = placed.map((label, index) =>
    index < first ? label : ledToEdge(label, drawn[index - first]!.corners),
  );
  return {
    view,
    outline,
    runway,
    fields: drawn.map(({ corners }) => corners),
    start,
    onward,
    distances,
    labels,
    hidden: labels.filter(({ place }) => !place.clear).length,
  };
}

/** Its leader ends at the field itself: the box round the field that labels keep clear of is wider. */
function ledToEdge({ wanted, place }: DrawnLabel, corners: readonly Point[]): DrawnLabel {
  if (place.leader === undefined) return { wanted, place };
  const ring = [...corners, corners[0]!].map(({ x, y }) => ({ along: x, across: y }));
  const { to } = place.leader;
  const middle = wanted.anchor;
  const away = Math.atan2(middle.y - to.y, middle.x - to.x);
  const off = distanceToRing({ along: to.x, across: to.y }, away, ring) ?? 0;
  return { wanted, place: { ...place, leader: { from: shifted(to, unit(to, middle), off), to } } };
}

/** Unit vector on the page of a direction, rad from the landing direction. */
function onPageDirection(view: PatternView, direction: number): Point {
  return pageVector(direction + (view.landing === 'up' ? 0 : Math.PI / 2));
}

function runwayBox({ plan: { runway } }: ReachScene, view: PatternView): Box {
  return boxOf([
    pagePoint(view, { along: -runway.spot, across: -runway.width / 2 }),
    pagePoint(view, { along: runway.length - runway.spot, across: runway.width / 2 }),
  ]);
}

/** Everything that must be on the page, as a box in mm about the spot. */
export function reachExtent({ outline, plan: { runway }, from }: ReachScene, view: PatternView): Box {
  const places: GroundPoint[] = [
    ...outline,
    from,
    { along: -runway.spot, across: 0 },
    { along: runway.length - runway.spot, across: 0 },
  ];
  return boxOf(places.map((place) => pagePoint({ ...view, spot: { x: 0, y: 0 } }, place)));
}
