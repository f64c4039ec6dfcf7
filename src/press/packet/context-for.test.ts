import { fileURLToPath } from 'node:url';
import { toHtml } from 'hast-util-to-html';
import { describe, expect, it } from 'vitest';
import { planApproach } from '../../flight/plan/planner.ts';
import { readSchool } from '../../school/read.ts';
import { parseQuantity } from '../../units/quantity.ts';
import { parseWind } from '../../units/wind-text.ts';
import { contextFor } from './context-for.ts';
import { pageCautions } from './page-cautions.ts';
import { NotToBeFlownError, ScenarioError } from './scenario.ts';

const read = await readSchool(fileURLToPath(new URL('../../../lessons', import.meta.url)));
const school = read.value!;
const osier = school.fleet.get('osier-15')!;
const fallowReach = school.airfields.get('fallow-reach')!;
const runway = fallowReach.runways.find(({ name }) => name === '06')!;

describe('the context for a setting', () => {
  it('is the flight that the planner flies for the same request', () => {
    const wind = parseWind('060/8kt');
    const height = parseQuantity('1200 ft', 'length');
    const asked = { aircraft: 'osier-15', airfield: 'fallow-reach', runway: '06', approach: '180' } as const;
    const { plan, request } = contextFor({ school, ...asked, wind, height, power: 'idle' });
    const own = planApproach({
      aircraft: osier,
      airfield: fallowReach,
      runway,
      approach: '180',
      power: 'idle',
      wind,
      height,
      minimums: school.minimums,
    });
    expect(plan.keys).toEqual(own.keys);
    expect(plan.flown.height).toBeCloseTo(365.76, 2);
    expect(request).toMatchObject({ aircraft: osier, airfield: fallowReach, runway, wind, height });
  });

  it("takes what is left out from the school's defaults, as a lesson does", () => {
    const { request, units, edition } = contextFor({ school });
    expect(request.aircraft).toBe(school.fleet.get(school.defaults.aircraft));
    expect(request.runway.name).toBe(school.defaults.runway);
    expect(request.wind).toEqual(school.defaults.wind);
    expect(request.approach).toBe(school.defaults.approach);
    expect([units, edition]).toEqual([school.units, 'student']);
    // The paper's width without its margins.
    expect(contextFor({ school, paper: 'A4' }).drawingRoom.width).toBe(174);
    const onLetter = { ...school, paper: 'Letter' } as const;
    expect(contextFor({ school: onLetter }).drawingRoom.width).toBeCloseTo(179.9);
    expect(contextFor({ school, paper: 'Letter', edition: 'instructor' })).toMatchObject({
      edition: 'instructor',
      drawingRoom: { width: expect.closeTo(179.9) },
    });
  });

  it('says which field is wrong, and what would be right', () => {
    const wrong = (changes: object) => {
      try {
        contextFor({ school, ...changes });
      } catch (error) {
        if (error instanceof ScenarioError) return [error.key, error.message];
        throw error;
      }
      throw new Error('Nothing was wrong');
    };
    expect(wrong({ aircraft: 'osier-51' })).toEqual(['aircraft', expect.stringContaining('`osier-15`')]);
    expect(wrong({ runway: '42' })).toEqual(['runway', expect.stringContaining('`24`')]);
    expect(wrong({ bank: 1.5 })).toEqual(['bank', expect.stringContaining(osier.name)]);
  });

  it('gives no page of a plan that is not to be flown, unless it is shown on purpose', () => {
    const crosswind = { school, aircraft: 'osier-15', runway: '24', wind: parseWind('330/14kt') };
    expect(() => contextFor(crosswind)).toThrow(NotToBeFlownError);
    const context = contextFor({ ...crosswind, shows: 'not-to-be-flown' });
    expect(context.plan.grade).toBe('not-to-be-flown');
    expect(toHtml(pageCautions(context)[0]!)).toMatch(/^<section class="grade-band not-to-be-flown"/);
  });
});

describe('the cautions of a page', () => {
  it("are the standing ones, the airfield's and the school's", () => {
    const html = pageCautions(contextFor({ school }))
      .map((node) => toHtml(node))
      .join('');
    expect(html).toContain('It does not replace instruction');
    expect(fallowReach.rules.length + school.cautions.length).toBeGreaterThan(1);
    for (const words of [...fallowReach.rules, ...school.cautions]) expect(html).toContain(words);
  });
});
