import { describe, expect, it } from 'vitest';
import { randomFrom } from '../../src/flight/numerics/random.ts';
import { landingPlaces } from '../../src/flight/questions/landing-places.ts';
import { contextOf, degrees, flyTrial, knots } from '../trial-packet.ts';
import { fieldsFor } from './fields-by-runway.ts';
import { questionSetting } from './question-setting.ts';
import { whichField } from './which-field.ts';

const foot = 0.3048;
const plan = flyTrial({ power: 'stopped', wind: { from: degrees(210), speed: knots(12) } });
const setting = questionSetting(contextOf(plan));
const drawn = Array.from({ length: 12 }, (_, seed) => whichField(setting, randomFrom(seed + 1))).filter(
  (each) => each !== undefined,
);

/** The place that a question names, judged again from what the question prints. */
function judgedAgain(question: string) {
  const [, feet] = /([\d,]+)\s+ft above the spot/.exec(question)!;
  const lengthOf = (pattern: RegExp, sign: number) => {
    const far = pattern.exec(question)?.[1];
    return far === undefined ? 0 : sign * Number(far.replace(',', ''));
  };
  const along = lengthOf(/([\d,]+)\s+m before the spot/, -1) + lengthOf(/([\d,]+)\s+m past the spot/, 1);
  const across = lengthOf(/([\d,]+)\s+m to the left/, -1) + lengthOf(/([\d,]+)\s+m to the right/, 1);
  const heading = degrees(Number(/heading (\d+)°/.exec(question)![1])) - plan.runway.heading;
  const position = { along, across, height: Number(feet!.replace(',', '')) * foot, heading };
  return landingPlaces(position, fieldsFor(plan.runway, setting.airfield), setting.request);
}

describe('the question where to land', () => {
  it('calls no place out of reach that any arrival makes, and none right that is not made with 50 ft in hand', () => {
    expect(drawn.length).toBeGreaterThan(3);
    for (const { question, choices, answer } of drawn.slice(0, 4)) {
      const places = judgedAgain(question);
      const placeOf = (text: string) =>
        places.find(({ name, heading }) => {
          const landing = Math.round((heading * 180) / Math.PI);
          return name === text || text === `${name}, landing ${String(landing).padStart(3, '0')}°`;
        })!;
      for (const [i, { text, fault }] of choices.entries()) {
        const place = placeOf(text);
        const made = place.approach !== undefined || place.straightIn !== undefined;
        if (i === answer) {
          expect(place.rejections).toEqual([]);
          expect(place.margins[0]!.margin).toBeGreaterThanOrEqual(50 * foot - 0.5);
        } else if (fault!.includes('out of reach')) expect(made).toBe(false);
      }
    }
  });

  it('says of a place without double the length that there is none, or that another has it', () => {
    for (const { choices, answer, working } of drawn) {
      const lengths = working[0]!.match(/needs ([\d,]+)\s+m .* has ([\d,]+)\s+m/)!;
      const [needed, has] = lengths.slice(1).map((text) => Number(text.replace(',', '')));
      // Printed as needed, rounded up: whether a place is ample is judged by the unrounded figure.
      if (has! < 2 * (needed! - 10))
        expect(working[0]).toContain('less than double, but no place with double is in reach');
      if (working[0]!.includes('less than double')) {
        expect(choices.some(({ fault }, i) => i !== answer && fault?.includes('less than double'))).toBe(
          false,
        );
      }
    }
  });

  it('says how a place is come to whose pattern is not reached', () => {
    const straight = drawn.filter(({ working }) => working[1]!.startsWith('No key of its pattern'));
    expect(straight.length).toBeGreaterThan(0);
    for (const { working } of straight) {
      expect(working[1]).toMatch(
        /the shortest way comes to it .* spot at [\d,]+\s+ft; then straight in, (over the near end at|touching down).* more than the least for wings level by 300\s+ft/,
      );
    }
  });
});
