import { describe, expect, it } from 'vitest';
import { windAt } from '../../flight/air/wind.ts';
import { reachFrom } from '../../flight/flying/reach.ts';
import { planApproach, workOut } from '../../flight/plan/planner.ts';
import type { Field } from '../../flight/questions/landing-places.ts';
import type { PlanRequest } from '../../flight/terms/plan.ts';
import { createNodeBoard } from '../../press/printing/node-board.ts';
import type { PageUnits } from '../../words/figures/page-units.ts';
import { keyNames } from '../../words/keys/key-names.ts';
import type { Drawing } from '../kit/drawing.ts';
import { distance, fromSegment, segmentMeetsBox, segmentsOf } from '../kit/geometry.ts';
import { pointsOf, readSvg, svgText, textsOf } from '../kit/svg-reading.ts';
import { expectNothingHidden } from '../labels/nothing-hidden.ts';
import { aircraft, airfieldOf, fasterAircraft, runwayOf } from '../shared/test-plans.ts';
import { reachDrawing } from './reach.ts';
import { distanceToRing, isInside, reachField } from './reach-ground.ts';
import type { ReachScene } from './reach-scene.ts';

const board = createNodeBoard();
const feet: PageUnits = { height: 'ft', distance: 'm', speed: 'kt' };
const plain = (text: string) => text.replaceAll('\u00a0', ' ');
const degrees = Math.PI / 180;

const fields: readonly Field[] = [
  field('near pasture', { along: -600, across: -700, heading: 200 * degrees }),
  field('far stubble', { along: 9000, across: 0, heading: 237 * degrees }),
];

function field(name: string, place: Pick<Field, 'along' | 'across' | 'heading'>): Field {
  return { name, ...place, length: 300, width: 90, surface: 'grass', obstacles: [] };
}

function sceneOf(changes: Partial<PlanRequest> = {}): ReachScene {
  const runway = runwayOf({ length: 640, spot: 150 });
  const request: PlanRequest = {
    aircraft,
    airfield: airfieldOf(runway),
    runway,
    approach: '180',
    power: 'idle',
    wind: { from: 0, speed: 0 },
    detail: 'flight',
    ...changes,
  };
  const plan = planApproach(request);
  const key = plan.keys.find(({ id }) => id === 'downwind-key')!;
  const { conditions } = workOut(request).resolved;
  const from = { along: key.along, across: key.across, height: key.height, heading: Math.PI };
  const outline = reachFrom(from, plan.flown.bank, conditions);
  return {
    plan,
    from,
    label: keyNames[key.id],
    bank: plan.flown.bank,
    aloft: windAt(conditions.wind, from.height, runway.heading),
    outline,
    fields: fields.map((each) => reachField(each, runway.heading, outline)),
  };
}

const draw = (scene: ReachScene, options: object = {}) =>
  reachDrawing(scene, { units: feet, board, id: 'r', maxWidth: 174, maxHeight: 200, ...options });
const inGroup = (svg: Drawing['svg'], group: string) =>
  readSvg(svg).filter(({ within }) => within.includes(`r-${group}`));

describe('the ground within reach', () => {
  const calm = sceneOf();
  const windy = sceneOf({ wind: { from: 270 * degrees, speed: 6 } });

  it('lies straight ahead in a calm at the height times the glide ratio', () => {
    // The glide ratio is the distance forward over the height lost (FAA-H-8083-3, chapter 3, glides).
    const ahead = distanceToRing(calm.from, calm.from.heading, calm.outline)!;
    expect(ahead / calm.from.height).toBeCloseTo(6.2, 1);
    expect(plain(svgText(draw(calm).svg))).toContain(
      `>${Math.floor(ahead / 10)
        .toString()
        .replace(/^(\d)/, '$1,')}0 m ahead<`,
    );
  });

  it('speaks of lining up into the wind only where there is one', () => {
    const texts = (scene: ReachScene) => plain(draw(scene).description);
    expect(texts(windy)).toContain('or for lining up into the wind.');
    expect(texts(calm)).toContain('or for lining up.');
    expect(texts(calm)).not.toContain('into the wind');
  });

  it('is drawn at the scale it states', () => {
    const { svg, scale } = draw(windy);
    const drawn = pointsOf(inGroup(svg, 'within').find(({ name }) => name === 'path')!);
    // Drawn smooth: three points between one point of the outline and the next.
    expect(drawn).toHaveLength(4 * (windy.outline.length - 1) + 1);
    const [a, b] = [windy.outline[3]!, windy.outline[40]!];
    const metres = Math.hypot(a.along - b.along, a.across - b.across);
    expect(distance(drawn[12]!, drawn[160]!)).toBeCloseTo((metres * 1000) / scale, 1);
    const bar = readSvg(svg).find(({ attributes }) => attributes.class === 'scale-bar')!.attributes;
    expect(Number(bar['data-length-mm'])).toBeCloseTo((Number(bar['data-length-m']) * 1000) / scale, 2);
  });

  it('goes less far up wind than down wind, and says both figures, rounded down', () => {
    const { description } = draw(windy);
    const upWind = windy.aloft.from - windy.plan.runway.heading;
    const [up, down] = [upWind, upWind + Math.PI].map(
      (way) => distanceToRing(windy.from, way, windy.outline)!,
    );
    expect(up!).toBeLessThan(down!);
    const figures = [...plain(description).matchAll(/it gets ([\d,]+) m (up|down) wind/g)];
    const read = figures.map(([, text]) => Number(text!.replace(',', '')));
    for (const [index, metres] of [up!, down!].entries()) {
      expect(read[index]!).toBeLessThanOrEqual(metres);
      expect(metres - read[index]!).toBeLessThan(10);
    }
  });

  it('draws a field as large as it is where it is on the page, and names all of them in the text', () => {
    const { svg, scale, description } = draw(calm);
    const drawn = inGroup(svg, 'ground').filter(({ attributes }) => attributes.fill === '#ffffff');
    const corners = pointsOf(drawn.find(({ name }) => name === 'path')!);
    expect(distance(corners[0]!, corners[1]!)).toBeCloseTo((90 * 1000) / scale, 1);
    expect(distance(corners[1]!, corners[2]!)).toBeCloseTo((300 * 1000) / scale, 1);
    expect(drawn.filter(({ name }) => name === 'path')).toHaveLength(1);
    expect(plain(description)).toMatch(/Field near pasture: within reach, [\d,]+ m away\./);
    expect(plain(description)).toMatch(/Field far stubble: out of reach, [\d,]+ m away\./);
    expect(plain(description)).toContain('The spot of runway 24 is within reach');
    expect(svgText(svg)).not.toContain('>far stubble<');
  });

  it('leads from a name to the edge of its field', () => {
    let led = 0;
    for (const along of [-400, -700, -1000, -1300]) {
      for (const scene of [calm, windy]) {
        const near = [
          field('long strip', { along, across: -250, heading: 200 * degrees }),
          field('next strip', { along, across: -380, heading: 200 * degrees }),
        ];
        const reached = near.map((each) => reachField(each, scene.plan.runway.heading, scene.outline));
        const { svg } = draw({ ...scene, fields: reached }, { maxWidth: 110 });
        const edges = inGroup(svg, 'ground')
          .filter(({ name, attributes }) => name === 'path' && attributes.fill === '#ffffff')
          .map((path) => pointsOf(path))
          .map((corners) => segmentsOf([...corners, corners[0]!]));
        const names = textsOf(svg, board).filter(({ text }) => text.endsWith(' strip'));
        for (const line of inGroup(svg, 'labels').filter(({ name }) => name === 'line')) {
          const [from, to] = pointsOf(line);
          if (!names.some(({ box }) => segmentMeetsBox({ from: to!, to: to! }, box, 4))) continue;
          led += 1;
          expect(Math.min(...edges.flat().map((edge) => fromSegment(from!, edge)))).toBeLessThan(0.01);
        }
      }
    }
    expect(led).toBeGreaterThan(1);
  });

  it('says of a field that the edge runs through that it is reached in part', () => {
    const ahead = distanceToRing(calm.from, Math.PI, calm.outline)!;
    const edge = field('edge', {
      along: calm.from.along - ahead,
      across: calm.from.across,
      heading: 57 * degrees,
    });
    expect(reachField(edge, calm.plan.runway.heading, calm.outline).reached).toBe('partly');
  });

  it('shows wind and north as the pattern does', () => {
    const { svg } = draw(windy);
    expect(plain(svgText(svg))).toContain('Wind 270° 12 kt');
    expect(plain(svgText(svg))).toMatch(/at 1,000 ft: 270° 19 kt/);
    expect(plain(svgText(draw(calm).svg))).toContain('Wind calm');
  });

  it('says so where there is no room', () => {
    expect(() => draw(calm, { maxHeight: 20 })).toThrow(/no room/);
  });

  it.each([
    ['calm', calm],
    ['windy', windy],
    ['faster', sceneOf({ aircraft: fasterAircraft, wind: { from: 200 * degrees, speed: 6 } })],
    ['right-hand', sceneOf({ circuit: 'right', wind: { from: 90 * degrees, speed: 4 } })],
  ])('hides nothing under a label: %s', (_name, scene) => {
    for (const maxWidth of [110, 174]) {
      expectNothingHidden(draw(scene, { maxWidth }), board, {
        lines: ['ground', 'dimensions'],
        shapes: ['marks'],
      });
    }
  });
});

describe('a place and a ring', () => {
  const square = [
    { along: 0, across: 0 },
    { along: 100, across: 0 },
    { along: 100, across: 100 },
    { along: 0, across: 100 },
    { along: 0, across: 0 },
  ];

  it('tells inside from outside', () => {
    expect(isInside({ along: 50, across: 50 }, square)).toBe(true);
    expect(isInside({ along: 150, across: 50 }, square)).toBe(false);
    expect(isInside({ along: -1, across: 50 }, square)).toBe(false);
  });

  it('measures to the ring in a direction', () => {
    expect(distanceToRing({ along: 20, across: 50 }, 0, square)).toBeCloseTo(80);
    expect(distanceToRing({ along: 20, across: 50 }, Math.PI, square)).toBeCloseTo(20);
    expect(distanceToRing({ along: 20, across: 50 }, Math.PI / 2, square)).toBeCloseTo(50);
    expect(distanceToRing({ along: 200, across: 50 }, 0, square)).toBeUndefined();
  });
});
