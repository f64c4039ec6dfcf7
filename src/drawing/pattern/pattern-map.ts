import type { Plan } from '../../flight/terms/plan.ts';
import {
  around,
  type Box,
  boxOf,
  grown,
  type Segment,
  segmentsOf,
  shifted,
  simplified,
} from '../kit/geometry.ts';
import { weight } from '../kit/ink.ts';
import { dimensionEnds, type Mark, markReach } from '../kit/marks.ts';
import type { Line } from '../labels/label.ts';
import { type DrawnLabel, placeWanted } from '../labels/labels.ts';
import { endLabel, endMark, type FaultDrawingOptions, type FaultLine } from '../shared/drawn-fault.ts';
import { type TrackPoint, timedPoints } from '../shared/track-line.ts';
import { type Dimension, dimensionsOf } from './pattern-dimensions.ts';
import {
  dimensionLabel,
  keyLabels,
  obstacleLabels,
  runwayCaption,
  runwayNumber,
  tickLabel,
} from './pattern-labels.ts';
import { marksOf, spacedArrows, type Tick, tickSegment, ticksOf } from './pattern-marks.ts';
import {
  type DrawnRunway,
  drawnObstacles,
  drawnRunway,
  type Ground,
  onPage,
  type PatternView,
  pagePoint,
} from './pattern-view.ts';

/** Everything on the map with its place on the page: what is drawn, and what the geometry test checks. */
export interface MapLayout {
  readonly view: PatternView;
  readonly frame: Box;
  readonly marks: readonly Mark[];
  readonly ticks: readonly Tick[];
  readonly arrows: readonly TrackPoint[];
  readonly dimensions: readonly Dimension[];
  readonly runway: Box;
  /** Whether it goes on past the end that is drawn. */
  readonly broken: boolean;
  readonly centreline: Segment;
  readonly obstacles: readonly Box[];
  readonly faults: readonly FaultLine[];
  readonly lines: readonly Line[];
  readonly boxes: readonly Box[];
  readonly labels: readonly DrawnLabel[];
  /** How many labels found no free place. */
  readonly hidden: number;
}

/** Gives everything its place in `frame`. */
export function layOutMap(
  plan: Plan,
  { units, board, faults = [] }: FaultDrawingOptions,
  view: PatternView,
  frame: Box,
): MapLayout {
  const at = (place: Ground) => pagePoint(view, place);
  const marks = marksOf(plan, at);
  const ticks = ticksOf(plan, marks, at);
  const arrows = spacedArrows(timedPoints(plan.track, 5, 2.5, at), marks, ticks);
  const part = drawnRunway(plan, view, faults);
  const runway = runwayBox(plan, view, part);
  const centreline = centrelineOf(view, frame, runway);
  const dimensions = dimensionsOf(plan, units, at, view);
  const obstacles = drawnObstacles(plan).map((obstacle) => {
    const half = Math.max(onPage(view, obstacle.width) / 2, 0.7);
    const centre = at(obstacle);
    return view.landing === 'up'
      ? { x: centre.x - half, y: centre.y - 0.6, width: 2 * half, height: 1.2 }
      : { x: centre.x - 0.6, y: centre.y - half, width: 1.2, height: 2 * half };
  });
  const track = simplified(plan.track.map(at), 0.05);
  const faultLines = faults.map(({ track }) => ({
    points: simplified(track.map(at), 0.05),
    end: at(track.at(-1)!),
  }));
  const lines: Line[] = [
    ...segmentsOf(track).map((segment) => ({ ...segment, halfWidth: weight.turn / 2 })),
    ...faultLines.flatMap(({ points, end }) =>
      [...segmentsOf(points), ...endMark(end)].map((segment) => ({ ...segment, halfWidth: 0.2 })),
    ),
    ...ticks.map((tick) => ({ ...tickSegment(tick), halfWidth: 0.15 })),
    { ...centreline, halfWidth: 0.15 },
    ...dimensions.flatMap(({ line, direction, extensions }) =>
      [line, ...extensions, ...dimensionEnds(line, direction)].map((segment) => ({
        ...segment,
        halfWidth: 0.2,
      })),
    ),
  ];
  const boxes = [
    grown(runway, 0.4),
    ...(part.broken ? [runwayBreak(view, runway)] : []),
    ...obstacles,
    ...marks.map((mark) => around(mark.at, markReach(mark))),
    ...arrows.map((arrow) => around(shifted(arrow.at, arrow.direction, -1.2), 1.2)),
  ];
  const wanted = [
    ...ticks.filter((tick) => tick.numbered).map((tick) => tickLabel(plan, tick)),
    ...dimensions.map(dimensionLabel),
    runwayNumber(plan, view, runway),
    ...keyLabels(plan, units, at, view),
    ...faults.map((fault, i) => endLabel(fault, faultLines[i]!.end)),
    ...obstacleLabels(plan, units, obstacles),
    runwayCaption(plan, units, view, runway),
  ];
  const labels = placeWanted(board, wanted, { frame: grown(frame, -0.6), boxes, lines });
  const hidden = labels.filter((label) => !label.place.clear).length;
  return {
    view,
    frame,
    marks,
    ticks,
    arrows,
    dimensions,
    runway,
    broken: part.broken,
    centreline,
    obstacles,
    faults: faultLines,
    lines,
    boxes,
    labels,
    hidden,
  };
}

function runwayBox(plan: Plan, view: PatternView, { from, to }: DrawnRunway): Box {
  const half = plan.runway.width / 2;
  return boxOf([
    pagePoint(view, { along: from, across: -half }),
    pagePoint(view, { along: to, across: half }),
  ]);
}

/** Where the break line is, at the far end of a runway that goes on. */
function runwayBreak(view: PatternView, { x, y, width, height }: Box): Box {
  const reach = 1.5;
  return view.landing === 'up'
    ? { x: x - 0.2 * width, y: y - reach, width: 1.4 * width, height: 2 * reach }
    : { x: x + width - reach, y: y - 0.2 * height, width: 2 * reach, height: 1.4 * height };
}

/** Through the runway from edge to edge of the frame. */
function centrelineOf(view: PatternView, frame: Box, runway: Box): Segment {
  const edge = 2;
  return view.landing === 'up'
    ? {
        from: { x: view.spot.x, y: frame.y + frame.height - edge },
        to: { x: view.spot.x, y: Math.max(frame.y + edge, runway.y - 8) },
      }
    : {
        from: { x: frame.x + edge, y: view.spot.y },
        to: { x: Math.min(frame.x + frame.width - edge, runway.x + runway.width + 8), y: view.spot.y },
      };
}
