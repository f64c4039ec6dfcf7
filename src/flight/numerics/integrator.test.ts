import { describe, expect, it } from 'vitest';
import { Integrator, type Motion, type State } from './integrator.ts';

/** An oscillator: y'' = -y, from (1, 0); after a time t it is at (cos t, -sin t). The third number counts the time. */
const swing = (remaining: Motion['remaining']): Motion => ({
  longestStep: 0.5,
  derivative(state, rates) {
    rates[0] = state[1]!;
    rates[1] = -state[0]!;
    rates[2] = 1;
  },
  remaining,
});
const start = (): State => Float64Array.from([1, 0, 0]);

function errorAfter(seconds: number, step: number): number {
  const state = start();
  new Integrator(3, step).run(
    swing((s) => seconds - s[2]!),
    state,
    false,
  );
  return Math.hypot(state[0]! - Math.cos(seconds), state[1]! + Math.sin(seconds));
}

describe('the integrator', () => {
  it('is of the fourth order: half the step, a sixteenth of the error', () => {
    const orders = [0.4, 0.2, 0.1].map((step) => Math.log2(errorAfter(4, step) / errorAfter(4, step / 2)));
    for (const order of orders) {
      expect(order).toBeGreaterThan(3.8);
      expect(order).toBeLessThan(4.3);
    }
  });

  it('ends on the event, in the middle of a step, with the accuracy of the method', () => {
    const state = start();
    const { duration, ended } = new Integrator(3, 0.1).run(
      swing((s) => s[0]!),
      state,
      false,
    );
    expect(ended).toBe(true);
    expect(duration).toBeCloseTo(Math.PI / 2, 5);
    expect(Math.abs(state[0]!)).toBeLessThan(1e-7);
  });

  it('reports the end of each step and the event', () => {
    const times: number[] = [];
    const state = start();
    const motion = swing((s) => 1.3 - s[2]!);
    new Integrator(3, 0.5).run(motion, state, false, () => times.push(state[2]!));
    expect(times).toHaveLength(3);
    expect(times[0]).toBeCloseTo(0.5, 12);
    expect(times[1]).toBeCloseTo(1, 12);
    expect(times[2]).toBeCloseTo(1.3, 9);
  });

  it('does not move where the end has passed, unless it may run backward to it', () => {
    const past = swing((s) => -0.7 - s[2]!);
    const still = start();
    expect(new Integrator(3).run(past, still, false).duration).toBe(0);
    expect(still).toEqual(start());
    const back = start();
    expect(new Integrator(3, 0.1).run(past, back, true).duration).toBeCloseTo(-0.7, 9);
    expect(back[0]).toBeCloseTo(Math.cos(0.7), 5);
  });

  it('takes no longer step than the motion allows', () => {
    const times: number[] = [];
    const state = start();
    const motion = { ...swing((s) => 1.1 - s[2]!), longestStep: 0.25 };
    new Integrator(3).run(motion, state, false, () => times.push(state[2]!));
    expect(times[0]).toBeCloseTo(0.25, 12);
    expect(times).toHaveLength(5);
  });

  it('gives up on an end that never comes, and says so', () => {
    expect(
      new Integrator(3).run(
        swing(() => 1),
        start(),
        false,
      ).ended,
    ).toBe(false);
  });

  it('lets the motion bring the rest of the state up to date after each step', () => {
    const state = start();
    const motion = { ...swing((s) => 1 - s[2]!), settle: (s: State) => s.fill(7, 0, 1) };
    new Integrator(3, 0.5).run(motion, state, false);
    expect(state[0]).toBe(7);
  });
});
