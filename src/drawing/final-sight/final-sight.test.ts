import { describe, expect, it } from 'vitest';
import { planApproach } from '../../flight/plan/planner.ts';
import type { Plan, PlanRequest } from '../../flight/terms/plan.ts';
import { createNodeBoard } from '../../press/printing/node-board.ts';
import type { Drawing } from '../kit/drawing.ts';
import type { Point } from '../kit/geometry.ts';
import { pointsOf, readSvg, svgText } from '../kit/svg-reading.ts';
import { expectNothingHidden } from '../labels/nothing-hidden.ts';
import { aircraft, airfieldOf, fasterAircraft, runwayOf } from '../shared/test-plans.ts';
import { finalSightDrawing } from './final-sight.ts';
import { eyeOnFinal, type Sight, sightsOf } from './final-sight-view.ts';

const board = createNodeBoard();
const feet = { height: 'ft', distance: 'm', speed: 'kt' } as const;
const plain = (text: string) => text.replaceAll('\u00a0', ' ');

function flown(changes: Partial<PlanRequest> = {}): Plan {
  const runway = runwayOf({ length: 640, spot: 150 });
  return planApproach({
    aircraft,
    airfield: airfieldOf(runway),
    runway,
    approach: '180',
    power: 'idle',
    wind: { from: 0, speed: 0 },
    detail: 'flight',
    ...changes,
  });
}

const draw = (plan: Plan, options: object = {}) =>
  finalSightDrawing(plan, { units: feet, board, id: 's', maxWidth: 174, maxHeight: 140, ...options });

/** Read from the drawing: the horizon, the runway's outline, the spot's stroke and the aim point, mm. */
function picture(svg: Drawing['svg'], { id }: Sight) {
  const view = readSvg(svg).filter(({ within }) => within.includes(`s-view-${id}`));
  const lines = view.filter(({ name }) => name === 'line').map(pointsOf);
  const outline = pointsOf(view.filter(({ name }) => name === 'path').at(-1)!);
  const aim = readSvg(svg).find(
    ({ name, within }) => name === 'circle' && within.includes(`s-marks-${id}`),
  )!.attributes;
  const middle = (points: readonly Point[]) => (points[0]!.y + points[1]!.y) / 2;
  return {
    horizon: middle(lines[0]!),
    spot: middle(lines[2]!),
    aim: Number(aim.cy),
    near: { y: outline[0]!.y, width: outline[3]!.x - outline[0]!.x },
    far: { y: outline[1]!.y, width: outline[2]!.x - outline[1]!.x },
  };
}

describe('the runway as seen on final', () => {
  const plan = flown();
  const drawing = draw(plan);
  const { runway } = plan;
  const aim = plan.keys.find(({ id }) => id === 'aim-point')!.along;

  it.each(drawing.sights.map((sight) => [sight.id, sight] as const))(
    '%s: draws the aim point at its depression angle below the horizon',
    (_id, sight) => {
      const { horizon, aim: drawn } = picture(drawing.svg, sight);
      const angle = Math.atan2(drawn - horizon, drawing.focus);
      expect(angle).toBeCloseTo(Math.atan2(sight.eye.height, aim - sight.eye.along), 4);
      expect(plain(svgText(drawing.svg))).toContain(`>${Math.round((angle * 180) / Math.PI)}°<`);
    },
  );

  it.each(drawing.sights.map((sight) => [sight.id, sight] as const))(
    '%s: draws the runway as wide for its length as it looks from there',
    (_id, sight) => {
      const { near, far } = picture(drawing.svg, sight);
      const toNear = -runway.spot - sight.eye.along;
      const toFar = toNear + runway.length;
      // Similar triangles: widths w/d, depths h/d below the horizon.
      const ratio = near.width / (near.y - far.y);
      expect(ratio).toBeCloseTo(runway.width / toNear / (sight.eye.height * (1 / toNear - 1 / toFar)), 2);
      expect(near.width / far.width).toBeCloseTo(toFar / toNear, 1);
    },
  );

  it('keeps the cross-ratio of four places on the centreline, as every central projection does', () => {
    // Pappus of Alexandria, Collection VII, prop. 129.
    const cross = (a: number, b: number, c: number, d: number) => ((c - a) * (d - b)) / ((c - b) * (d - a));
    const real = cross(-runway.spot, aim, 0, runway.length - runway.spot);
    for (const sight of drawing.sights) {
      const { near, aim: aimed, spot, far } = picture(drawing.svg, sight);
      expect(cross(near.y, aimed, spot, far.y)).toBeCloseTo(real, 1);
    }
  });

  it('takes the three views at one distance, 30 % under and over the path, and says where each ends', () => {
    const [low, right, high] = drawing.sights;
    expect(new Set(drawing.sights.map(({ eye }) => eye.along)).size).toBe(1);
    expect(low!.eye.height / right!.eye.height).toBeCloseTo(0.7);
    expect(high!.eye.height / right!.eye.height).toBeCloseTo(1.3);
    // The same angle of glide from a lower eye meets the ground in proportion to the heights.
    const reached = low!.eye.along + low!.eye.height / Math.tan(right!.depression);
    expect(reached - aim).toBeCloseTo(low!.miss);
    const short = Math.round((aim - reached) / 10) * 10;
    expect(plain(drawing.description)).toContain(
      `The aim point creeps up: the glide ends ${short} m short of it.`,
    );
    expect(plain(drawing.description)).toContain(
      `The aim point slides down: the glide ends ${short} m past it.`,
    );
  });

  it('looks from 300 ft where final is flown through it, else from half-way along final', () => {
    const high = flown({ wind: { from: runway.heading, speed: 5 } });
    expect(high.keys.find(({ id }) => id === 'final')!.height).toBeGreaterThan(91.44);
    expect(eyeOnFinal(high)!.height).toBeCloseTo(91.44, 6);
    const low = flown({ approach: '90', options: { '90': { baseDistance: 300 } } });
    const final = low.keys.find(({ id }) => id === 'final')!;
    expect(final.height).toBeLessThan(91.44);
    expect(eyeOnFinal(low)!.height).toBeLessThan(0.65 * final.height);
    expect(plain(draw(low).description)).toContain('half-way along final, which begins below 300 ft');
  });

  it('cuts a runway off where it lies too far below the eye, and says so', () => {
    const long = runwayOf({ length: 1800, spot: 900 });
    const deep = flown({ runway: long, airfield: airfieldOf(long) });
    const cut = draw(deep);
    expect(plain(svgText(cut.svg))).toContain('goes on below');
    expect(svgText(drawing.svg)).not.toContain('goes on below');
    for (const sight of cut.sights) {
      const { near, horizon } = picture(cut.svg, sight);
      expect((near.y - horizon) / cut.focus).toBeLessThan(0.61);
    }
  });

  it('leads to the aim point across the runway, not down its centreline', () => {
    const headwind = { wind: { from: (210 * Math.PI) / 180, speed: 6 } };
    for (const flight of [plan, flown(headwind), flown({ aircraft: fasterAircraft, ...headwind })]) {
      for (const id of ['low', 'right', 'high']) {
        const { svg } = draw(flight);
        const leaders = readSvg(svg).filter(
          ({ name, within }) => name === 'line' && within.includes(`s-labels-${id}`),
        );
        for (const [from, to] of leaders.map(pointsOf))
          expect(Math.abs(to!.x - from!.x)).toBeGreaterThan(Math.abs(to!.y - from!.y) / 2);
      }
    }
  });

  it('has no view without a final leg, and says so where there is no room', () => {
    expect(sightsOf({ ...plan, keys: [] })).toBeUndefined();
    expect(() => draw({ ...plan, track: [] })).toThrow(/without a final leg/);
    expect(() => draw(plan, { maxHeight: 30 })).toThrow(/no room/);
  });

  it.each([
    ['calm', plan],
    ['headwind', flown({ wind: { from: runway.heading, speed: 6 } })],
    ['faster', flown({ aircraft: fasterAircraft })],
    ['90', flown({ approach: '90' })],
  ])('hides nothing under a label: %s', (_name, flight) => {
    const groups = ['low', 'right', 'high'];
    expectNothingHidden(draw(flight), board, {
      lines: groups.flatMap((id) => [`view-${id}`, `marks-${id}`]),
      shapes: groups.map((id) => `marks-${id}`),
    });
  });
});
