import { describe, expect, it } from 'vitest';
import { planForFaults } from '../../flight/faults/fault-plan.ts';
import { flyFault } from '../../flight/faults/fly-fault.ts';
import { planApproach } from '../../flight/plan/planner.ts';
import type { FaultChange, FaultFlown } from '../../flight/terms/fault.ts';
import type { PlanRequest } from '../../flight/terms/plan.ts';
import { createNodeBoard } from '../../press/printing/node-board.ts';
import { missText } from '../../words/keys/place-words.ts';
import type { Drawing } from '../kit/drawing.ts';
import { pointsOf, readSvg, svgText, textsOf } from '../kit/svg-reading.ts';
import { expectNothingHidden } from '../labels/nothing-hidden.ts';
import type { DrawnFault } from '../shared/drawn-fault.ts';
import { aircraft, airfieldOf, fasterAircraft, runwayOf } from '../shared/test-plans.ts';
import { roundOutDrawing } from './round-out.ts';
import { landingFault } from './round-out-faults.ts';
import { landingEnd } from './round-out-flight.ts';

const board = createNodeBoard();
const units = { height: 'ft', distance: 'm', speed: 'kt' } as const;
const plain = (text: string) => text.replaceAll('\u00a0', ' ');
const inGroup = (svg: Drawing['svg'], group: string) =>
  readSvg(svg).filter(({ within }) => within.includes(`o-${group}`));

const runway = runwayOf({ length: 640, spot: 150 });
const usual: PlanRequest = {
  aircraft,
  airfield: airfieldOf(runway),
  runway,
  approach: '180',
  power: 'idle',
  wind: { from: runway.heading, speed: 5 },
  detail: 'flight',
};

function flown(change: FaultChange, name: string, request = usual): DrawnFault & { flight: FaultFlown } {
  const flight = flyFault(planForFaults(request), change);
  if (!flight.flown) throw new Error(String(flight.reason));
  return { flight, track: flight.track, name, end: missText(flight.end.along, units) };
}

const changes = {
  high: { kind: 'round-out-height', amount: { factor: 2 } },
  late: { kind: 'round-out-height', amount: { factor: 0.5 } },
  balloon: { kind: 'round-out-load-factor', amount: { by: 0.2 } },
  float: { kind: 'round-out-speed', amount: { by: 5.144 } },
  bounce: { kind: 'touchdown-speed', amount: { factor: 1.15 } },
} as const satisfies Record<string, FaultChange>;

const plan = planApproach(usual);
const end = landingEnd(plan)!;
const draw = (faults: readonly DrawnFault[], options: object = {}, of = plan) =>
  roundOutDrawing(of, { units, board, id: 'o', maxWidth: 174, maxHeight: 100, faults, ...options });

/** Page x of a distance and y of a height, from the axes' own numbers. */
function axes(svg: Drawing['svg']) {
  const numbers = textsOf(svg, board).filter(({ within }) => within.includes('o-axes'));
  const middle = ({ box }: (typeof numbers)[number]) => ({
    x: box.x + box.width / 2,
    y: box.y + box.height / 2,
  });
  const spot = middle(numbers.find(({ text }) => text === 'spot')!).x;
  const far = numbers.find(({ text }) => /^\d+\u00a0m$/.test(text))!;
  const perMetre = (spot - middle(far).x) / Number.parseFloat(far.text);
  const [zero, one] = numbers.filter(({ text }) => text.endsWith('ft'));
  const perHeight = (middle(zero!).y - middle(one!).y) / (Number.parseFloat(one!.text) * 0.3048);
  return { perMetre, perHeight, spot, ground: middle(zero!).y };
}

function crosses(svg: Drawing['svg']) {
  const lines = inGroup(svg, 'faults').filter(({ name }) => name === 'line');
  return lines
    .filter((_, index) => index % 2 === 0)
    .map((line) => {
      const [from, to] = pointsOf(line);
      return { x: (from!.x + to!.x) / 2, y: (from!.y + to!.y) / 2 };
    });
}

describe('faults over the round-out', () => {
  it('ends each where it was flown to, at its height above the ground', () => {
    const faults = [
      flown(changes.high, 'High'),
      flown(changes.late, 'Late'),
      flown(changes.balloon, 'Balloon'),
      flown(changes.float, 'Float'),
    ];
    const { svg, exaggeration } = draw(faults);
    const { perMetre, perHeight, spot, ground } = axes(svg);
    expect(perHeight / perMetre).toBeCloseTo(exaggeration, 1);
    const found = crosses(svg);
    expect(found).toHaveLength(4);
    for (const [index, { flight }] of faults.entries()) {
      expect(Math.abs((found[index]!.x - spot) / perMetre - flight.end.along)).toBeLessThan(1);
      expect(Math.abs((ground - found[index]!.y) / perHeight - flight.end.height)).toBeLessThan(0.1);
    }
    expect(faults.filter(({ flight }) => flight.end.height > 1)).toHaveLength(2);
  });

  it('lets a balloon rise on the paper by what it rises in the air', () => {
    const balloon = flown(changes.balloon, 'Balloon');
    const { svg } = draw([balloon]);
    const { perHeight } = axes(svg);
    const ys = pointsOf(inGroup(svg, 'faults').find(({ name }) => name === 'path')!).map(({ y }) => y);
    const bottom = Math.max(...ys);
    const top = Math.min(...ys.slice(ys.indexOf(bottom)));
    // The lowest point may be a quarter of a second from the nearest sample: at 0.35 g up, 0.11 m below it.
    const under = (bottom - top) / perHeight - balloon.flight.landing.balloon!.rise;
    expect(under).toBeGreaterThan(-0.02);
    expect(under).toBeLessThan(0.11);
  });

  it('dashes the faults, draws the glide to the aim point finer, and says which is which', () => {
    const { svg } = draw([flown(changes.float, 'Float')]);
    const dashes = (group: string) =>
      inGroup(svg, group).flatMap(({ attributes }) => attributes['stroke-dasharray'] ?? []);
    expect(dashes('faults')).toEqual(['2.6 1.3']);
    expect(dashes('track')).toEqual(['0.8 0.8']);
    expect(plain(svgText(svg))).toContain(
      'Dotted: the glide carried on to the aim point. Dashed: a fault flown',
    );
  });

  it('makes room for a float of 150 m, and for where its round-out begins', () => {
    const long = flown(changes.float, 'Float');
    const off = 150 - long.flight.end.along;
    const track = long.track.map((sample) => ({ ...sample, along: sample.along + off }));
    const { svg, width } = draw([{ track, name: 'Float', end: '150 m long' }]);
    const { perMetre, spot } = axes(svg);
    const [cross] = crosses(svg);
    expect(Math.abs((cross!.x - spot) / perMetre - 150)).toBeLessThan(1);
    expect(cross!.x).toBeLessThan(width - 5);
    expect(plain(svgText(svg))).toMatch(/>\d+ m past</);
    const first = pointsOf(inGroup(svg, 'track').find(({ name }) => name === 'path')!)[0]!;
    expect((first.x - spot) / perMetre).toBeCloseTo(end.final[0]!.along, 0);
  });

  it('says of a speed gone 3 ft up that it is gone there, and not that the wheels are put down', () => {
    const drop = flown({ kind: 'round-out-height', amount: { by: 0.9 } }, 'High', {
      ...usual,
      wind: { from: 0, speed: 0 },
    });
    expect(drop.flight.end.height).toBeCloseTo(0.9, 1);
    const { svg, description } = draw([drop]);
    expect(plain(description)).toMatch(/Fault flown over it: High, \d+ m \w+, speed gone 3 ft up\./);
    expect(textsOf(svg, board).map(({ text }) => plain(text))).toContain('speed gone 3 ft up');
  });

  it('names each with where and how it ends, and for a reader who cannot see it', () => {
    const { svg, description } = draw([
      flown(changes.balloon, 'Balloon'),
      flown(changes.late, 'Late round-out'),
      flown(changes.bounce, 'Bounce'),
    ]);
    const words = plain(description);
    expect(words).toMatch(/Fault flown over it: Balloon, \d+ m short, speed gone \d+ ft up\./);
    expect(words).toMatch(/Fault flown over it: Late round-out, \d+ m short, wheels strike\./);
    expect(words).toMatch(/Fault flown over it: Bounce, \d+ m short, wing still carries\./);
    expect(words).toContain('how it falls from there is not in the model');
    const bold = textsOf(svg, board).filter((text) => text.bold && text.text.endsWith('short'));
    expect(bold.length).toBeGreaterThanOrEqual(3);
  });

  it('leaves out what ends far off, what has no round-out, and what takes the wheels along the plan', () => {
    const short = flown({ kind: 'base-turn', seconds: 8 }, 'Late');
    expect(short.flight.end.along).toBeLessThan(-160);
    expect(landingFault(end, short)).toBe('ends-too-far-off');
    expect(() => draw([short])).toThrow(RangeError);
    const track = plan.track.filter(({ phase }) => phase !== 'round-out' && phase !== 'hold-off');
    expect(landingFault(end, { track, name: 'None', end: '' })).toBe('no-round-out');
    expect(landingFault(end, { track: plan.track, name: 'Plan', end: 'at the spot' })).toBe('as-planned');
  });

  it('draws nothing more without them', () => {
    expect(svgText(draw([]).svg)).toBe(svgText(draw([], { faults: undefined }).svg));
    expect(svgText(draw([]).svg)).not.toContain('o-faults');
  });

  it.each([
    ['headwind', {}],
    ['calm', { wind: { from: 0, speed: 0 } }],
    ['crosswind', { wind: { from: (150 * Math.PI) / 180, speed: 5 } }],
    ['faster', { aircraft: fasterAircraft }],
  ])('hides nothing under a label: %s', (_name, other: Partial<PlanRequest>) => {
    const request = { ...usual, ...other };
    const faults = (['high', 'balloon', 'float', 'late'] as const).map((which) =>
      flown(changes[which], which, request),
    );
    for (const drawn of [faults.slice(0, 3), faults]) {
      const hides = { lines: ['track', 'axes', 'stretches', 'faults'], shapes: ['marks'] };
      expectNothingHidden(draw(drawn, {}, planApproach(request)), board, hides);
    }
  });
});
