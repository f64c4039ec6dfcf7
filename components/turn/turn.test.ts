import { describe, expect, it } from 'vitest';
import { planApproach } from '../../src/flight/plan/planner.ts';
import { turnFigures } from '../../src/flight/questions/turn-figures.ts';
import { degrees, flyTrial, knots, renderBody, sayIn } from '../trial-packet.ts';

const plan = flyTrial();

describe(':turn[…]', () => {
  it('gives the load factors of the handbook', () => {
    // FAA-H-8083-25, Aerodynamics of Flight, load factors in steep turns: 1.154 g at 30 degrees, 2 g at 60 degrees.
    expect(sayIn(':turn[load-factor]{bank=30deg}', plan)).toBe('1.15');
    expect(sayIn(':turn[load-factor]{bank=60deg}', plan)).toBe('2.00');
  });

  it('takes the planned bank where none is given', () => {
    expect(plan.flown.bank).toBeCloseTo(degrees(30), 9);
    for (const what of ['radius', 'load-factor', 'stall', 'height-lost', 'time']) {
      expect(sayIn(`:turn[${what}]`, plan)).toBe(sayIn(`:turn[${what}]{bank=30deg}`, plan));
    }
  });

  it('raises the stall speed by the root of the load factor', () => {
    // FAA-H-8083-25, same chapter: 50 kt wings level becomes 71 kt at 60 degrees.
    const fast = { ...plan, flown: { ...plan.flown, stallSpeed: knots(50) } };
    expect(sayIn(':turn[stall]{bank=60deg}', fast)).toBe('71 kt');
  });

  it('gives the radius of the handbook formula, V squared over 11.26 tan(bank)', () => {
    // FAA-H-8083-25, Aerodynamics of Flight, radius of turn: ft, with V in knots true; a level turn. In a glide the
    // circle over the ground is smaller by the cosine of the path angle, here about 1.5 per cent.
    const { radius } = turnFigures(plan, degrees(30), Math.PI).flown!;
    const tas = (plan.flown.glideSpeed / knots(1)) * Math.sqrt(1.225 / (plan.air.density * 0.971));
    const level = (tas ** 2 / (11.26 * Math.tan(degrees(30)))) * 0.3048;
    expect(radius / level).toBeGreaterThan(0.97);
    expect(radius / level).toBeLessThan(1);
  });

  it('loses height and takes time in proportion to the angle', () => {
    const half = turnFigures(plan, degrees(30), Math.PI).flown!;
    const whole = turnFigures(plan, degrees(30), 2 * Math.PI).flown!;
    expect(whole.heightLost).toBeCloseTo(2 * half.heightLost, 9);
    expect(sayIn(':turn[time]{angle=360deg}', plan)).toBe(sayIn(':turn[time]', plan));
    expect(sayIn(':turn[time]{angle=180deg}', plan)).toBe(`${Math.round(half.time)} s`);
    expect(sayIn(':turn[height-lost]{angle=180deg}', plan)).toBe(
      `${Math.round(half.heightLost / 3.048) * 10} ft`,
    );
  });

  it('agrees with a turn that was flown', () => {
    // The base turn of a flight in still air, between two samples at its full bank.
    const still = planApproach({
      aircraft: plan.aircraft,
      airfield: plan.airfield,
      runway: plan.runway,
      approach: '180',
      power: 'idle',
      wind: { from: 0, speed: 0 },
    });
    const banked = still.track.filter(
      ({ phase, bank }) => phase === 'base-turn' && Math.abs(Math.abs(bank) - still.flown.bank) < 1e-6,
    );
    const [first, last] = [banked[0]!, banked.at(-1)!];
    const turned = Math.abs(
      Math.atan2(Math.sin(last.heading - first.heading), Math.cos(last.heading - first.heading)),
    );
    expect(turned).toBeGreaterThan(0.5);
    const { heightLost, time } = turnFigures(still, still.flown.bank, turned).flown!;
    expect((first.height - last.height) / heightLost).toBeCloseTo(1, 1);
    expect((last.time - first.time) / time).toBeCloseTo(1, 1);
  });

  it('refuses a bank beyond the limit, and one in which the wing stalls at its glide speed', () => {
    expect(renderBody(':turn[radius]{bank=61deg}', plan).messages).toEqual([
      '4:1 Osier 15 may be banked 60° at most, not 61°: write a smaller `bank`',
    ]);
    const slow = { ...plan, flown: { ...plan.flown, stallSpeed: plan.flown.glideSpeed * 0.9 } };
    expect(renderBody(':turn[height-lost]{bank=45deg}', slow).messages).toEqual([
      expect.stringMatching(
        /^4:1 Osier 15 stalls at 43.kt in a bank of 45°, and glides at 41.kt: write a smaller/,
      ),
    ]);
    expect(sayIn(':turn[stall]{bank=45deg}', slow)).toBe('43 kt');
  });

  it('says what is wrong with a bank or an angle', () => {
    expect(renderBody(':turn[radius]{bank=30}', plan).messages).toEqual([
      expect.stringMatching(/^4:15 `bank` cannot be `30`: `30` has no unit: write an angle such as `30 deg`/),
    ]);
    expect(renderBody(':turn[radius]{angle=90deg}', plan).messages).toEqual([
      expect.stringMatching(
        /^4:1 The radius of a turn does not depend on how far it goes: leave `angle` out/,
      ),
    ]);
  });
});
