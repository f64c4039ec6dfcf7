import type { Element } from 'hast';
import { toHtml } from 'hast-util-to-html';
import { createSVGWindow } from 'svgdom';
import type { DrawingBoard } from './drawing.ts';
import { type Box, boxOf, type Point, type Segment, segmentsOf } from './geometry.ts';

// For tests: reads a finished drawing back from its SVG text, independently of how it was laid out.

export interface ReadText {
  readonly text: string;
  readonly size: number;
  readonly bold: boolean;
  /** Ids of the groups around it. */
  readonly within: readonly string[];
  /** From the top of the capitals to the baseline: what must not be hidden. */
  readonly box: Box;
}

export interface ReadElement {
  readonly name: string;
  readonly attributes: Readonly<Record<string, string>>;
  /** Ids of the groups around it, the outermost first. */
  readonly within: readonly string[];
  readonly text: string;
  /** The last `transform` around it. */
  readonly transform: string | undefined;
}

/** A finished drawing, or its text taken out of a page. */
type Svg = Element | string;

const known = new WeakMap<Element, readonly ReadElement[]>();

/** A finished drawing is read once, however much is asked of it. */
export function readSvg(svg: Svg): readonly ReadElement[] {
  if (typeof svg === 'string') return read(svg);
  const elements = known.get(svg) ?? read(svgText(svg));
  known.set(svg, elements);
  return elements;
}

function read(svg: string): ReadElement[] {
  const root = createSVGWindow().document.documentElement;
  root.innerHTML = svg;
  return readUnder(root.firstElementChild!, [], undefined);
}

function readUnder(
  element: globalThis.Element,
  within: readonly string[],
  transform: string | undefined,
): ReadElement[] {
  const name = element.nodeName;
  const attributes = Object.fromEntries(Array.from(element.attributes, (each) => [each.name, each.value]));
  const children = [...element.childNodes];
  const text = children.map((child) => (child.nodeType === child.TEXT_NODE ? child.nodeValue : '')).join('');
  const groups = name === 'g' ? [...within, attributes.id ?? ''] : within;
  const moved = name === 'g' ? (attributes.transform ?? transform) : transform;
  const inside = children.flatMap((child) =>
    child.nodeType === child.ELEMENT_NODE ? readUnder(child as globalThis.Element, groups, moved) : [],
  );
  return [{ name, attributes, within, text, transform }, ...inside];
}

/** A drawing as it is in the page. */
export function svgText(svg: Element): string {
  return toHtml(svg);
}

const number = (element: ReadElement, name: string) => Number(element.attributes[name]);

export function textsOf(svg: Svg, board: DrawingBoard): ReadText[] {
  return readSvg(svg)
    .filter((element) => element.name === 'text')
    .map((element) => {
      const size = number(element, 'font-size');
      const bold = element.attributes['font-weight'] === '600';
      const width = board.measure(element.text, size, bold ? 'bold' : 'regular');
      const anchor = element.attributes['text-anchor'] ?? 'start';
      const x = number(element, 'x') - (anchor === 'middle' ? width / 2 : anchor === 'end' ? width : 0);
      const upright = { x, y: number(element, 'y') - size * 0.7, width, height: size * 0.7 };
      const turn = /translate\(([\d.]+) ([\d.]+)\) rotate\(90\)/.exec(element.transform ?? '');
      const box = turn
        ? {
            x: Number(turn[1]) - upright.y - upright.height,
            y: Number(turn[2]) + upright.x,
            width: upright.height,
            height: upright.width,
          }
        : upright;
      return { text: element.text, size, bold, within: element.within, box };
    });
}

/** Straight pieces of the lines and paths in a group, with half their stroke. */
export function linesIn(svg: Svg, group: string): (Segment & { halfWidth: number })[] {
  return readSvg(svg)
    .filter((element) => element.within.some((id) => id.endsWith(group)) && element.attributes.stroke)
    .flatMap((element) => {
      const halfWidth = number(element, 'stroke-width') / 2;
      return segmentsOf(pointsOf(element)).map((segment) => ({ ...segment, halfWidth }));
    });
}

export function pointsOf(element: ReadElement): Point[] {
  if (element.name === 'line') {
    return [
      { x: number(element, 'x1'), y: number(element, 'y1') },
      { x: number(element, 'x2'), y: number(element, 'y2') },
    ];
  }
  if (element.name !== 'path') return [];
  return [...element.attributes.d!.matchAll(/[ML]\s*(-?[\d.]+)[ ,](-?[\d.]+)/g)].map(([, x, y]) => ({
    x: Number(x),
    y: Number(y),
  }));
}

/** Circles, rectangles and filled shapes in a group. */
export function shapesIn(svg: Svg, group: string): Box[] {
  return readSvg(svg)
    .filter((element) => element.within.some((id) => id.endsWith(group)))
    .flatMap((element): Box[] => {
      if (element.name === 'circle') {
        const r = number(element, 'r');
        return [{ x: number(element, 'cx') - r, y: number(element, 'cy') - r, width: 2 * r, height: 2 * r }];
      }
      if (element.name === 'rect') {
        const box = { x: number(element, 'x'), y: number(element, 'y') };
        return [{ ...box, width: number(element, 'width'), height: number(element, 'height') }];
      }
      const filled = element.name === 'path' && element.attributes.fill !== 'none';
      return filled ? [boxOf(pointsOf(element))] : [];
    });
}
