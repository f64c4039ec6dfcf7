import type { Gate, Plan } from '../../flight/terms/plan.ts';
import { roundTo } from '../../units/rounding.ts';
import { keyGrade } from '../../words/cautions/grade-words.ts';
import { formatHeight, formatLowHeight, heightStep } from '../../words/figures/format.ts';
import type { PageUnits } from '../../words/figures/page-units.ts';
import { type BandEdge, type GateBand, gateBand } from '../../words/gates/gate-band.ts';
import {
  around,
  type Box,
  between,
  grown,
  type Point,
  type Segment,
  segmentsOf,
  simplified,
} from '../kit/geometry.ts';
import { size, weight } from '../kit/ink.ts';
import { type Mark, markRadius, markReach } from '../kit/marks.ts';
import { wholePixels } from '../kit/sheet.ts';
import type { Line } from '../labels/label.ts';
import { type DrawnLabel, placeWanted, type WantedLabel } from '../labels/labels.ts';
import { touchesAtSpot } from '../pattern/pattern-words.ts';
import { endLabel } from '../shared/drawn-fault.ts';
import { gradeLines, groupKeys, type PlacedKey } from '../shared/key-groups.ts';
import { faultLines, layOutFaults, type ProfileFault } from './profile-faults.ts';
import type { PhaseName } from './profile-phases.ts';
import {
  obstaclesOnFinal,
  type ProfileOptions,
  type ProfileView,
  profilePoint,
  toGoAt,
  toGoOnFinal,
} from './profile-view.ts';
import { finalTurnText } from './profile-words.ts';

/** Everything of the profile with its place on the page. */
export interface ProfileLayout {
  readonly view: ProfileView;
  readonly frame: Box;
  readonly limit: Segment;
  /** From the start of the round-out straight on to the aim point. */
  readonly sight: Segment | undefined;
  readonly bars: readonly Bar[];
  readonly obstacles: readonly Box[];
  readonly marks: readonly Mark[];
  readonly phases: readonly PhaseName[];
  readonly faults: readonly ProfileFault[];
  readonly lines: readonly Line[];
  readonly boxes: readonly Box[];
  readonly labels: readonly DrawnLabel[];
  readonly hidden: number;
}

/** The heights from which the spot is still made, at a key; open where there is no edge. */
export interface Bar {
  readonly box: Box;
  readonly closedAbove: boolean;
  readonly closedBelow: boolean;
}

interface PlacedBar extends Bar {
  readonly gate: Gate;
  readonly band: Extract<GateBand, { readonly low: BandEdge }>;
}

const barWidth = 2.6;
/** mm: a bar shorter than this would be hidden by the ring of its key, and is drawn to the right of it. */
const lowestOnRing = 4.5;
const besideRing = markRadius.key + barWidth / 2 + 0.5;

export function layOutProfile(
  plan: Plan,
  { units, board, maxWidth, faults = [] }: ProfileOptions,
  view: ProfileView,
): ProfileLayout {
  const { plot } = view;
  const width = wholePixels(maxWidth);
  const frame = { x: plot.x + 0.4, y: 0.6, width: width - plot.x - 1, height: plot.y + plot.height - 0.8 };
  const track = plan.track.map((sample, index) => profilePoint(view, view.toGo[index]!, sample.height));
  const limit = {
    from: profilePoint(view, view.farthest, view.leastFinal),
    to: profilePoint(view, view.nearest, view.leastFinal),
  };
  const sight = sightOf(plan, view);
  const keys = plan.keys.map((key) => {
    const toGo = key.id === 'aim-point' ? toGoOnFinal(plan, key.along) : toGoAt(plan, view, key.time);
    return { key, at: profilePoint(view, toGo, key.id === 'aim-point' ? 0 : key.height) };
  });
  const atSpot = touchesAtSpot(plan);
  const spot = profilePoint(view, toGoOnFinal(plan, 0), 0);
  const keyMarks: ProfileLayout['marks'] = keys.map(({ key, at }) => ({
    kind: key.id === 'aim-point' ? 'aim' : key.id === 'touchdown' && atSpot ? 'spot' : 'key',
    at,
    grade: keyGrade(plan, key.id),
  }));
  const marks = atSpot ? keyMarks : [...keyMarks, { kind: 'spot', at: spot } as const];
  const bars = plan.gates.map((gate) => barOf(gate, keys, view, units)).filter((bar) => bar !== undefined);
  const onFinal = obstaclesOnFinal(plan);
  const obstacles = onFinal.map(({ along, height }) => {
    const head = profilePoint(view, toGoOnFinal(plan, along), height);
    return { x: head.x - 0.6, y: head.y, width: 1.2, height: plot.y + plot.height - head.y };
  });
  const flown = layOutFaults(plan, view, faults);
  const lines: Line[] = [
    ...segmentsOf(simplified(track, 0.05)).map((segment) => ({ ...segment, halfWidth: weight.turn / 2 })),
    { ...limit, halfWidth: 0.15 },
    {
      from: { x: plot.x, y: plot.y + plot.height },
      to: { x: plot.x + plot.width, y: plot.y + plot.height },
      halfWidth: 0.2,
    },
    ...(sight ? [{ ...sight, halfWidth: 0.1 }] : []),
    ...faultLines(flown),
  ];
  const boxes = [
    ...obstacles,
    ...bars.map((bar) => grown(bar.box, 0.8)),
    ...marks.map((mark) => around(mark.at, markReach(mark))),
  ];
  const up = { x: 0.45, y: -0.9 };
  const wanted: WantedLabel[] = [
    // From touchdown backwards: the last keys have the least room.
    ...groupKeys(plan, keys, units)
      .reverse()
      .map(({ key, at, lines, grade }): WantedLabel => {
        const isSpot = key.id === 'touchdown' && atSpot;
        const kind = isSpot ? 'spot' : key.id === 'aim-point' ? 'aim' : 'key';
        return {
          lines: isSpot ? [{ text: 'Spot' }, ...gradeLines(grade)] : lines,
          size: size.label,
          anchor: at,
          radius: markReach({ kind, grade }),
          prefer: up,
          reach: 52,
        };
      }),
    ...(atSpot ? [] : [spotLabel(spot, up)]),
    ...flown.map(({ fault, end }) => endLabel(fault, end)),
    ...onFinal.map(({ what, height }, index): WantedLabel => {
      const { x, y } = obstacles[index]!;
      const text = `${what} ${formatLowHeight(height, units)}`;
      return {
        lines: [{ text }],
        size: size.small,
        anchor: { x: x + 0.6, y },
        radius: 0.5,
        prefer: up,
        reach: 40,
        slanted: true,
      };
    }),
    {
      lines: [{ text: finalTurnText(view.leastFinal, units) }],
      size: size.small,
      anchor: between(limit, 0.2),
      alternatives: [
        0.25, 0.3, 0.35, 0.4, 0.5, 0.6, 0.7, 0.8, 0.15, 0.1, 0.45, 0.55, 0.65, 0.75, 0.85, 0.05,
      ].map((share) => between(limit, share)),
      radius: 0.1,
      prefer: { x: 0, y: -1 },
      reach: 12,
      plain: true,
    },
  ];
  // The edges of the gates are in their table too: where one finds no free place here, or only one on the side of the
  // other edge, it is left to the table.
  const edges = gateLabels(bars, units, view);
  const labels = placeWanted(board, [...wanted, ...edges], { frame, boxes, lines }).filter(
    (label, index) => index < wanted.length || (label.place.clear && isOnItsSide(label)),
  );
  const hidden = labels.filter((label) => !label.place.clear).length;
  return {
    view,
    frame,
    limit,
    sight,
    bars,
    obstacles,
    marks,
    phases: view.phases,
    faults: flown,
    lines,
    boxes,
    labels,
    hidden,
  };
}

function spotLabel(anchor: Point, prefer: Point): WantedLabel {
  return { lines: [{ text: 'Spot' }], size: size.label, anchor, radius: markRadius.spot, prefer, reach: 52 };
}

function sightOf(plan: Plan, view: ProfileView): Segment | undefined {
  const index = plan.track.findIndex((sample) => sample.phase === 'round-out');
  const aim = plan.keys.find((key) => key.id === 'aim-point');
  if (index === -1 || aim === undefined) return undefined;
  return {
    from: profilePoint(view, view.toGo[index]!, plan.track[index]!.height),
    to: profilePoint(view, toGoOnFinal(plan, aim.along), 0),
  };
}

function barOf(
  gate: Gate,
  keys: readonly PlacedKey[],
  view: ProfileView,
  units: PageUnits,
): PlacedBar | undefined {
  const ring = keys.find(({ key }) => key.id === gate.at)?.at.x;
  const band = gateBand(gate, units);
  if (ring === undefined || band.none !== undefined || (gate.low ?? 0) >= view.barsTo) return undefined;
  // Where no height was found to be an edge, no height but the plan's is known to make the spot: the bar ends there,
  // open.
  const highest = gate.high ?? Math.max(gate.plan, gate.low ?? 0);
  const top = profilePoint(view, 0, Math.min(highest, view.barsTo)).y;
  const bottom = profilePoint(view, 0, gate.low ?? gate.plan).y;
  const x = bottom - top < lowestOnRing ? ring + besideRing : ring;
  return {
    gate,
    band,
    box: { x: x - barWidth / 2, y: top, width: barWidth, height: bottom - top },
    closedAbove: gate.high !== null && !isCut(gate, view),
    closedBelow: gate.low !== null,
  };
}

/** Whether the label of an edge is above the upper one, or below the lower one. */
function isOnItsSide({ place: { box }, wanted: { anchor, prefer } }: DrawnLabel): boolean {
  return prefer === undefined || (box.y + box.height / 2 - anchor.y) * prefer.y > 0;
}

/** Whether the bar goes higher than the drawing shows. */
const isCut = ({ high }: Gate, { barsTo }: ProfileView) => high !== null && high > barsTo;

/** An edge as it is printed, m; none where the plan's own height is printed there already. */
function edgeFigure(edge: BandEdge, planned: number): number | undefined {
  return typeof edge === 'number' && edge !== planned ? edge : undefined;
}

function gateLabels(bars: readonly PlacedBar[], units: PageUnits, view: ProfileView): WantedLabel[] {
  return bars.flatMap(({ gate, band, box }) => {
    const x = box.x + box.width / 2;
    const planned = roundTo(gate.plan, heightStep(units));
    const edges = [
      { height: edgeFigure(band.high, planned), cut: isCut(gate, view), prefer: { x: 0, y: -1 } },
      { height: edgeFigure(band.low, planned), cut: false, prefer: { x: 0, y: 1 } },
    ];
    return edges.flatMap(({ height, cut, prefer }): WantedLabel[] =>
      height === undefined
        ? []
        : [
            {
              lines: [{ text: `${cut ? 'up to ' : ''}${formatHeight(height, units)}` }],
              size: size.small,
              anchor: { x, y: cut ? box.y : profilePoint(view, 0, height).y },
              radius: 0.6,
              prefer,
              reach: 30,
            },
          ],
    );
  });
}
