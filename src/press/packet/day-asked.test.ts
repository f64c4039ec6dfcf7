import { describe, expect, it } from 'vitest';
import { sampleAircraft } from '../../../tests/press-sample.ts';
import type { Day } from '../../lesson/day.ts';
import { metresPerSecondPerKnot as knot, radiansPerDegree } from '../../units/factors.ts';
import type { PageUnits } from '../../words/figures/page-units.ts';
import { dayAsked } from './day-asked.ts';

// The Osier 15, whose crosswind limit is 9 kt, on a runway of 238 degrees.
const knots: PageUnits = { height: 'ft', distance: 'm', speed: 'kt' };
const metric: PageUnits = { height: 'm', distance: 'm', speed: 'km/h' };
const heading = 238;

/** `off`: how many degrees the wind is from the right of the runway. */
interface Weather {
  readonly off?: number;
  readonly wind: number;
  readonly gust?: number;
}

function held(day: Day, { off = 0, wind, gust }: Weather, units = knots) {
  const { words, breaches } = dayAsked(
    {
      aircraft: sampleAircraft,
      runway: { heading: heading * radiansPerDegree },
      flown: {
        surfaceWind: { from: (heading + off) * radiansPerDegree, speed: wind * knot },
        gust: gust && gust * knot,
      },
    },
    day,
    units,
  );
  const plain = (text: string) => text.replaceAll('\u00a0', ' ');
  return { words: plain(words), broken: breaches.map((each) => plain(each.words)) };
}
const brokenBy = (...of: Parameters<typeof held>) => held(...of).broken;
const wordsOf = (day: Day, units = knots) => held(day, { wind: 5 }, units).words;

const mostTen: Day = { mostWind: 10 * knot };
const mostFourAcross: Day = { mostCrosswind: 4 * knot };
const half: Day = { mostCrosswind: { share: 0.5 } };
const leastFour: Day = { leastWind: 4 * knot };
const advice = 'choose another wind, or another day.';

describe('the day that a lesson asks for', () => {
  it('is said in figures of the aircraft', () => {
    expect(wordsOf({ ...mostTen, ...half })).toBe(
      'A wind of no more than 10 kt, and of no more than 4.5 kt across the runway, half of the limit of the Osier 15. Gusts count.',
    );
    expect(wordsOf({ ...mostTen, ...leastFour })).toBe(
      'A wind of at least 4 kt and no more than 10 kt. Gusts count towards the most, not towards the least.',
    );
    expect(wordsOf(leastFour)).toBe('A wind of at least 4 kt. Gusts do not count.');
    expect(wordsOf(mostFourAcross)).toBe('A wind of no more than 4 kt across the runway. Gusts count.');
  });

  it('has a least across as well', () => {
    expect(wordsOf({ ...mostTen, ...half, leastCrosswind: 2 * knot })).toBe(
      'A wind of no more than 10 kt, and of at least 2 kt and no more than 4.5 kt across the runway, half of the limit of the Osier 15. Gusts count towards the most, not towards the least.',
    );
  });

  it('names a share of the limit', () => {
    expect(wordsOf({ mostCrosswind: { share: 0.29 } })).toContain(
      'no more than 2.5 kt across the runway, 29 % of the limit of the Osier 15.',
    );
    expect(wordsOf({ mostCrosswind: { share: 1 } })).toContain(
      'no more than 9 kt across the runway, the limit of the Osier 15.',
    );
  });

  it('has its most rounded down and its least up, in the units of the school', () => {
    // 10 kt are 18.52 km/h, 4.5 kt 8.33 and 4 kt 7.41.
    expect(wordsOf({ ...mostTen, ...half, ...leastFour }, metric)).toMatch(
      /A wind of at least 8 km\/h and no more than 18 km\/h, and of no more than 8 km\/h across the runway/,
    );
  });
});

describe('a wind held against it', () => {
  it('breaks nothing where it fits exactly, and does by a hair', () => {
    expect(brokenBy(mostTen, { wind: 10 })).toEqual([]);
    expect(brokenBy(mostTen, { wind: 10.01 })).toEqual([
      `The wind is 10.01 kt, and the lesson asks for no more than 10 kt: ${advice}`,
    ]);
    expect(brokenBy(leastFour, { wind: 4 })).toEqual([]);
    expect(brokenBy(leastFour, { wind: 3.99 })).toEqual([
      `The wind is 3.99 kt, and the lesson asks for at least 4 kt: ${advice}`,
    ]);
    expect(brokenBy(mostFourAcross, { wind: 4, off: 90 })).toEqual([]);
    expect(brokenBy(mostFourAcross, { wind: 4.01, off: 90 })).toEqual([
      `The wind has 4.01 kt across the runway, and the lesson asks for no more than 4 kt: ${advice}`,
    ]);
  });

  it('is taken across the runway from either side, ahead or behind', () => {
    // Half of 12 kt is across at 30 degrees off either end.
    for (const off of [30, -30, 150, -150]) {
      expect(brokenBy(mostFourAcross, { wind: 12, off })).toEqual([
        `The wind has 6 kt across the runway, and the lesson asks for no more than 4 kt: ${advice}`,
      ]);
    }
    for (const off of [0, 180]) expect(brokenBy(mostFourAcross, { wind: 30, off })).toEqual([]);
    expect(brokenBy(mostTen, { wind: 12, off: 180 })).toHaveLength(1);
  });

  it('is held against the share of the aircraft\u2019s own limit', () => {
    expect(brokenBy(half, { wind: 4.5, off: 90 })).toEqual([]);
    expect(brokenBy(half, { wind: 4.6, off: -90 })).toEqual([
      `The wind has 5 kt across the runway, and the lesson asks for no more than 4 kt: ${advice}`,
    ]);
    expect(brokenBy({ mostCrosswind: { share: 1 } }, { wind: 9, off: 90 })).toEqual([]);
    expect(brokenBy({ mostCrosswind: { share: 0.25 } }, { wind: 3, off: 90 })).toHaveLength(1);
  });

  it('counts the gust towards the most, and not towards the least', () => {
    expect(brokenBy(mostTen, { wind: 8, gust: 10 })).toEqual([]);
    expect(brokenBy(mostTen, { wind: 8, gust: 14 })).toEqual([
      `The wind in gusts is 14 kt, and the lesson asks for no more than 10 kt: ${advice}`,
    ]);
    expect(brokenBy(mostFourAcross, { wind: 6, gust: 12, off: 30 })).toEqual([
      `The wind in gusts has 6 kt across the runway, and the lesson asks for no more than 4 kt: ${advice}`,
    ]);
    expect(brokenBy(leastFour, { wind: 3, gust: 12 })).toEqual([
      `The wind is 3 kt, and the lesson asks for at least 4 kt: ${advice}`,
    ]);
    const leastAcross: Day = { leastCrosswind: 2 * knot };
    expect(brokenBy(leastAcross, { wind: 2, off: -90 })).toEqual([]);
    expect(brokenBy(leastAcross, { wind: 4, off: 29, gust: 12 })[0]).toMatch(
      /^The wind has 1\.94? kt across the runway, and the lesson asks for at least 2 kt/,
    );
    // A gust below the wind is no gust.
    expect(brokenBy(mostTen, { wind: 12, gust: 9 })[0]).toMatch(/^The wind is 12 kt/);
  });

  it('is told apart in the units of the school', () => {
    expect(brokenBy({ mostWind: 5 }, { wind: 5.1 / knot }, metric)).toEqual([
      `The wind is 18.4 km/h, and the lesson asks for no more than 18 km/h: ${advice}`,
    ]);
  });

  it('may break several things', () => {
    expect(brokenBy({ ...mostTen, ...half }, { wind: 14, off: 90 })).toHaveLength(2);
  });
});
