import { describe, expect, it } from 'vitest';
import { randomFrom } from '../../src/flight/numerics/random.ts';
import { soundFinal } from '../../src/flight/plan/final-band.ts';
import type { Plan } from '../../src/flight/terms/plan.ts';
import { contextOf, flyTrial } from '../trial-packet.ts';
import type { Exercise } from './exercise.ts';
import { finalOffHeight } from './final-off-height.ts';
import { gateReading } from './gate-reading.ts';
import { glideIntoWind } from './glide-into-wind.ts';
import { heightLostInTurn } from './height-lost-in-turn.ts';
import { type Draw, questionSetting } from './question-setting.ts';
import { stallInBank } from './stall-in-bank.ts';

const plan = flyTrial();
/** Sixty draws, as text with plain spaces. */
function drawsOf(draw: Draw, from: Plan = plan): Exercise[] {
  const setting = questionSetting(contextOf(from));
  return Array.from({ length: 60 }, (_, seed) => draw(setting, randomFrom(1000 * seed))).filter(
    (each) => each !== undefined,
  );
}
const plainly = (text: string) => text.replaceAll('\u00a0', ' ');
const numbers = (text: string) =>
  (text.match(/\d[\d,]*(\.\d+)?/g) ?? []).map((each) => Number(each.replace(',', '')));
const faultOf = ({ choices }: Exercise, fault: string) => {
  const text = choices.find((choice) => choice.fault === fault)?.text;
  return text === undefined ? undefined : numbers(text)[0]!;
};

describe('a worked answer', () => {
  it('of a glide into wind comes out of the figures that it prints', () => {
    const drawn = drawsOf(glideIntoWind);
    expect(drawn.length).toBeGreaterThan(5);
    for (const { working } of drawn) {
      const [tas, forward, wind] = numbers(plainly(working[1]!));
      expect(tas).toBeGreaterThanOrEqual(forward!);
      const [still, left, of, ratio, , height, again] = numbers(plainly(working[2]!));
      expect(of).toBe(forward);
      expect(left).toBeCloseTo(forward! - wind!, 6);
      expect(ratio).toBeCloseTo((still! * left!) / of!, 1);
      expect(again).toBe(ratio);
      expect(numbers(working.at(-1)!)[0]).toBe(10 * Math.round((height! * ratio!) / 10));
    }
  });

  it('of a stall in a turn, and its faults, come out of the printed stall speed', () => {
    const drawn = drawsOf(stallInBank);
    expect(drawn.length).toBeGreaterThan(5);
    for (const exercise of drawn) {
      const [, load] = /= ([\d.]+)\.$/.exec(exercise.working[0]!)!;
      const [level, root] = numbers(plainly(exercise.working.at(-2)!));
      expect(root).toBe(Math.round(Math.sqrt(Number(load)) * 1000) / 1000);
      expect(numbers(exercise.working.at(-1)!)[0]).toBe(Math.round(level! * root!));
      const wrong = faultOf(exercise, 'times the load factor, and not its root');
      if (wrong !== undefined) expect(wrong).toBe(Math.round(level! * Number(load)));
    }
  });

  it('of the height lost in a turn, and its faults, come out of the printed time and sink', () => {
    const drawn = drawsOf(heightLostInTurn);
    expect(drawn.length).toBeGreaterThan(5);
    for (const exercise of drawn) {
      const [time, sink] = numbers(plainly(exercise.working[2]!));
      const [level] = numbers(plainly(exercise.working[1]!));
      const lost = numbers(exercise.working.at(-1)!)[0]!;
      expect(lost).toBe(10 * Math.round((time! * sink!) / 600));
      const straight = faultOf(exercise, 'the sink of the straight glide');
      if (straight !== undefined) expect(straight).toBe(10 * Math.round((time! * level!) / 600));
      const whole = faultOf(exercise, 'the whole circle');
      if (whole !== undefined) expect(whole).toBe(10 * Math.round((2 * time! * sink!) / 600));
    }
  });

  it('is not parted by a line where it multiplies, adds or takes off', () => {
    for (const { working } of [glideIntoWind, stallInBank, heightLostInTurn, finalOffHeight].flatMap((draw) =>
      drawsOf(draw),
    )) {
      expect(working.join(' ')).not.toMatch(/ [×+−] |[×+−] \d/);
    }
  });
});

describe('a final off its height', () => {
  const low = flyTrial({
    approach: '90',
    height: 700 * 0.3048,
    wind: { from: (210 / 180) * Math.PI, speed: 6.17 },
  });
  const drawn = [...drawsOf(finalOffHeight), ...drawsOf(finalOffHeight, low)];

  it('is gone around from below the height by which the turn is complete, and there alone', () => {
    let late = 0;
    for (const { choices, answer } of drawn) {
      const right = plainly(choices[answer]!.text);
      const isLate = numbers(right)[0]! * 0.3048 < soundFinal;
      expect(right.endsWith('power, and go around.')).toBe(isLate);
      if (isLate) late += 1;
      // No other choice asks for power as well.
      if (isLate) expect(choices.filter(({ text }) => text.includes('power'))).toHaveLength(1);
    }
    expect(late).toBeGreaterThan(0);
    expect(late).toBeLessThan(drawn.length);
  });

  it('is nothing to go around from with the engine stopped', () => {
    const stopped = drawsOf(finalOffHeight, flyTrial({ power: 'stopped' }));
    expect(stopped.flatMap(({ choices }) => choices.map(({ text }) => text)).join()).not.toContain('power');
  });
});

describe('a reading of the gates', () => {
  const drawn = drawsOf(gateReading);

  it('is asked at both keys, and on all sides', () => {
    const asked = drawn.map(({ question, choices, answer }) =>
      [/pass the (downwind|base) key/.exec(question)![1], /^[^:]*/.exec(choices[answer]!.text)![0]].join(' '),
    );
    // Between the plan at the base key and the low edge of this gate, no height is clearly one or the other.
    for (const each of [
      'downwind Below the band',
      'downwind In the band, lower than the plan',
      'downwind In the band, higher than the plan',
      'base Below the band',
      'base In the band, higher than the plan',
    ]) {
      expect(asked).toContain(each);
    }
  });

  it('says of a wrong choice what is wrong with it from that height', () => {
    for (const { choices, answer } of drawn) {
      const below = choices.find(({ text }) => text.startsWith('Below the band'))!;
      if (!choices[answer]!.text.startsWith('In the band, higher')) continue;
      expect(below.fault).toBe('takes the height for too low');
    }
  });
});
