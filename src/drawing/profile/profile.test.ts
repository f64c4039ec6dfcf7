import { describe, expect, it } from 'vitest';
import type { Plan } from '../../flight/terms/plan.ts';
import { createNodeBoard } from '../../press/printing/node-board.ts';
import type { PageUnits } from '../../words/figures/page-units.ts';
import type { Drawing } from '../kit/drawing.ts';
import { boxesOverlap, contains, grown, segmentMeetsBox } from '../kit/geometry.ts';
import {
  linesIn,
  pointsOf,
  type ReadElement,
  readSvg,
  shapesIn,
  svgText,
  textsOf,
} from '../kit/svg-reading.ts';
import { drawnPattern, plannedCases } from '../shared/test-plans.ts';
import { profileDrawing } from './profile.ts';

const board = createNodeBoard();
const feet: PageUnits = { height: 'ft', distance: 'm', speed: 'kt' };
const metric: PageUnits = { height: 'm', distance: 'm', speed: 'km/h' };
const shape = { circuit: 'left', spacing: 400, pastAbeam: 220, radius: 90, height: 304.8 } as const;
const draw = (plan: Plan, options: object = {}) =>
  profileDrawing(plan, { units: feet, board, id: 'q', maxWidth: 128, maxHeight: 80, ...options });
const plain = (text: string) => text.replaceAll('\u00a0', ' ');
const inGroup = (svg: Drawing['svg'], group: string) =>
  readSvg(svg).filter(({ within }) => within.includes(`q-${group}`));

/** Page x of a distance and page y of a height, read from the axes' own numbers. */
function axes(svg: Drawing['svg']) {
  const numbers = textsOf(svg, board).filter(({ within }) => within.includes('q-axes'));
  const read = (unit: string) =>
    numbers
      .filter(({ text }) => text.endsWith(`\u00a0${unit}`))
      .map(({ text, box }) => ({ value: Number.parseFloat(text.replace(',', '')), box }))
      .sort((one, other) => one.value - other.value);
  const x = (box: { x: number; width: number }) => box.x + box.width / 2;
  const y = (box: { y: number; height: number }) => box.y + box.height / 2;
  const [distances, heights] = [read('m'), read('ft')];
  const far = distances.at(-1)!;
  const high = heights.at(-1)!;
  const zero = { x: x(distances[0]!.box), y: y(heights[0]!.box) };
  const perMetre = (zero.x - x(far.box)) / far.value;
  const perFoot = (zero.y - y(high.box)) / high.value;
  return {
    perMetre,
    perFoot,
    toGo: (page: number) => (zero.x - page) / perMetre,
    feet: (page: number) => (zero.y - page) / perFoot,
  };
}

const centres = (elements: readonly ReadElement[]) =>
  elements
    .filter(({ name, attributes }) => name === 'circle' && attributes.stroke)
    .map(({ attributes }) => ({ x: Number(attributes.cx), y: Number(attributes.cy) }));

describe('the profile', () => {
  it('draws heights the stated number of times as large as distances', () => {
    const { svg, exaggeration } = draw(drawnPattern(shape));
    const { perMetre, perFoot } = axes(svg);
    expect(perFoot / 0.3048 / perMetre).toBeCloseTo(exaggeration, 1);
    const { exaggeration: lower, svg: low } = draw(drawnPattern({ ...shape, height: 200 }));
    expect(lower).toBeGreaterThan(1);
    expect(plain(svgText(low))).toContain(`Heights drawn ${lower}× as large as distances.`);
    expect(exaggeration).toBe(1.5);
    expect(plain(svgText(svg))).toContain('Heights drawn 1.5× as large as distances.');
    const high = draw(drawnPattern({ ...shape, height: 450 }));
    expect(high.exaggeration).toBe(1);
    expect(svgText(high.svg)).toContain('Heights and distances drawn alike.');
  });

  it('puts each key at its height and at the distance still to be flown', () => {
    const plan = drawnPattern(shape);
    const { svg } = draw(plan);
    const read = axes(svg);
    const keys = plan.keys.filter(({ id }) => id !== 'aim-point');
    const marks = centres(inGroup(svg, 'marks'));
    expect(marks).toHaveLength(keys.length);
    for (const [index, key] of keys.entries()) {
      // 20 m/s over the ground all the way, except for the last metres of each arc.
      const toGo = (plan.touchdown.time - key.time) * 20;
      expect(Math.abs(read.toGo(marks[index]!.x) - toGo)).toBeLessThan(12);
      expect(Math.abs(read.feet(marks[index]!.y) - key.height / 0.3048)).toBeLessThan(4);
    }
  });

  it('draws the line of 300 ft at 300 ft', () => {
    const { svg } = draw(drawnPattern(shape));
    const line = inGroup(svg, 'heights').find(
      ({ attributes }) => attributes['stroke-dasharray'] === '2 1.2',
    )!;
    const [from, to] = pointsOf(line);
    expect(from!.y).toBe(to!.y);
    expect(Math.abs(axes(svg).feet(from!.y) - 300)).toBeLessThan(4);
    expect(plain(svgText(svg))).toContain('300 ft: turn to final complete');
  });

  it('draws a gate as a bar from its lowest to its highest height, open where there is no edge', () => {
    const plan = drawnPattern(shape);
    const { svg, description } = draw(plan);
    const read = axes(svg);
    const bars = inGroup(svg, 'heights').filter(
      ({ name, attributes }) => name === 'rect' && !attributes.stroke,
    );
    expect(bars).toHaveLength(3);
    const [downwind, , final] = bars.map(({ attributes }) => ({
      high: read.feet(Number(attributes.y)),
      low: read.feet(Number(attributes.y) + Number(attributes.height)),
    }));
    expect(Math.abs(downwind!.high - plan.gates[0]!.high! / 0.3048)).toBeLessThan(5);
    expect(Math.abs(downwind!.low - plan.gates[0]!.low! / 0.3048)).toBeLessThan(5);
    // No lower edge was found: nothing under the plan is shown as still making the spot.
    expect(Math.abs(final!.low - plan.gates[2]!.plan / 0.3048)).toBeLessThan(5);
    const caps = inGroup(svg, 'heights').filter(({ attributes }) => attributes['stroke-width'] === '0.5');
    expect(caps).toHaveLength(5);
    expect(plain(description)).toMatch(/still made from the downwind key between [\d,]+ ft and [\d,]+ ft/);
    expect(plain(description)).toMatch(
      /still made from final between the planned [\d,]+ ft and [\d,]+ ft; no lower edge was found/,
    );
  });

  it('sets a bar too low to be seen behind its ring beside it, and repeats no height of the plan', () => {
    const plan = drawnPattern({ ...shape, spacing: 700, pastAbeam: 400 });
    const planned = plan.gates[2]!.plan;
    const gates = [
      ...plan.gates.slice(0, 2),
      { at: 'final' as const, low: planned, plan: planned, high: planned + 12 },
    ];
    const { svg } = draw({ ...plan, gates }, { maxWidth: 170 });
    const bars = inGroup(svg, 'heights').filter(
      ({ name, attributes }) => name === 'rect' && !attributes.stroke,
    );
    const middles = bars.map(({ attributes }) => Number(attributes.x) + Number(attributes.width) / 2);
    const rings = plan.gates.map(
      ({ at }) => centres(inGroup(svg, 'marks'))[plan.keys.findIndex(({ id }) => id === at)]!,
    );
    expect(middles[0]!).toBeCloseTo(rings[0]!.x, 2);
    expect(Number(bars[2]!.attributes.x)).toBeGreaterThan(rings[2]!.x + 1.15);
    expect(middles[2]! - rings[2]!.x).toBeLessThan(4);
    const height = `${Math.round(planned / 3.048) * 10}\u00a0ft`;
    expect(textsOf(svg, board).filter(({ text }) => text === height)).toHaveLength(1);
  });

  it('cuts a bar that would leave the flight no room, open at its top, with the edge beside it', () => {
    const plan = drawnPattern(shape);
    const key = plan.gates[0]!;
    const read = (high: number) => {
      const { svg } = draw({ ...plan, gates: [{ ...key, low: key.plan - 50, high }] });
      const heights = inGroup(svg, 'heights');
      const bar = heights.find(({ name, attributes }) => name === 'rect' && !attributes.stroke)!;
      const caps = heights.filter(({ attributes }) => attributes['stroke-width'] === '0.5');
      return {
        words: plain(svgText(svg)),
        top: axes(svg).feet(Number(bar.attributes.y)) * 0.3048,
        caps: caps.length,
      };
    };
    const highest = Math.max(...plan.track.map(({ height }) => height));
    const tall = read(3 * highest);
    expect(tall.top).toBeCloseTo(1.4 * highest, -1);
    expect(tall.caps).toBe(1);
    const feet = Math.floor((3 * highest) / 3.048) * 10;
    expect(tall.words).toContain(`up to ${feet.toLocaleString('en')} ft`);
    const whole = read(1.3 * highest);
    expect(whole.top).toBeCloseTo(1.3 * highest, -1);
    expect(whole.caps).toBe(2);
    expect(whole.words).not.toContain('up to');
  });

  it('draws no bar where the edges of a gate cross, also once they are rounded, and says why', () => {
    const plan = drawnPattern(shape);
    const ft = (height: number) => height * 0.3048;
    const gates = [
      { at: 'downwind-key' as const, low: ft(1362), plan: plan.gates[0]!.plan, high: ft(1368) },
      { at: 'base-key' as const, low: ft(700), plan: plan.gates[1]!.plan, high: ft(600) },
      { at: 'final' as const, low: null, plan: plan.gates[2]!.plan, high: null },
    ];
    const { svg, description } = draw({ ...plan, gates });
    expect(
      inGroup(svg, 'heights').filter(({ name, attributes }) => name === 'rect' && !attributes.stroke),
    ).toEqual([]);
    expect(plain(svgText(svg))).not.toMatch(/1,3[67]0 ft|Bars:/);
    expect(
      plain(
        textsOf(svg, board)
          .map(({ text }) => text)
          .join(' '),
      ),
    ).toContain(
      'No bar at the downwind key: its edges meet. No bar at the base key: its edges cross. No bar on final: no way',
    );
    expect(plain(description)).toContain('There is no band of heights at the base key: its edges cross.');
    expect(plain(description)).not.toContain('still made');
  });

  it('rounds the edges of a gate inward in its description as beside its bars', () => {
    const plan = drawnPattern(shape);
    const ft = (height: number) => height * 0.3048;
    const low = plan.gates[0]!.plan - ft(131);
    const high = plan.gates[0]!.plan + ft(109);
    const gates = [{ ...plan.gates[0]!, low, high }];
    const { svg, description } = draw({ ...plan, gates });
    const printed = [Math.ceil(low / ft(10)) * 10, Math.floor(high / ft(10)) * 10].map(
      (height) => `${height.toLocaleString('en')} ft`,
    );
    expect(plain(description)).toContain(`between ${printed.join(' and ')}`);
    const beside = textsOf(svg, board)
      .filter(({ within }) => within.includes('q-labels'))
      .map(({ text }) => plain(text));
    for (const text of printed) expect(beside).toContain(text);
  });

  it('draws its line where the school has the turn to final complete, rounded up', () => {
    const { svg, description } = draw(drawnPattern(shape), { leastFinal: 365 * 0.3048 });
    const line = inGroup(svg, 'heights').find(
      ({ attributes }) => attributes['stroke-dasharray'] === '2 1.2',
    )!;
    expect(Math.abs(axes(svg).feet(pointsOf(line)[0]!.y) - 365)).toBeLessThan(4);
    expect(plain(svgText(svg))).toContain('370 ft: turn to final complete');
    expect(plain(description)).toContain('A line marks 370 ft, by which');
  });

  it('names the phases in the order flown', () => {
    const { svg } = draw(drawnPattern(shape));
    const names = inGroup(svg, 'phases').filter(({ name }) => name === 'text');
    expect(names.slice(0, 6).map(({ text }) => text)).toEqual([
      'downwind',
      'base turn',
      'base',
      'final turn',
      'final',
      'round-out, hold-off',
    ]);
  });

  it('shows an obstacle under final, and none beside it', () => {
    const under = draw(drawnPattern(shape));
    expect(plain(svgText(under.svg))).toContain('>Hedge 10 ft<');
    expect(plain(under.description)).toContain('Under final: Hedge, 10 ft high.');
    const obstacles = [{ what: 'Barn', height: 9, along: -150, across: 120, width: 20 }];
    const beside = draw(drawnPattern({ ...shape, runway: { obstacles } }));
    expect(svgText(beside.svg)).not.toContain('Barn');
  });

  it('shows of a spiral what follows the downwind key, and says so', () => {
    const { svg, description } = draw(drawnPattern({ ...shape, circles: 2, height: 900 }));
    expect(plain(svgText(svg))).toContain('The circles above the downwind key are not drawn.');
    expect(inGroup(svg, 'phases').map(({ text }) => text)).not.toContain('circle');
    expect(plain(description)).toMatch(/Overhead: 2,950 ft/);
  });

  it('draws a short, steep approach with heights and distances alike, not filling the width', () => {
    const { exaggeration, svg } = draw(drawnPattern({ ...shape, pastAbeam: 90 }), { maxWidth: 170 });
    const { perMetre, perFoot } = axes(svg);
    expect(exaggeration).toBe(1);
    expect(perFoot / 0.3048 / perMetre).toBeCloseTo(1, 1);
  });

  it('marks the spot and the miss where the wheels touch elsewhere', () => {
    const plan = drawnPattern(shape);
    const along = -140;
    const shifted = (place: { along: number }) => ({ ...place, along: place.along + along });
    const short = {
      ...plan,
      touchdown: { ...plan.touchdown, along },
      track: plan.track.map((sample) => ({ ...sample, ...shifted(sample) })),
      keys: plan.keys.map((key) => ({ ...key, ...shifted(key) })),
      made: false,
    } as Plan;
    const { svg, description } = draw(short);
    expect(plain(svgText(svg))).toContain('>140 m short<');
    expect(plain(description)).toContain('The wheels touch 140 m short.');
    const [touched, spot] = centres(inGroup(svg, 'marks')).slice(-2);
    expect(Math.abs(axes(svg).toGo(touched!.x))).toBeLessThan(3);
    expect(Math.abs(axes(svg).toGo(spot!.x) + 140)).toBeLessThan(3);
  });

  it('says so where there is no room', () => {
    expect(() => draw(drawnPattern(shape), { maxHeight: 30 })).toThrow(/no room/);
  });
});

const plans = plannedCases();
for (const circuit of ['left', 'right'] as const) {
  const drawn = (changes: object) => () => drawnPattern({ ...shape, circuit, ...changes });
  plans.push([`${circuit}, near`, drawn({ pastAbeam: 90 })]);
  plans.push([`${circuit}, wide`, drawn({ spacing: 700, pastAbeam: 400 })]);
  plans.push([`${circuit}, overhead`, drawn({ circles: 0, height: 500 })]);
  plans.push([`${circuit}, two circles`, drawn({ circles: 2, height: 900 })]);
}

describe('no label of the profile hides anything', () => {
  it.each(plans)('%s', (_name, planned) => {
    const plan = planned();
    for (const maxWidth of [90, 128, 170]) {
      for (const units of maxWidth === 128 ? [feet, metric] : [feet]) {
        const { svg, width, height } = draw(plan, { maxWidth, units });
        const texts = textsOf(svg, board);
        const paper = { x: 0, y: 0, width, height };
        const lines = ['track', 'axes', 'heights', 'phases'].flatMap((group) => linesIn(svg, group));
        const shapes = ['marks', 'heights'].flatMap((group) => shapesIn(svg, group));
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
        }
      }
    }
  });
});
