import { describe, expect, it } from 'vitest';
import { drawExercises } from '../components/exercises/draw-exercises.ts';
import { fieldsFor } from '../components/exercises/fields-by-runway.ts';
import { kinds } from '../components/exercises/kinds.ts';
import { randomFrom } from '../src/flight/numerics/random.ts';
import { figureIn, questionsOf, settingFor } from './exercises-questions.ts';
import { aircraftIds, windOffRunway } from './flight-school.ts';

/** Without fields, which take a second each and have their own test below. */
const settingsOf = (id: (typeof aircraftIds)[number]) =>
  [
    settingFor(id, { wind: windOffRunway(0, 0) }),
    settingFor(id, { wind: windOffRunway(-28, 12) }),
    settingFor(id, { wind: windOffRunway(60, 8), power: 'stopped' }),
    settingFor(id, { wind: windOffRunway(15, 10), approach: '90' }),
    settingFor(id, { wind: windOffRunway(-15, 7), approach: '360' }),
    settingFor(id, { wind: windOffRunway(0, 9), approach: 'spiral' }),
  ].map((setting) => ({ ...setting, airfield: undefined }));
const settings = aircraftIds.flatMap(settingsOf);
/** Half circuits, because they are quick to fly. */
const half = settings.filter(({ request }) => request.approach === '180');
const seeds = Array.from({ length: 20 }, (_, i) => i);

describe('the exercises that a seed draws', () => {
  const sets = half;
  const drawn = sets.flatMap((setting) => seeds.map((seed) => drawExercises(setting, 8, seed)));

  it('are as many as asked for, every kind before one comes again, no question twice', () => {
    for (const exercises of drawn) {
      expect(exercises.length).toBe(8);
      const names = exercises.map(({ kind }) => kind);
      const firstRepeat = names.findIndex((name, i) => names.indexOf(name) < i);
      expect(new Set(names.slice(0, firstRepeat)).size).toBe(new Set(names).size);
      expect(new Set(exercises.map(({ question }) => question)).size).toBe(8);
    }
  });

  it('have four choices that differ as printed, one of them right, each other with its fault', () => {
    for (const { choices, answer, working } of drawn.flat()) {
      expect(new Set(choices.map(({ text }) => text)).size).toBe(4);
      expect(choices.map(({ fault }, i) => (fault === undefined ? i : -1)).filter((i) => i >= 0)).toEqual([
        answer,
      ]);
      expect(working.at(-1)).toBe(choices[answer]!.text);
      expect(working.length).toBeGreaterThan(1);
    }
  });

  it('put the right choice in every place', () => {
    const places = drawn.flat().map(({ answer }) => answer);
    for (const place of [0, 1, 2, 3]) {
      const share = places.filter((each) => each === place).length / places.length;
      expect(share).toBeGreaterThan(0.15);
      expect(share).toBeLessThan(0.35);
    }
  });

  it('are the same for the same seed and others for another', () => {
    const [setting] = sets;
    expect(drawExercises(setting!, 8, 3)).toEqual(drawn[3]);
    expect(drawn[4]).not.toEqual(drawn[3]);
    expect(drawExercises(setting!, 3, 3)).toEqual(drawn[3]!.slice(0, 3));
  });

  it('change with the wind of the packet', () => {
    const questions = (i: number) => drawn[i]!.map(({ question, choices }) => [question, choices]);
    expect(questions(3)).not.toEqual(questions(23));
  });
});

describe('a kind of question that a flight does not have', () => {
  it.each(['90', '360', 'spiral'] as const)('is left out of a %s approach', (approach) => {
    for (const setting of settings.filter(({ request }) => request.approach === approach)) {
      const exercises = drawExercises(setting, 6, 5);
      expect(exercises.length).toBe(6);
      const names = exercises.map(({ kind }) => kind);
      expect(names).not.toContain('which-field');
      if (approach === '90') expect(names).not.toContain('base-turn-in-wind');
    }
  });

  it('is left out where winds are given by layers, which no other surface wind changes', () => {
    const wind = windOffRunway(0, 8);
    const layered = settingFor('osier', {
      wind,
      windProfile: 'layers',
      windLayers: [
        { ...wind, height: 10 },
        { ...wind, speed: wind.speed * 1.5, height: 300 },
      ],
    });
    const names = drawExercises({ ...layered, airfield: undefined }, 8, 1).map(({ kind }) => kind);
    expect(names).not.toContain('base-turn-in-wind');
    expect(names).not.toContain('base-key-height');
  });
});

describe('the worked answers', () => {
  const steps = (kind: string) => settings.flatMap((setting) => questionsOf(kind, setting));

  it('multiply out to the figure that is printed', () => {
    for (const { working, right } of steps('stall-in-bank')) {
      const [, level, root] = /^(\d+) kt × ([\d.]+):$/.exec(working.at(-2)!)!;
      expect(`${Math.round(Number(level) * Number(root))} kt`).toBe(right);
    }
    for (const { working, right } of steps('height-lost-in-turn')) {
      const [, time, sink] = /^([\d.]+) s × ([\d,]+) ft\/min:$/.exec(working.at(-2)!)!;
      expect(`${Math.round((Number(time) * Number(sink!.replace(',', ''))) / 600) * 10} ft`).toBe(right);
    }
    for (const { working, right } of steps('glide-into-wind')) {
      const [, height, ratio] = /([\d,]+) m × ([\d.]+):$/.exec(working.at(-2)!)!;
      const metres = Math.round((Number(height!.replace(',', '')) * Number(ratio)) / 10) * 10;
      expect(metres).toBe(figureIn(right, /^([\d,]+) m$/));
    }
  });

  it('add up', () => {
    const flown = half.flatMap((setting) => questionsOf('base-key-height', setting));
    for (const { working, right } of flown.filter(({ working }) => / − /.test(working.at(-2)!))) {
      const [, from, lost] = /([\d,]+) ft − ([\d,]+) ft:$/.exec(working.at(-2)!)!;
      expect(Number(from!.replace(',', '')) - Number(lost)).toBe(figureIn(right, /^([\d,]+) ft$/));
    }
  });
});

describe('the question of where to land', () => {
  const knot = 1852 / 3600;
  const wind = windOffRunway(-28, 12);
  const setting = settingFor('withy', { wind });
  const [asked] = [0, 1, 2].flatMap((seed) => {
    const drawn = kinds['which-field']!.draw(setting, randomFrom(seed));
    return drawn ? [drawn] : [];
  });

  /** The landing direction of a choice, degrees true: its own, or that in the runway's file. */
  const direction = (text: string) =>
    text.startsWith('runway')
      ? (setting.request.airfield.runways.find(({ name }) => text === `runway ${name}`)!.heading * 180) /
        Math.PI
      : figureIn(text, /landing (\d+)°$/);
  const tailwind = (text: string) =>
    (-wind.speed * Math.cos(wind.from - (direction(text) * Math.PI) / 180)) / knot;

  it('is asked at this airfield', () => {
    expect(asked).toBeDefined();
    expect(asked!.choices.length).toBe(4);
  });

  it('is answered by no place with a tailwind over 5 kt, and the tailwinds that it names are those of the wind', () => {
    const right = asked!.choices[asked!.answer]!;
    expect(tailwind(right.text)).toBeLessThan(5);
    for (const { text, fault } of asked!.choices) {
      if (!fault?.includes('tailwind')) continue;
      const named = figureIn(fault.replaceAll('\u00a0', ' '), /([\d.]+) kt of tailwind/);
      expect(Math.abs(named - tailwind(text))).toBeLessThan(0.6);
    }
  });

  it('is answered by a place that the straight glide reaches with the wind that blows', () => {
    const { question, table, choices, answer } = asked!;
    const right = choices[answer]!.text;
    const words = question.replaceAll('\u00a0', ' ');
    const height = figureIn(words, /([\d,]+) ft above the spot/) * 0.3048;
    const from = place(words);
    const row = table!.rows.find(([name]) => right.startsWith(name!));
    const to = row ? place(row[1]!.replaceAll('\u00a0', ' ')) : { along: 0, across: 0 };
    const distance = Math.hypot(from.along - to.along, from.across - to.across);
    const { ratio, speed } = setting.plan.aircraft.glide.stopped!;
    expect(distance).toBeLessThan(height * ratio * (1 + (1.6 * wind.speed) / speed));
  });
});

/** m, from `300 m past the spot, 450 m to the left`. */
function place(words: string) {
  const along =
    figureIn(words, /([\d,]+) m (?:past|before) the spot/) * (/m before the spot/.test(words) ? -1 : 1);
  const across = figureIn(words, /([\d,]+) m to the (?:left|right)/) * (/m to the left/.test(words) ? -1 : 1);
  return { along, across };
}

describe('the fields of an airfield', () => {
  const { airfield, request } = settingFor('osier');
  const [first, other] = request.airfield.runways;

  it('are seen turned about from the other end of the strip, landing in the same directions', () => {
    // A strip of 700 m, with both spots 300 m in: the two spots are 100 m apart.
    const there = fieldsFor(first!, airfield);
    const back = fieldsFor(other!, airfield);
    expect(there.length).toBeGreaterThan(0);
    back.forEach((field, i) => {
      expect(field.along).toBeCloseTo(100 - there[i]!.along, 6);
      expect(field.across).toBeCloseTo(-there[i]!.across, 6);
      expect(field.heading).toBe(there[i]!.heading);
    });
  });

  it('are unknown from a runway whose place the file does not give', () => {
    expect(fieldsFor({ ...first!, name: '33', heading: 5.8 }, airfield)).toEqual([]);
  });
});
