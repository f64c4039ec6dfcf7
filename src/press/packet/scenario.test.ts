import { fileURLToPath } from 'node:url';
import { describe, expect, it } from 'vitest';
import type { FrontMatter } from '../../lesson/front-matter.ts';
import { readSchool } from '../../school/read.ts';
import { aircraftOf, type Choices, ScenarioError, scenarioOf } from './scenario.ts';

const { value } = await readSchool(fileURLToPath(new URL('../../../lessons', import.meta.url)));
const school = {
  ...value!,
  handbook: { title: 'T', chapters: [], aircraft: ['osier-15', 'withy-80'] },
};
const lesson = (changes: Partial<FrontMatter> = {}): FrontMatter => ({
  title: 'T',
  approach: '180',
  ...changes,
});

describe('the aircraft that a lesson is printed for', () => {
  it("are the handbook's of its classes", () => {
    expect(aircraftOf(school, lesson())).toEqual(['osier-15', 'withy-80']);
    expect(aircraftOf(school, lesson({ class: ['weight-shift'] }))).toEqual(['osier-15']);
    expect(aircraftOf(school, lesson({ class: ['weight-shift', 'three-axis'] }))).toEqual([
      'osier-15',
      'withy-80',
    ]);
  });

  it('are others of the fleet where the handbook has none of its classes', () => {
    const trikesOnly = { ...school, handbook: { ...school.handbook, aircraft: ['osier-15'] } };
    expect(aircraftOf(trikesOnly, lesson({ class: ['three-axis'] }))).toEqual(['withy-80']);
  });

  it('cannot be none', () => {
    expect(() => aircraftOf(school, lesson({ class: ['glider'] }))).toThrow(
      new ScenarioError(
        'class',
        "No aircraft of the school is glider: add one to its fleet, or change the lesson's `class`",
      ),
    );
  });
});

describe("the school's own limits", () => {
  it('go into what is computed, heights and tailwind alike', () => {
    const strict = { ...school, limits: { tailwind: 1.5 } };
    const { minimums } = scenarioOf(strict, lesson(), 'osier-15', {}).request;
    expect(minimums).toEqual({ ...school.minimums, mostTailwind: 1.5 });
    expect(scenarioOf(school, lesson(), 'osier-15', {}).request.minimums?.mostTailwind).toBeUndefined();
  });
});

describe('the gust of a scenario', () => {
  const gusty = { ...school, defaults: { ...school.defaults, gust: 9 } };
  const wind = { from: 4, speed: 5 };
  const gustOf = (changes: Partial<FrontMatter>, choices: Choices = {}) =>
    scenarioOf(gusty, lesson(changes), 'osier-15', choices).request.gust;

  it("is the school's in the school's own wind alone: a lesson's wind, or one asked for, has none of it", () => {
    expect(gustOf({})).toBe(9);
    expect(gustOf({ wind })).toBeUndefined();
    expect(gustOf({}, { wind })).toBeUndefined();
    expect(gustOf({ wind }, { wind })).toBeUndefined();
  });

  it('goes before all where it is asked for', () => {
    expect(gustOf({}, { gust: 8 })).toBe(8);
    expect(gustOf({ wind }, { gust: 8 })).toBe(8);
  });
});

describe('an aircraft of another class', () => {
  it('is refused, with those that would be right', () => {
    expect(() => scenarioOf(school, lesson({ class: ['three-axis'] }), 'osier-15', {})).toThrow(
      'Osier 15 is weight-shift, and this lesson is for three-axis aircraft: it can be built for `withy-80`',
    );
    expect(() => scenarioOf(school, lesson({ class: ['glider'] }), 'osier-15', {})).toThrow(
      'the school has none',
    );
  });

  it('is shown where the lesson names it', () => {
    const keyOf = (changes: Partial<FrontMatter>) => {
      try {
        scenarioOf(school, lesson({ class: ['three-axis'], ...changes }), 'osier-15', {});
      } catch (error) {
        return (error as ScenarioError).key;
      }
      return undefined;
    };
    expect(keyOf({ aircraft: 'osier-15' })).toBe('aircraft');
    expect(keyOf({})).toBe('class');
  });
});
