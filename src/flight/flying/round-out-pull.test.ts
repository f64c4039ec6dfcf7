import { describe, expect, it } from 'vitest';
import { requestFor } from '../../../tests/flight-school.ts';
import { resolveRequest } from '../plan/request.ts';
import type { Aircraft } from '../terms/aircraft.ts';
import { RequestError } from '../terms/errors.ts';
import { roundOutPull } from './round-out-pull.ts';

const withy = requestFor('withy').aircraft;
const pullOf = (changes: Partial<Aircraft>) =>
  roundOutPull(resolveRequest(requestFor('withy', { aircraft: { ...withy, ...changes } })).conditions);

describe('the pull of the round-out', () => {
  it("is the aircraft's own where that is level above the ground", () => {
    expect(pullOf({ roundOut: { height: 12, loadFactor: 1.3 } })).toBe(1.3);
  });

  it('is firmer where the round-out begins too low for it, the lower the firmer', () => {
    const [low, lower] = [2.5, 1.5].map((height) => pullOf({ roundOut: { height, loadFactor: 1.03 } }));
    expect(low).toBeGreaterThan(1.03);
    expect(lower).toBeGreaterThan(low!);
  });

  it("is the aircraft's own in a wind that leaves no landing, though still air does", () => {
    const speeds = { ...withy.speeds, touchdown: withy.speeds.approach - 1.5 };
    const gale = { from: requestFor('withy').runway.heading, speed: 19 };
    const at = (wind: typeof gale) =>
      roundOutPull(resolveRequest(requestFor('withy', { wind, aircraft: { ...withy, speeds } })).conditions);
    expect(at({ ...gale, speed: 0 })).toBeGreaterThan(1);
    expect(at(gale)).toBe(withy.roundOut.loadFactor);
  });

  it('cannot be had where the round-out would end below the touchdown speed', () => {
    const speeds = { ...withy.speeds, touchdown: withy.speeds.approach - 0.1 };
    expect(() => pullOf({ speeds })).toThrow(RequestError);
  });
});
