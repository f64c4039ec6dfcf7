import { type Segment, segmentsOf } from '../src/drawing/kit/geometry.ts';
import { pointsOf, type ReadElement, readSvg } from '../src/drawing/kit/svg-reading.ts';
import { lightness } from './luminance.ts';

/** How something is drawn: what the eye tells it from the next thing by. */
export interface Look {
  /** `line` where only a stroke is seen; for what is filled, a circle, an upright box, or an area of any other outline. */
  readonly shape: 'line' | 'disc' | 'box' | 'area';
  /** mm; 0 without a stroke. */
  readonly width: number;
  readonly dashes: string;
  readonly stroke: string | undefined;
  readonly fill: string | undefined;
}

/** One drawing of a page, read back from its SVG. */
export interface DrawnSheet {
  readonly id: string;
  /** What its texts say, one after another. */
  readonly words: string;
  readonly marks: readonly (ReadElement & { readonly look: Look })[];
}

/** The drawings of a page, without the sheets of paper that they lie on. */
export function drawingsIn(html: string): DrawnSheet[] {
  return [...html.matchAll(/<svg\b[^>]*\bid="([^"]*)"[\s\S]*?<\/svg>/g)].map(([svg, id]) => {
    const elements = readSvg(svg);
    return {
      id: id!,
      words: elements
        .flatMap(({ name, text }) => (name === 'text' || name === 'tspan' ? [text] : []))
        .join(' '),
      marks: elements
        .filter(({ name, within }) => /^(line|path|circle|rect)$/.test(name) && within.length > 0)
        .map((element) => ({ ...element, look: lookOf(element) })),
    };
  });
}

const colour = (value: string | undefined) => (value === undefined || value === 'none' ? undefined : value);

function lookOf({ name, attributes }: ReadElement): Look {
  const fill = name === 'line' ? undefined : colour(attributes.fill);
  const stroke = colour(attributes.stroke);
  return {
    shape: name === 'circle' ? 'disc' : fill === undefined ? 'line' : name === 'rect' ? 'box' : 'area',
    width: stroke === undefined ? 0 : Number(attributes['stroke-width']),
    dashes: attributes['stroke-dasharray'] ?? '',
    stroke,
    fill,
  };
}

/** L* between two greys that can be told apart side by side without a third to compare them with. */
const greyStep = 20;
/** The ratio of two widths, and of the lengths after which two dashes repeat, that the eye can tell apart. */
const widthStep = 1.25;
const dashStep = 1.2;

/** Whether two looks differ in shape, width or dash: on any paper, in any ink. */
export function differInForm(a: Look, b: Look): boolean {
  const ratio = (one: number, other: number) => Math.max(one, other) / Math.max(Math.min(one, other), 1e-9);
  if (a.shape !== b.shape) return true;
  if (a.width !== b.width && ratio(a.width, b.width) >= widthStep) return true;
  if (a.dashes === b.dashes) return false;
  const [one, other] = [a, b].map(({ dashes }) =>
    dashes
      .split(/[\s,]+/)
      .filter(Boolean)
      .map(Number),
  );
  const period = (parts: number[]) => parts.reduce((sum, part) => sum + part, 0);
  return one!.length !== other!.length || ratio(period(one!), period(other!)) >= dashStep;
}

/** Whether two looks differ in colour only, with no grey step between them in print without colour. */
export function differInHueAlone(a: Look, b: Look): boolean {
  if ((a.stroke === b.stroke && a.fill === b.fill) || differInForm(a, b)) return false;
  return !stepBetween(a.stroke, b.stroke) && !stepBetween(a.fill, b.fill);
}

function stepBetween(one: string | undefined, other: string | undefined): boolean {
  if (one === undefined || other === undefined) return one !== other;
  return Math.abs(lightness(one) - lightness(other)) >= greyStep;
}

/** mm along the edge of a shape between two places examined. */
const edgeStep = 0.5;

/** The share of a shape's edge, 0–1, that a line of the drawing runs along. */
export function outlinedShare(shape: ReadElement, lines: readonly Segment[]): number {
  const corners = cornersOf(shape);
  const places = segmentsOf([...corners, corners[0]!]).flatMap(({ from, to }) => {
    const count = Math.max(1, Math.round(Math.hypot(to.x - from.x, to.y - from.y) / edgeStep));
    return Array.from({ length: count }, (_, index) => {
      const share = (index + 0.5) / count;
      return { x: from.x + share * (to.x - from.x), y: from.y + share * (to.y - from.y) };
    });
  });
  const onLine = places.filter((place) => lines.some((line) => distance(place, line) < 0.2));
  return onLine.length / places.length;
}

function cornersOf(shape: ReadElement): { x: number; y: number }[] {
  if (shape.name !== 'rect') return pointsOf(shape);
  const [x, y, width, height] = ['x', 'y', 'width', 'height'].map((name) =>
    Number(shape.attributes[name]),
  ) as [number, number, number, number];
  return [
    { x, y },
    { x: x + width, y },
    { x: x + width, y: y + height },
    { x, y: y + height },
  ];
}

function distance(place: { x: number; y: number }, { from, to }: Segment): number {
  const [dx, dy] = [to.x - from.x, to.y - from.y];
  const length = dx * dx + dy * dy;
  const share = length === 0 ? 0 : ((place.x - from.x) * dx + (place.y - from.y) * dy) / length;
  const on = Math.min(1, Math.max(0, share));
  return Math.hypot(place.x - from.x - on * dx, place.y - from.y - on * dy);
}
