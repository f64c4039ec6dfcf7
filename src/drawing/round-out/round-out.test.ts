import { describe, expect, it } from 'vitest';
import { inducedDragReduction } from '../../flight/aircraft/ground-effect.ts';
import { planApproach } from '../../flight/plan/planner.ts';
import type { Plan, PlanRequest } from '../../flight/terms/plan.ts';
import { createNodeBoard } from '../../press/printing/node-board.ts';
import type { Drawing } from '../kit/drawing.ts';
import { fromSegment, segmentsOf } from '../kit/geometry.ts';
import { pointsOf, readSvg, svgText, textsOf } from '../kit/svg-reading.ts';
import { expectNothingHidden } from '../labels/nothing-hidden.ts';
import { aircraft, airfieldOf, fasterAircraft, runwayOf } from '../shared/test-plans.ts';
import { roundOutDrawing } from './round-out.ts';
import { dragSaved, landingEnd, pathOf } from './round-out-flight.ts';

const board = createNodeBoard();
const feet = { height: 'ft', distance: 'm', speed: 'kt' } as const;
const metric = { height: 'm', distance: 'm', speed: 'km/h' } as const;
const plain = (text: string) => text.replaceAll('\u00a0', ' ');

function flown(changes: Partial<PlanRequest> = {}): Plan {
  const runway = runwayOf({ length: 640, spot: 150 });
  return planApproach({
    aircraft,
    airfield: airfieldOf(runway),
    runway,
    approach: '180',
    power: 'idle',
    wind: { from: runway.heading, speed: 5 },
    detail: 'flight',
    ...changes,
  });
}

/** The same landing, all of it farther along. */
function movedBy(metres: number, plan: Plan): Plan {
  const moved = <Place extends { along: number }>(place: Place) => ({
    ...place,
    along: place.along + metres,
  });
  return {
    ...plan,
    track: plan.track.map(moved),
    keys: plan.keys.map(moved),
    touchdown: moved(plan.touchdown),
    made: false,
  };
}

const draw = (plan: Plan, options: object = {}) =>
  roundOutDrawing(plan, { units: feet, board, id: 'o', maxWidth: 174, maxHeight: 90, ...options });
const inGroup = (svg: Drawing['svg'], group: string) =>
  readSvg(svg).filter(({ within }) => within.includes(`o-${group}`));

/** Page x of a distance and y of a height, from the axes' own numbers (metres and metres). */
function axes(svg: Drawing['svg']) {
  const numbers = textsOf(svg, board).filter(({ within }) => within.includes('o-axes'));
  const x = (text: string) => {
    const { box } = numbers.find((each) => plain(each.text) === text)!;
    return box.x + box.width / 2;
  };
  const heights = numbers.filter(({ text }) => text.endsWith('ft'));
  const y = ({ box }: (typeof numbers)[number]) => box.y + box.height / 2;
  const [zero, one] = [heights[0]!, heights[1]!];
  const perMetre = (x('spot') - x('20 m')) / 20;
  const perHeight = (y(zero) - y(one)) / (Number.parseFloat(one.text) * 0.3048);
  return {
    perMetre,
    perHeight,
    at: (along: number, height: number) => ({
      x: x('spot') + along * perMetre,
      y: y(zero) - height * perHeight,
    }),
  };
}

describe('the round-out', () => {
  const plan = flown();
  const drawing = draw(plan);
  const end = landingEnd(plan)!;

  it('draws heights the stated number of times as large as distances', () => {
    const { perMetre, perHeight } = axes(drawing.svg);
    expect(drawing.exaggeration).toBeGreaterThan(1);
    expect(perHeight / perMetre).toBeCloseTo(drawing.exaggeration, 1);
    expect(plain(svgText(drawing.svg))).toContain(`Heights drawn ${drawing.exaggeration}× as large`);
  });

  it('goes through every sample that was flown', () => {
    const { at } = axes(drawing.svg);
    const path = inGroup(drawing.svg, 'track')
      .filter(({ name }) => name === 'path')
      .flatMap((element) => segmentsOf(pointsOf(element)));
    for (const { along, height } of [...end.final, ...end.roundOut, ...end.holdOff]) {
      const place = at(along, height);
      expect(Math.min(...path.map((segment) => fromSegment(place, segment)))).toBeLessThan(0.15);
    }
  });

  it('points the dashed glide line from where the pull begins to the aim point on the ground', () => {
    const line = inGroup(drawing.svg, 'track').find(({ attributes }) => attributes['stroke-dasharray'])!;
    const [from, to] = pointsOf(line);
    const { at } = axes(drawing.svg);
    const aim = plan.keys.find(({ id }) => id === 'aim-point')!;
    expect(Math.abs(to!.x - at(aim.along, 0).x)).toBeLessThan(0.15);
    expect(Math.abs(to!.y - at(aim.along, 0).y)).toBeLessThan(0.15);
    expect(Math.abs(from!.y - at(0, aircraft.roundOut.height).y)).toBeLessThan(0.2);
    // It carries the glide on: as steep as the last of final.
    const [a, b] = end.final.slice(-2);
    const glide = (a!.height - b!.height) / (b!.along - a!.along);
    expect((to!.y - from!.y) / (to!.x - from!.x) / drawing.exaggeration).toBeCloseTo(glide, 2);
  });

  it('says speeds, heights and ground covered', () => {
    const words = plain(drawing.description);
    const knots = (sample: { eas: number }) => Math.round((sample.eas * 3600) / 1852);
    expect(words).toContain(`begins at 10 ft, ${knots(end.roundOut[0]!)} kt`);
    expect(words).toContain(`The wheels touch at the spot at ${knots(end.holdOff.at(-1)!)} kt.`);
    const held = end.holdOff.at(-1)!.along - end.holdOff[0]!.along;
    expect(held).toBeCloseTo(plan.roundOut.holdOffDistance, 0);
    expect(words).toContain(`hold-off ${Math.round(held / 10) * 10} m`);
  });

  it('names what ground effect takes of the induced drag', () => {
    // FAA-H-8083-25, Aerodynamics of Flight, ground effect: 23.5 % at a quarter of the span, 47.6 % at a tenth.
    const low = { ...plan, aircraft: { ...aircraft, wing: { span: 10, aboveWheels: 1 } } };
    expect(dragSaved(low, 0)).toBeCloseTo(0.476, 3);
    expect(plain(draw(low).description)).toContain('48 % at touchdown');
    const share = (end.holdOff[0]!.height + aircraft.wing.aboveWheels) / aircraft.wing.span;
    expect(plain(drawing.description)).toContain(
      `takes ${Math.round(100 * inducedDragReduction(share))} % of the induced drag away`,
    );
  });

  it('never rises, and has no corner, between samples', () => {
    const path = pathOf(end.roundOut);
    expect(path).toHaveLength(8 * (end.roundOut.length - 1) + 1);
    for (const [index, { height }] of path.slice(1).entries()) {
      expect(height).toBeLessThanOrEqual(path[index]!.height + 1e-3);
    }
  });

  it('marks a touchdown away from the spot', () => {
    const { description, svg } = draw(movedBy(-140, plan));
    expect(plain(description)).toMatch(/The wheels touch 140 m short at \d+ kt\./);
    expect(plain(svgText(svg))).toContain('>Wheels touch, 140 m short<');
    expect(plain(svgText(draw(movedBy(60, plan)).svg))).toContain('>Wheels touch, 60 m long<');
  });

  it('needs a round-out, and room', () => {
    const track = plan.track.filter(({ phase }) => phase !== 'round-out');
    expect(() => draw({ ...plan, track })).toThrow(/without a round-out/);
    expect(() => draw(plan, { maxHeight: 30 })).toThrow(/no room/);
  });

  it.each([
    ['headwind', plan],
    ['calm', flown({ wind: { from: 0, speed: 0 } })],
    ['faster', flown({ aircraft: fasterAircraft })],
    ['short', movedBy(-140, plan)],
    ['far short', movedBy(-900, plan)],
    ['long', movedBy(60, plan)],
  ])('hides nothing under a label: %s', (_name, flight) => {
    for (const maxWidth of [128, 174]) {
      for (const units of [feet, metric]) {
        const hides = { lines: ['track', 'axes', 'stretches'], shapes: ['marks'] };
        expectNothingHidden(draw(flight, { maxWidth, units }), board, hides);
      }
    }
  });
});
