import { describe, expect, it } from 'vitest';
import { standardGravity } from '../air/constants.ts';
import { sinOfGlide } from '../aircraft/glide.ts';
import {
  EAS,
  glideAlongLine,
  HEIGHT,
  holdOff,
  type Medium,
  type SpeedControl,
  stateSize,
} from './motions.ts';

/** Air of one density, and a headwind that grows by this much for each metre up. */
const medium = (shear: number, changes: Partial<Medium> = {}): Medium => ({
  polar: { speed: 20, ratio: 6 },
  tasOverEas: () => 1,
  thinning: () => 0,
  wind: (_height, out) => {
    [out.along, out.across, out.alongShear, out.acrossShear] = [0, 0, shear, 0];
  },
  ...changes,
});

const stateAt = (height: number, eas: number) => {
  const state = new Float64Array(stateSize);
  state[HEIGHT] = height;
  state[EAS] = eas;
  return state;
};

function glideRates(of: Medium, speed: SpeedControl, eas = 20) {
  const rates = new Float64Array(stateSize);
  glideAlongLine(of, 0, () => 1, speed).derivative(stateAt(100, eas), rates);
  return { sink: -rates[HEIGHT]!, gain: rates[EAS]! };
}

describe('a glide that the wind takes from', () => {
  const steady = 20 * sinOfGlide({ speed: 20, ratio: 6 }, 20, 1);
  const level = Math.sqrt(400 - steady ** 2);

  it.each([-0.3, -0.4, -0.6])(
    'sinks no more than twice as fast to hold the airspeed, and the rest goes from it: %s',
    (shear) => {
      const worth = 1 + (level * shear) / standardGravity;
      const { sink, gain } = glideRates(medium(shear), 'held');
      expect(sink).toBeCloseTo(2 * steady, 9);
      expect(gain).toBeCloseTo((standardGravity / 20) * (2 * steady * worth - steady), 9);
      expect(gain).toBeLessThan(0);
    },
  );

  it('holds the airspeed where twice the sink is enough', () => {
    const worth = 1 + (level * -0.2) / standardGravity;
    const { sink, gain } = glideRates(medium(-0.2), 'held');
    expect(sink).toBeCloseTo(steady / worth, 9);
    expect(gain).toBe(0);
  });

  it('in air that sinks keeps its airspeed in a calm, with the nose held or left where it is', () => {
    for (const speed of ['held', 'left'] as const) {
      const { sink, gain } = glideRates(medium(0, { sinkingAir: 1 }), speed);
      expect(sink).toBeCloseTo(steady + 1, 9);
      expect(gain).toBeCloseTo(0, 9);
    }
  });
});

it('slowing down takes no more than half of the sink away, of a flat glider too', () => {
  const polar = { speed: 20, ratio: 30 };
  const { sink } = glideRates(medium(0, { polar }), 'slower', 24);
  expect(sink).toBeCloseTo((24 * sinOfGlide(polar, 24, 1)) / 2, 9);
});

it('no step leads at 4 m/s from afar into the rounded part of a bend of the wind', () => {
  const { longestStep } = glideAlongLine(medium(0, { windBends: [100] }), 0, () => 1, 'held');
  const step = (height: number) => (longestStep as (state: Float64Array) => number)(stateAt(height, 20));
  // Rounded 5 m to each side.
  for (const height of [112, 120, 125]) {
    expect(4 * step(height)).toBeLessThanOrEqual(height - 105 + 1e-9);
    expect(4 * step(200 - height)).toBeLessThanOrEqual(95 - (200 - height) + 1e-9);
  }
  expect(4 * step(100)).toBeLessThanOrEqual(5 + 1e-9);
});

it.each([
  [-2.0, true],
  [-2.29, false],
  [-2.6, false],
])('a hold-off into a wind that changes by %s m/s a metre: flown %s', (shear, isFlown) => {
  // worth = 1 + 0.5 (g/20 + shear): 0.245, 0.1 and below 0.
  const rates = new Float64Array(stateSize);
  const motion = holdOff(
    medium(shear),
    { wingSpan: 10, wingAboveWheels: 2 },
    { level: 1, entryEas: 20, touchdownEas: 18 },
  );
  motion.derivative(stateAt(1, 20), rates);
  expect(Number.isFinite(rates[EAS]!)).toBe(isFlown);
});
