import { describe, expect, it } from 'vitest';
import { requestFor } from '../../../tests/flight-school.ts';
import { dragOverWeight, polarAtMass, sinOfGlide, speedAtMass } from './glide.ts';
import { resolveAircraft } from './resolve-aircraft.ts';

const polar = { speed: 21, ratio: 5 };
const angle = (eas: number, bank = 0) => Math.asin(sinOfGlide(polar, eas, Math.cos(bank)));
const ratio = (eas: number, bank = 0) => 1 / Math.tan(angle(eas, bank));

/** The small-angle form: D/W = (u^2 + n^2/u^2)/(2E) used as the angle, with n = 1/cos(bank). */
const smallAngle = (eas: number, bank = 0) => {
  const u2 = (eas / polar.speed) ** 2;
  return (u2 + 1 / (Math.cos(bank) ** 2 * u2)) / (2 * polar.ratio);
};

describe('a glide with wings level', () => {
  it('has exactly the best ratio at the best-glide speed', () => {
    for (const best of [1, 4, 5, 6.4, 20]) {
      expect(1 / Math.tan(Math.asin(sinOfGlide({ speed: 21, ratio: best }, 21, 1)))).toBeCloseTo(best, 9);
    }
  });

  it('has a worse ratio at any other speed', () => {
    for (const eas of [14, 18, 20.5, 21.5, 25, 40]) expect(ratio(eas)).toBeLessThan(5);
  });

  it('satisfies the formula it solves, n and all', () => {
    for (const eas of [15, 21, 30]) {
      for (const bank of [0, 0.5, 1]) {
        const load = Math.cos(angle(eas, bank)) / Math.cos(bank);
        expect(dragOverWeight(polar, eas, load)).toBeCloseTo(Math.sin(angle(eas, bank)), 12);
      }
    }
  });

  it('differs from the small-angle form by some per cent at 5:1, and hardly at 40:1', () => {
    const sine = Math.sin(angle(21));
    expect(sine).toBeCloseTo(1 / Math.sqrt(26), 12);
    expect(smallAngle(21) / sine).toBeCloseTo(Math.sqrt(26) / 5, 12);
    expect(smallAngle(21, 1) / Math.sin(angle(21, 1))).toBeGreaterThan(1.05);
    const flat = sinOfGlide({ speed: 21, ratio: 40 }, 21, 1);
    expect(1 / 40 / flat).toBeLessThan(1.0004);
  });

  it('sinks least below the best-glide speed: at 0.76 of it for a flat polar (parabolic polar, 3^(-1/4))', () => {
    const flat = { speed: 21, ratio: 60 };
    const sink = (u: number) => u * sinOfGlide(flat, 21 * u, 1);
    const least = 3 ** -0.25;
    expect(sink(least)).toBeLessThan(sink(least + 0.01));
    expect(sink(least)).toBeLessThan(sink(least - 0.01));
  });
});

describe('a gliding turn', () => {
  it('is steeper the more bank', () => {
    for (const bank of [0.2, 0.5, 0.8, 1]) expect(angle(21, bank)).toBeGreaterThan(angle(21, bank - 0.1));
  });
});

describe('ground effect', () => {
  it('takes its share of the induced half of the drag at best glide', () => {
    const full = dragOverWeight(polar, 21, Math.cos(Math.atan(1 / 5)));
    const half = dragOverWeight(polar, 21, Math.cos(Math.atan(1 / 5)), 0.5);
    expect(half / full).toBeCloseTo(0.75, 9);
  });
});

describe('another mass', () => {
  const aircraft = resolveAircraft(requestFor('osier').aircraft);
  const reference = aircraft.mass.reference;

  it('changes the speeds with the square root of the mass and leaves the ratio', () => {
    const lighter = polarAtMass(aircraft, 'idle', reference / 2)!;
    expect(lighter.speed).toBeCloseTo(aircraft.glide.idle.speed * Math.SQRT1_2, 12);
    expect(lighter.ratio).toBe(aircraft.glide.idle.ratio);
    expect(speedAtMass(20, aircraft, reference)).toBe(20);
  });

  it('takes the polar of the engine setting, and none where the aircraft gives none', () => {
    expect(polarAtMass(aircraft, 'stopped', reference)!.ratio).toBe(aircraft.glide.stopped!.ratio);
    const { idle } = aircraft.glide;
    expect(polarAtMass({ ...aircraft, glide: { idle } }, 'stopped', reference)).toBeUndefined();
  });
});
