import { describe, expect, it } from 'vitest';
import { planForFaults } from '../../flight/faults/fault-plan.ts';
import { flyFault } from '../../flight/faults/fly-fault.ts';
import { planApproach } from '../../flight/plan/planner.ts';
import type { FaultChange } from '../../flight/terms/fault.ts';
import type { Plan, PlanRequest } from '../../flight/terms/plan.ts';
import { createNodeBoard } from '../../press/printing/node-board.ts';
import { missText } from '../../words/keys/place-words.ts';
import type { Drawing } from '../kit/drawing.ts';
import { contains } from '../kit/geometry.ts';
import { pointsOf, readSvg, svgText, textsOf } from '../kit/svg-reading.ts';
import { expectNothingHidden } from '../labels/nothing-hidden.ts';
import type { DrawnFault } from '../shared/drawn-fault.ts';
import { aircraft, airfieldOf, drawnPattern, fasterAircraft, runwayOf } from '../shared/test-plans.ts';
import { profileDrawing } from './profile.ts';
import { faultPlaces, isInProfile } from './profile-fault-places.ts';

const board = createNodeBoard();
const units = { height: 'ft', distance: 'm', speed: 'kt' } as const;
const plain = (text: string) => text.replaceAll('\u00a0', ' ');
const shape = { circuit: 'left', spacing: 400, pastAbeam: 220, radius: 90, height: 304.8 } as const;
const draw = (plan: Plan, faults: readonly DrawnFault[], options: object = {}) =>
  profileDrawing(plan, { units, board, id: 'q', maxWidth: 170, maxHeight: 100, faults, ...options });
const inGroup = (svg: Drawing['svg'], group: string) =>
  readSvg(svg).filter(({ within }) => within.includes(`q-${group}`));

/** The same flight, all of it farther along and higher. */
function movedBy(along: number, plan: Plan, name = 'Moved', up = 0): DrawnFault {
  const track = plan.track.map((sample) => ({
    ...sample,
    along: sample.along + along,
    height: sample.height + up,
  }));
  return { track, name, end: missText(along, units) };
}

/** Page x of a distance to go, from the axis' own numbers. */
function xOf(svg: Drawing['svg']) {
  const numbers = textsOf(svg, board)
    .filter(({ within, text }) => within.includes('q-axes') && text.endsWith('\u00a0m'))
    .map(({ text, box }) => ({ metres: Number(text.replace(/[^\d]/g, '')), x: box.x + box.width / 2 }));
  const zero = numbers.find(({ metres }) => metres === 0)!;
  const far = numbers.reduce((a, b) => (b.metres > a.metres ? b : a));
  const perMetre = (zero.x - far.x) / far.metres;
  return { perMetre, at: (toGo: number) => zero.x - toGo * perMetre };
}

/** Page x of the middle of each cross: its two strokes are the lines of the faults' group. */
function crosses(svg: Drawing['svg']): number[] {
  const lines = inGroup(svg, 'faults').filter(({ name }) => name === 'line');
  return lines
    .filter((_, index) => index % 2 === 0)
    .map((line) => {
      const [from, to] = pointsOf(line);
      return (from!.x + to!.x) / 2;
    });
}

const dashed = (svg: Drawing['svg']) =>
  inGroup(svg, 'faults').filter(({ attributes }) => attributes['stroke-dasharray'] !== undefined);

function flownFaults(request: PlanRequest, changes: readonly FaultChange[]) {
  const base = planForFaults(request);
  return changes.map((change, index) => {
    const flight = flyFault(base, change);
    if (!flight.flown) throw new Error(String(flight.reason));
    return {
      flight,
      fault: { track: flight.track, name: `Fault ${index}`, end: missText(flight.end.along, units) },
    };
  });
}

function requestOf(changes: Partial<PlanRequest> = {}): PlanRequest {
  const runway = runwayOf({ length: 640, spot: 150 });
  return {
    aircraft,
    airfield: airfieldOf(runway),
    runway,
    approach: '180',
    power: 'idle',
    wind: { from: runway.heading, speed: 5 },
    detail: 'flight',
    ...changes,
  };
}

const late: FaultChange = { kind: 'base-turn', seconds: 6 };
const early: FaultChange = { kind: 'base-turn', seconds: -6 };

describe('faults over the profile', () => {
  const plan = drawnPattern(shape);

  it('ends each as far short of the spot or past it as it was flown to', () => {
    for (const changes of [{}, { aircraft: fasterAircraft }, { wind: { from: 0, speed: 0 } }]) {
      const request = requestOf(changes);
      const flown = flownFaults(request, [late, early]);
      const { svg } = draw(
        planApproach(request),
        flown.map(({ fault }) => fault),
      );
      const { at, perMetre } = xOf(svg);
      const found = crosses(svg);
      expect(found).toHaveLength(2);
      for (const [index, { flight }] of flown.entries()) {
        expect(Math.abs(flight.end.along)).toBeGreaterThan(100);
        expect(Math.abs(found[index]! - at(-flight.end.along)) / perMetre).toBeLessThan(12);
      }
    }
  });

  it('draws each sample by what is left of its own way, and from its end to the spot', () => {
    const short = movedBy(-250, plan);
    const places = faultPlaces(plan, short);
    // Straight legs and arcs: the path is the plan's own, flown at 20 m/s, and 250 m more.
    for (const [index, sample] of plan.track.entries()) {
      const toGo = (plan.touchdown.time - sample.time) * 20 + 250;
      expect(Math.abs(places[index]!.toGo - toGo)).toBeLessThan(12);
    }
    expect(places.at(-1)!.toGo).toBeCloseTo(250, 6);
    expect(faultPlaces(plan, movedBy(250, plan)).at(-1)!.toGo).toBeCloseTo(-250, 6);
  });

  it('dashes the faults, each its own way, and not the plan', () => {
    const { svg } = draw(
      plan,
      [-250, -150, 150, 250].map((along) => movedBy(along, plan)),
    );
    const dashes = dashed(svg).map(({ attributes }) => attributes['stroke-dasharray']);
    expect(dashes).toHaveLength(4);
    expect(new Set(dashes).size).toBe(4);
    const track = inGroup(svg, 'track').filter(({ name }) => name === 'path');
    expect(track.every(({ attributes }) => attributes['stroke-dasharray'] === undefined)).toBe(true);
  });

  it('reaches past the spot, as far back and as high as they were flown', () => {
    for (const fault of [movedBy(420, plan), movedBy(-420, plan), movedBy(0, plan, 'High', 200)]) {
      const { svg, width, height } = draw(plan, [fault]);
      const [line] = dashed(svg);
      for (const point of pointsOf(line!)) {
        expect(contains({ x: 0, y: 0, width, height }, { ...point, width: 0, height: 0 })).toBe(true);
      }
      const ground = pointsOf(
        inGroup(svg, 'axes').find(({ attributes }) => attributes['stroke-width'] === '0.35')!,
      );
      expect(crosses(svg)[0]!).toBeLessThanOrEqual(ground[1]!.x + 0.01);
    }
    expect(plain(svgText(draw(plan, [movedBy(420, plan)]).svg))).toContain('>200 m past<');
  });

  it('names each with where it ends, in bold, and for a reader who cannot see it', () => {
    const { svg, description } = draw(plan, [movedBy(-250, plan, 'Base turn late')]);
    const texts = textsOf(svg, board).map(({ text, bold }) => ({ text: plain(text), bold }));
    expect(texts).toContainEqual({ text: 'Base turn late', bold: false });
    expect(texts).toContainEqual({ text: '250 m short', bold: true });
    expect(plain(description)).toContain('Fault flown over it: Base turn late, 250 m short.');
    const note = textsOf(svg, board).filter(({ within }) => within.includes('q-phases'));
    expect(note.map(({ text }) => text).join(' ')).toContain(
      'Dashed: a fault flown, by the distance that it still',
    );
  });

  it('of a spiral begins below the circles', () => {
    const spiral = drawnPattern({ ...shape, circles: 2, height: 900 });
    const places = faultPlaces(spiral, movedBy(-100, spiral));
    expect(places.length).toBeLessThan(spiral.track.length);
    expect(places.length).toBe(
      spiral.track.length - 1 - spiral.track.findLastIndex(({ phase }) => phase === 'circle'),
    );
  });

  it('leaves out what of a spiral never leaves the circles', () => {
    const spiral = drawnPattern({ ...shape, circles: 2, height: 900 });
    const track = spiral.track.filter(({ phase }) => phase === 'circle');
    const fault = { track, name: 'Lost', end: '' };
    expect(isInProfile(spiral, fault)).toBe(false);
    expect(isInProfile(spiral, movedBy(-100, spiral))).toBe(true);
    expect(() => draw(spiral, [fault])).toThrow(RangeError);
  });

  it('draws nothing more without them', () => {
    expect(svgText(draw(plan, []).svg)).toBe(svgText(draw(plan, [], { faults: undefined }).svg));
    expect(svgText(draw(plan, []).svg)).not.toContain('q-faults');
  });

  it.each([
    ['headwind', {}],
    ['calm', { wind: { from: 0, speed: 0 } }],
    ['crosswind', { wind: { from: (150 * Math.PI) / 180, speed: 5 } }],
    ['faster', { aircraft: fasterAircraft }],
    ['faster, calm', { aircraft: fasterAircraft, wind: { from: 0, speed: 0 } }],
  ])('hides nothing under a label: %s', (_name, changes: Partial<PlanRequest>) => {
    const request = { ...requestOf(changes), detail: 'whole' } as const;
    const planned = planApproach(request);
    const changed: FaultChange[] = [
      late,
      early,
      { kind: 'spacing', amount: { factor: 1.4 } },
      { kind: 'throttle', seconds: 5 },
    ];
    const faults = flownFaults(request, changed).map(({ fault }) => fault);
    for (const drawn of [faults.slice(0, 2), faults]) {
      for (const maxWidth of [128, 174]) {
        const hides = {
          lines: ['track', 'axes', 'heights', 'phases', 'faults'],
          shapes: ['marks', 'heights'],
        };
        expectNothingHidden(draw(planned, drawn, { maxWidth }), board, hides);
      }
    }
  });
});
