import { describe, expect, it } from 'vitest';
import { planApproach } from '../../flight/plan/planner.ts';
import type { Plan } from '../../flight/terms/plan.ts';
import { createNodeBoard } from '../../press/printing/node-board.ts';
import type { PageUnits } from '../../words/figures/page-units.ts';
import type { Drawing } from '../kit/drawing.ts';
import { boxesOverlap, contains, grown, segmentMeetsBox } from '../kit/geometry.ts';
import { linesIn, pointsOf, readSvg, shapesIn, textsOf } from '../kit/svg-reading.ts';
import { aircraft, airfieldOf, drawnPattern, plannedCases, runwayOf } from '../shared/test-plans.ts';
import { patternDrawing } from './pattern.ts';

const board = createNodeBoard();
const feet: PageUnits = { height: 'ft', distance: 'm', speed: 'kt' };
const metric: PageUnits = { height: 'm', distance: 'm', speed: 'km/h' };
const shape = { circuit: 'left', spacing: 400, pastAbeam: 220, radius: 90, height: 304.8 } as const;
const room = { maxWidth: 128, maxHeight: 150 };
const draw = (plan: Plan, options: object = {}) =>
  patternDrawing(plan, { units: feet, board, id: 'p', ...room, ...options });

describe('the pattern drawing is to scale', () => {
  it('draws the ground at the scale it states, on paper of 96 px to the inch (CSS Values 3, 5.2)', () => {
    const { svg, scale } = draw(drawnPattern(shape));
    const root = readSvg(svg)[0]!.attributes;
    const width = Number(root.viewBox!.split(' ')[2]);
    const mmOnPaper = (mm: number) => (mm / width) * Number(root.width) * (25.4 / 96);
    expect(Number(root.width) % 1).toBe(0);
    expect(Number(root.height) % 1).toBe(0);
    const spacing = readSvg(svg).find((element) => element.within.includes('p-dimensions'))!;
    const [from, to] = pointsOf(spacing);
    expect(mmOnPaper(Math.hypot(from!.x - to!.x, from!.y - to!.y))).toBeCloseTo((400 * 1000) / scale, 2);
  });

  it('draws the runway as long and as wide as it is', () => {
    const { svg, scale } = draw(drawnPattern({ ...shape, runway: { length: 300, width: 30 } }));
    const rect = readSvg(svg).find(({ name, within }) => name === 'rect' && within.includes('p-ground'))!;
    expect(Number(rect.attributes.width)).toBeCloseTo((30 * 1000) / scale, 2);
    expect(Number(rect.attributes.height)).toBeCloseTo((300 * 1000) / scale, 2);
  });

  it('draws the runway on to the farthest end of a fault: none seems to have left it', () => {
    const plan = drawnPattern({ ...shape, runway: { length: 2400 } });
    const runwayIn = (svg: Drawing['svg'], scale: number) => {
      const rect = readSvg(svg).find(({ name, within }) => name === 'rect' && within.includes('p-ground'))!;
      const { x, y, width, height } = rect.attributes;
      const box = { x: Number(x), y: Number(y), width: Number(width), height: Number(height) };
      return { box, length: (Math.max(box.width, box.height) * scale) / 1000 };
    };
    for (const long of [150, 360, 700]) {
      const track = plan.track.map((sample) => ({ ...sample, along: sample.along + long }));
      const fault = { track, name: 'Base turn early', end: `${long} m long` };
      for (const room of [{}, { maxWidth: 170, maxHeight: 110 }]) {
        const { svg, scale } = draw(plan, { ...room, faults: [fault] });
        const { box, length } = runwayIn(svg, scale);
        expect(length).toBeGreaterThan(plan.runway.spot + long);
        expect(length).toBeLessThan(plan.runway.length);
        const strokes = linesIn(svg, 'p-faults').slice(-2);
        for (const { from, to } of strokes)
          expect(contains(box, { x: (from.x + to.x) / 2, y: (from.y + to.y) / 2, width: 0, height: 0 })).toBe(
            true,
          );
        const paper = Number(readSvg(svg)[0]!.attributes.viewBox!.split(' ')[2]);
        expect(box.x + box.width).toBeLessThan(paper - 1);
      }
    }
    const { svg, scale } = draw(plan);
    expect(runwayIn(svg, scale).length).toBeLessThan(plan.runway.spot + 250);
  });

  it('draws a runway that ends before a fault does to its end, and no farther', () => {
    const plan = drawnPattern({ ...shape, runway: { length: 400 } });
    const track = plan.track.map((sample) => ({ ...sample, along: sample.along + 360 }));
    const { svg, scale } = draw(plan, { faults: [{ track, name: 'Early', end: '360 m long' }] });
    const rect = readSvg(svg).find(({ name, within }) => name === 'rect' && within.includes('p-ground'))!;
    const { width, height } = rect.attributes;
    expect(Math.max(Number(width), Number(height))).toBeCloseTo((400 * 1000) / scale, 2);
  });

  it('of an approach from the base key gives both distances of that key from the spot', () => {
    const plan = planApproach({
      aircraft,
      airfield: airfieldOf(runwayOf()),
      runway: runwayOf(),
      approach: '90',
      power: 'idle',
      wind: { from: 0, speed: 0 },
    });
    const { svg, scale } = draw(plan);
    const key = plan.keys.find(({ id }) => id === 'base-key')!;
    const sides = readSvg(svg)
      .filter(({ within, name }) => within.includes('p-dimensions') && name === 'line')
      .map((line) => pointsOf(line))
      .map(([from, to]) => (Math.hypot(to!.x - from!.x, to!.y - from!.y) * scale) / 1000);
    const texts = textsOf(svg, board).map(({ text }) => text.replaceAll('\u00a0', ' '));
    for (const metres of [Math.abs(key.along), Math.abs(key.across)]) {
      expect(Math.min(...sides.map((side) => Math.abs(side - metres)))).toBeLessThan(0.1);
      expect(texts).toContain(`${Math.round(metres / 10) * 10} m`);
    }
  });

  it('carries a scale bar that says how long it is on the ground and on the paper', () => {
    const { svg, scale } = draw(drawnPattern(shape));
    const bars = readSvg(svg).filter((element) => element.attributes.class === 'scale-bar');
    expect(bars).toHaveLength(1);
    const { attributes } = bars[0]!;
    const length = Number(attributes.x2) - Number(attributes.x1);
    expect(attributes.id).toBe('p-scale-bar');
    expect(attributes.y1).toBe(attributes.y2);
    expect(length).toBeCloseTo((Number(attributes['data-length-m']) * 1000) / scale, 2);
    expect(length).toBeCloseTo(Number(attributes['data-length-mm']), 2);
  });

  it('takes the largest round scale that fits', () => {
    expect(draw(drawnPattern(shape)).scale).toBe(5000);
    expect(draw(drawnPattern({ ...shape, spacing: 800 })).scale).toBe(10_000);
    expect(draw(drawnPattern(shape), { maxWidth: 230, maxHeight: 260 }).scale).toBe(2500);
  });

  it('turns the landing to the right where that allows a larger scale', () => {
    const tall = drawnPattern({ ...shape, spacing: 300, pastAbeam: 300, runway: { length: 200 } });
    const upright = draw(tall, { maxWidth: 90, maxHeight: 150 });
    const wide = draw(tall, { maxWidth: 150, maxHeight: 110 });
    expect(wide.scale).toBe(upright.scale);
    const rect = readSvg(wide.svg).find(
      ({ name, within }) => name === 'rect' && within.includes('p-ground'),
    )!;
    expect(Number(rect.attributes.width)).toBeGreaterThan(Number(rect.attributes.height));
  });

  it('says so where there is no room', () => {
    expect(() => draw(drawnPattern(shape), { maxHeight: 20 })).toThrow(/no room/);
    expect(() => draw({ ...drawnPattern(shape), track: [] })).toThrow(/without a flown track/);
  });
});

describe('the pattern drawing shows where north is and where the wind blows', () => {
  /** Bearing on the page of an arrowhead: from the notch of its back (third point) to its tip (first). */
  const bearing = (svg: Drawing['svg'], which: number) => {
    const heads = readSvg(svg).filter(
      ({ name, within, attributes }) =>
        name === 'path' && within.includes('p-legend') && attributes.d!.endsWith('Z'),
    );
    const [tip, , notch] = pointsOf(heads[which]!);
    return ((Math.atan2(tip!.x - notch!.x, notch!.y - tip!.y) * 180) / Math.PI + 360) % 360;
  };

  it('points north 123 degrees round from a landing on 237 degrees that runs up the page', () => {
    expect(bearing(draw(drawnPattern(shape)).svg, 0)).toBeCloseTo(360 - 237, 0);
  });

  it('lets a wind from 210 degrees blow towards 030', () => {
    expect(bearing(draw(drawnPattern(shape)).svg, 1)).toBeCloseTo(30 - 237 + 360, 0);
  });

  it('gives the wind in figures, at pattern height too where it differs', () => {
    const texts = textsOf(draw(drawnPattern(shape)).svg, board).map(({ text }) =>
      text.replaceAll('\u00a0', ' '),
    );
    expect(texts).toContain('Wind 210° 12 kt');
    expect(texts).toContain('at 900 ft: 220° 19 kt');
  });

  it('gives the side of the magnetic variation, and none where it is not known', () => {
    const plan = drawnPattern(shape);
    const north = (variation: number | undefined) =>
      textsOf(draw({ ...plan, airfield: { ...plan.airfield, variation } }).svg, board)
        .map(({ text }) => text)
        .filter((text) => text.startsWith('N: '));
    expect(north((-2 * Math.PI) / 180)).toEqual(['N: true north, variation 2° W']);
    expect(north((3 * Math.PI) / 180)).toEqual(['N: true north, variation 3° E']);
    expect(north(undefined)).toEqual(['N: true north']);
  });

  it('draws no wind arrow in a calm', () => {
    const runway = runwayOf();
    const calm = { from: 0, speed: 0 };
    const request = {
      aircraft,
      airfield: airfieldOf(runway),
      runway,
      approach: '180',
      power: 'idle',
    } as const;
    const { svg } = draw(planApproach({ ...request, wind: calm }));
    expect(textsOf(svg, board).map(({ text }) => text)).toContain('Wind calm');
    expect(
      readSvg(svg).filter(({ attributes, within }) => within.includes('p-legend') && attributes.d),
    ).toHaveLength(1);
  });
});

describe('the pattern drawing can be read without being seen', () => {
  it('is an image with a title and a description in figures', () => {
    const { svg, description } = draw(drawnPattern(shape));
    const [root, ...rest] = readSvg(svg);
    expect(root!.attributes.role).toBe('img');
    const named = root!.attributes['aria-labelledby']!.split(' ').map((id) =>
      rest.find((element) => element.attributes.id === id),
    );
    expect(named.map((element) => element?.name)).toEqual(['title', 'desc']);
    expect(named[1]!.text).toBe(description);
    const words = description.replaceAll('\u00a0', ' ');
    expect(words).toContain('Wind 210° 12 kt, at 900 ft: 220° 19 kt.');
    expect(words).toContain('400 m left of the spot');
    expect(words).toContain('1:5,000');
  });

  it('begins every id with its own', () => {
    const ids = readSvg(draw(drawnPattern(shape), { id: 'lesson-3' }).svg).flatMap(
      ({ attributes }) => attributes.id ?? [],
    );
    expect(ids.length).toBeGreaterThan(5);
    expect(new Set(ids).size).toBe(ids.length);
    for (const id of ids) expect(id).toMatch(/^lesson-3/);
  });
});

const plans = plannedCases();
for (const circuit of ['left', 'right'] as const) {
  const drawn = (changes: object) => () => drawnPattern({ ...shape, circuit, ...changes });
  plans.push([`${circuit}, near`, drawn({ pastAbeam: 90 })]);
  plans.push([`${circuit}, wide`, drawn({ spacing: 700, pastAbeam: 400 })]);
  plans.push([`${circuit}, long runway`, drawn({ runway: { length: 2400, width: 45 } })]);
  plans.push([`${circuit}, overhead`, drawn({ circles: 0, height: 500 })]);
  plans.push([`${circuit}, two circles`, drawn({ circles: 2, height: 900 })]);
}
const rooms = [room, { maxWidth: 90, maxHeight: 150 }, { maxWidth: 170, maxHeight: 110 }];

describe('no label of the pattern hides anything', () => {
  it.each(plans)('%s', (_name, planned) => {
    const plan = planned();
    for (const size of rooms) {
      for (const units of size === room ? [feet, metric] : [feet]) {
        const { svg, width, height } = draw(plan, { ...size, units });
        const texts = textsOf(svg, board);
        const paper = { x: 0, y: 0, width, height };
        const lines = ['track', 'dimensions', 'ground'].flatMap((group) => linesIn(svg, group));
        const shapes = ['marks', 'ground', 'track'].flatMap((group) => shapesIn(svg, group));
        expect(texts.length).toBeGreaterThan(14);
        for (const [index, text] of texts.entries()) {
          expect(contains(paper, text.box), `${text.text} is on the paper`).toBe(true);
          const under = texts.slice(index + 1).filter((other) => boxesOverlap(text.box, other.box));
          expect(
            under.map((other) => other.text),
            `${text.text} over another text`,
          ).toEqual([]);
          const hidden = lines.filter((line) => segmentMeetsBox(line, grown(text.box, line.halfWidth)));
          expect(hidden, `${text.text} over a line`).toEqual([]);
          expect(
            shapes.filter((box) => boxesOverlap(box, text.box)),
            `${text.text} over a mark`,
          ).toEqual([]);
          const leaders = linesIn(svg, 'labels').filter((line) => segmentMeetsBox(line, text.box));
          expect(leaders, `a leader through ${text.text}`).toEqual([]);
          // 7 points, in mm.
          expect(text.size).toBeGreaterThanOrEqual((7 / 72) * 25.4);
        }
      }
    }
  });
});
