import type { Plan, TrackSample } from '../../flight/terms/plan.ts';
import { formatLowHeight } from '../../words/figures/format.ts';
import { lengthUnitSize } from '../../words/figures/unit-size.ts';
import { missText } from '../../words/keys/place-words.ts';
import type { DrawingOptions } from '../kit/drawing.ts';
import { around, type Box, type Point, type Segment, segmentsOf, simplified } from '../kit/geometry.ts';
import { size, weight } from '../kit/ink.ts';
import { markRadius } from '../kit/marks.ts';
import { niceTicks } from '../kit/scale.ts';
import { wholePixels } from '../kit/sheet.ts';
import type { Line } from '../labels/label.ts';
import { type DrawnLabel, placeWanted, type WantedLabel } from '../labels/labels.ts';
import { touchesAtSpot } from '../pattern/pattern-words.ts';
import { faultLines } from '../profile/profile-faults.ts';
import type { FaultLine } from '../shared/drawn-fault.ts';
import { type DrawnLanding, landingFaultLabel } from './round-out-faults.ts';
import { type LandingEnd, pathOf } from './round-out-flight.ts';
import { speedWords, stateWords, stretchWords } from './round-out-words.ts';

/** Where distances from the spot, and heights, are on the page. */
export interface RoundOutView {
  /** The area between the axes, mm. */
  readonly plot: Box;
  /** m along from the spot at the left side of the plot. */
  readonly from: number;
  /** mm on the page to a metre of distance. */
  readonly perMetre: number;
  readonly exaggeration: number;
  /** m: distances before the spot, heights. */
  readonly distanceTicks: readonly number[];
  readonly heightTicks: readonly number[];
}

export interface RoundOutLayout {
  readonly view: RoundOutView;
  readonly final: readonly Point[];
  readonly roundOut: readonly Point[];
  readonly holdOff: readonly Point[];
  /** From where the round-out begins straight on to the aim point. */
  readonly sight: Segment | undefined;
  readonly marks: readonly { readonly kind: 'key' | 'aim' | 'spot'; readonly at: Point }[];
  readonly stretches: readonly { readonly text: string; readonly from: number; readonly to: number }[];
  readonly faults: readonly FaultLine[];
  readonly labels: readonly DrawnLabel[];
  readonly hidden: number;
}

const exaggerations = [6, 5, 4, 3, 2, 1];
/** mm. */
const right = 14;
const tickPitch = { distance: 18, height: 7 };

/**
 * Fits the landing into the width of the paper and `tallest` mm between the axes, with `headroom` mm left free above it;
 * undefined where even true heights do not fit.
 */
export function roundOutView(
  { plan, end, faults }: DrawnLanding,
  { units, board, maxWidth }: DrawingOptions,
  tallest: number,
  headroom: number,
): RoundOutView | undefined {
  const width = wholePixels(maxWidth);
  const first = end.final[0]!;
  const flown = faults.flatMap(({ samples }) => samples);
  const from = Math.min(first.along, ...flown.map(({ along }) => along));
  const touch = plan.touchdown.along;
  const last = Math.max(touch, spotIsNear(plan, end) ? 0 : touch, ...flown.map(({ along }) => along));
  const length = last - from;
  const highest = Math.max(first.height, ...flown.map(({ height }) => height));
  const left = board.measure(formatLowHeight(highest * 10, units), size.small) + 4;
  const perMetre = (width - left - right) / length;
  const exaggeration = exaggerations.find((times) => highest * perMetre * times <= tallest);
  if (exaggeration === undefined) return undefined;
  const plotHeight = highest * perMetre * exaggeration;
  const plot = { x: left, y: headroom, width: length * perMetre + 4, height: plotHeight };
  const step = (unit: 'm' | 'ft', over: number, most: number) => {
    const factor = lengthUnitSize(unit);
    return niceTicks(over / factor, Math.max(1, most)).ticks.map((tick) => tick * factor);
  };
  const before = step(units.distance, Math.max(-from, 1), plot.width / tickPitch.distance);
  const distanceTicks = faults.length > 0 ? [...before, ...past(before, last)] : before;
  const heightTicks = step(units.height, highest, plotHeight / tickPitch.height);
  return { plot, from, perMetre, exaggeration, distanceTicks, heightTicks };
}

/** Ticks past the spot, as far apart as those before it. */
function past([, step]: readonly number[], last: number): number[] {
  if (step === undefined) return [];
  return Array.from({ length: Math.max(0, Math.floor(last / step)) }, (_, index) => -(index + 1) * step);
}

/** Whether the spot is so near the touchdown that both are drawn. */
function spotIsNear(plan: Plan, end: LandingEnd): boolean {
  const shown = plan.touchdown.along - end.final[0]!.along;
  return end.final[0]!.along < 0 && -plan.touchdown.along < shown;
}

export function roundOutPoint(view: RoundOutView, along: number, height: number): Point {
  const { plot, from, perMetre, exaggeration } = view;
  return {
    x: plot.x + (along - from) * perMetre,
    y: plot.y + plot.height - height * perMetre * exaggeration,
  };
}

export function layOutRoundOut(
  { plan, end, faults }: DrawnLanding,
  { units, board, maxWidth }: DrawingOptions,
  view: RoundOutView,
): RoundOutLayout {
  const width = wholePixels(maxWidth);
  const at = ({ along, height }: Pick<TrackSample, 'along' | 'height'>) => roundOutPoint(view, along, height);
  const line = (samples: readonly TrackSample[]) => pathOf(samples).map(at);
  const [final, roundOut, holdOff] = [
    line([...end.final, end.roundOut[0]!]),
    line(end.roundOut),
    line(end.holdOff),
  ];
  const { plot } = view;
  const ground = plot.y + plot.height;
  const atSpot = touchesAtSpot(plan);
  const aimKey = plan.keys.find(({ id }) => id === 'aim-point');
  const aim = aimKey && aimKey.along > view.from ? roundOutPoint(view, aimKey.along, 0) : undefined;
  const sight = aim && { from: roundOut[0]!, to: aim };
  const touch = holdOff.at(-1)!;
  const spot = atSpot || spotIsNear(plan, end) ? roundOutPoint(view, 0, 0) : undefined;
  const marks: RoundOutLayout['marks'] = [
    { kind: 'key', at: roundOut[0]! },
    { kind: 'key', at: holdOff[0]! },
    ...(aim ? [{ kind: 'aim', at: aim } as const] : []),
    ...(atSpot ? [] : [{ kind: 'key', at: touch } as const]),
    ...(spot ? [{ kind: 'spot', at: spot } as const] : []),
  ];
  const flown = faults.map(({ samples }) => {
    const points = simplified(line(samples), 0.03);
    return { points, end: points.at(-1)! };
  });
  const own = [...final, ...roundOut, ...holdOff];
  const lines: Line[] = [
    ...segmentsOf(faults.length > 0 ? simplified(own, 0.05) : own).map((each) => ({
      ...each,
      halfWidth: weight.turn / 2,
    })),
    { from: { x: plot.x, y: ground }, to: { x: plot.x + plot.width, y: ground }, halfWidth: 0.2 },
    ...(sight ? [{ ...sight, halfWidth: 0.1 }] : []),
    ...faultLines(flown),
  ];
  const up = { x: 0.5, y: -0.87 };
  const label = (name: string, second: string, anchor: Point, radius: number): WantedLabel => ({
    lines: [{ text: name }, { text: second, bold: true }],
    size: size.label,
    anchor,
    radius,
    prefer: up,
    reach: 42,
  });
  const last = end.holdOff.at(-1)!;
  const touchWords = speedWords(plan, last, units);
  const wanted: WantedLabel[] = [
    label(
      atSpot ? 'Spot: wheels touch' : `Wheels touch, ${missText(plan.touchdown.along, units)}`,
      touchWords,
      touch,
      atSpot ? markRadius.spot : markRadius.key,
    ),
    ...(!atSpot && spot
      ? [{ ...label('Spot', '', spot, markRadius.spot), lines: [{ text: 'Spot' }] } satisfies WantedLabel]
      : []),
    label('Hold-off begins', stateWords(plan, end.holdOff[0]!, units), holdOff[0]!, markRadius.key),
    label('Round-out begins', stateWords(plan, end.roundOut[0]!, units), roundOut[0]!, markRadius.key),
    ...(aim && aimKey ? [label('Aim point', `${missText(aimKey.along, units)}`, aim, markRadius.aim)] : []),
    ...flown.map(({ end: at }, index) => landingFaultLabel(faults[index]!, at, units)),
  ];
  const boxes = marks.map((mark) => around(mark.at, markRadius[mark.kind]));
  const frame = { x: plot.x + 0.6, y: 0.6, width: width - plot.x - 1.2, height: ground - 1 };
  const labels = placeWanted(board, wanted, { frame, boxes, lines });
  return {
    view,
    final,
    roundOut,
    holdOff,
    sight,
    marks,
    faults: flown,
    stretches: [
      { text: 'final', from: final[0]!.x, to: roundOut[0]!.x },
      { text: `round-out ${stretchWords(end.roundOut, units)}`, from: roundOut[0]!.x, to: holdOff[0]!.x },
      { text: `hold-off ${stretchWords(end.holdOff, units)}`, from: holdOff[0]!.x, to: touch.x },
    ],
    labels,
    hidden: labels.filter(({ place }) => !place.clear).length,
  };
}
