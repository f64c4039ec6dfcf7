import type { VFile } from 'vfile';
import { spanAt } from '../messages/source-place.ts';
import { parseQuantity, QuantityError } from '../units/quantity.ts';
import type { Lesson } from './parse-lesson.ts';
import { type TypedQuantity, typedQuantities } from './typed-quantities.ts';

/** A figure of the flight that a directive prints. */
export interface KnownFigure {
  readonly kind: 'height' | 'distance' | 'speed';
  /** m or m/s. */
  readonly value: number;
  /** The step that the page rounds it to, in the same unit. */
  readonly step: number;
  /** What the page prints, in the same unit: not the nearest step where it is the edge of a band or a limit. */
  readonly printed: number;
  /** As an author types it: `:key[downwind-key]{show=height}`. */
  readonly directive: string;
}

/**
 * Heights in rules that hold for every aircraft: the turn to final complete, the wheels down beyond the spot,
 * clearance over an obstacle, the height from which a landing distance is counted. They are typed by hand, and stay
 * as they are.
 */
const rules = ['300 ft', '200 ft', '50 ft'].map((text) => parseQuantity(text, 'length'));

/**
 * Warns of a figure typed by hand that agrees, to the page's rounding, with one of the flight: it would stay the same
 * when the aircraft, the wind or the airfield changes.
 *
 * @param figures those of the flight; where several agree, the nearest is named
 * @param heightUnit the page's: a length typed in it is taken for a height, one in another unit for a distance; where
 * the
 *   page has one unit for both, it is taken for either
 */
export function checkTypedFigures(
  { tree, uses }: Pick<Lesson<never>, 'tree' | 'uses'>,
  figures: readonly KnownFigure[],
  units: { readonly height: string; readonly distance: string },
  file: VFile,
): void {
  const source = String(file);
  const given = [...rules, ...givenIn(uses)];
  for (const typed of typedQuantities(tree, source)) {
    if (typed.kind === 'length' && given.some((height) => Math.abs(height - typed.value) < 0.01)) continue;
    const [nearest] = figures
      .filter(({ kind }) => couldBe(typed, kind, units))
      .map((figure) => ({ figure, miss: Math.abs(figure.value - typed.value) }))
      .filter(({ figure, miss }) => figure.value >= figure.step && agrees(typed.value, figure, miss))
      .sort((a, b) => a.miss - b.miss);
    if (!nearest) continue;
    const reason = `\`${typed.text}\` is typed; \`${nearest.figure.directive}\` would follow the aircraft`;
    const place = spanAt(source, typed.start, typed.end);
    file.message(reason, { place, ruleId: 'typed-figure', source: 'chalkwing' });
  }
}

/** A typed figure reads as the printed one, or would if it were rounded. */
function agrees(typed: number, { printed, step }: KnownFigure, miss: number): boolean {
  return miss <= step / 2 + 1e-9 || Math.abs(typed - printed) < step / 100;
}

/** Lengths in the braces of the lesson's own directives, m: text that names one is about what is drawn there. */
function givenIn(uses: Pick<Lesson<never>, 'uses'>['uses']): number[] {
  return uses.flatMap(({ node }) =>
    Object.values(node.attributes ?? {}).flatMap((text) => {
      try {
        return [parseQuantity(text ?? '', 'length')];
      } catch (error) {
        if (error instanceof QuantityError) return [];
        throw error;
      }
    }),
  );
}

function couldBe(
  { kind, unit }: TypedQuantity,
  figure: KnownFigure['kind'],
  { height, distance }: { readonly height: string; readonly distance: string },
): boolean {
  if (kind === 'speed' || figure === 'speed') return kind === 'speed' && figure === 'speed';
  if (height === distance || (unit !== height && unit !== distance)) return true;
  return (unit === height) === (figure === 'height');
}
