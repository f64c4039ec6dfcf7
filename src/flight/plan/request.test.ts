import { describe, expect, it } from 'vitest';
import { requestFor } from '../../../tests/flight-school.ts';
import { aviation } from '../../words/figures/aviation.ts';
import { requestSentence } from '../../words/refusals/request-words.ts';
import { resolveAircraft } from '../aircraft/resolve-aircraft.ts';
import { RequestError } from '../terms/errors.ts';
import type { PlanRequest } from '../terms/plan.ts';
import { resolveRequest } from './request.ts';

const request = requestFor('osier');
const degrees = Math.PI / 180;

function errorOf(changes: Partial<PlanRequest>): RequestError {
  try {
    resolveRequest({ ...request, ...changes });
  } catch (error) {
    if (error instanceof RequestError) return error;
    throw error;
  }
  throw new Error('nothing was wrong with it');
}

const saying = (error: RequestError) => requestSentence(error, aviation);

const { aircraft, airfield, runway } = request;

describe('a request out of range names the field and what is allowed', () => {
  const cases: [field: string, range: string, changes: Partial<PlanRequest>][] = [
    ['wind.speed', '0 to 87 kt', { wind: { from: 0, speed: 46 } }],
    ['wind.speed', '0 to 87 kt', { wind: { from: 0, speed: -1 } }],
    ['wind.from', '0 to 360 degrees', { wind: { from: 361 * degrees, speed: 5 } }],
    ['gust', '0 to 116 kt', { gust: 61 }],
    ['temperature', '-60 to 60 C', { temperature: 25 }],
    ['qnh', '850 to 1100 hPa', { qnh: 1013 }],
    ['mass', '40 to 6000 kg', { mass: 39 }],
    ['height', '200 to 4920 ft', { height: 59 }],
    ['spacing', '50 to 5000 m', { spacing: 49 }],
    ['bank', '5 to 60 degrees', { bank: 4 * degrees }],
    ['bank', '5 to 60 degrees', { bank: 30 }],
    ['airfield.elevation', '-500 to 5000 m', { airfield: { ...airfield, elevation: 5001 } }],
    ['airfield.windExponent', '0 to 0.6', { airfield: { ...airfield, windExponent: 0.7 } }],
    ['airfield.windVeer', '-90 to 90 degrees', { airfield: { ...airfield, windVeer: 1.6 } }],
    ['runway.heading', '0 to 360 degrees', { runway: { ...runway, heading: 238 } }],
    ['runway.length', '50 to 5000 m', { runway: { ...runway, length: 49 } }],
    ['aircraft.wing.span', '3 to 40 m', { aircraft: { ...aircraft, wing: { span: 2, aboveWheels: 2 } } }],
    [
      'aircraft.glide.idle.ratio',
      '1 to 60',
      { aircraft: { ...aircraft, glide: { idle: { speed: 20, ratio: 61 } } } },
    ],
    [
      'aircraft.roundOut.loadFactor',
      '1.02 to 3',
      { aircraft: { ...aircraft, roundOut: { height: 4, loadFactor: 1 } } },
    ],
  ];

  it.each(cases)('%s must be %s', (field, range, changes) => {
    const error = errorOf(changes);
    expect(error.field).toBe(field);
    expect(saying(error)).toContain(range);
  });

  it.each(['gust', 'temperature', 'qnh', 'mass', 'height', 'spacing', 'bank'] as const)(
    'not a number is no %s',
    (field) => expect(errorOf({ [field]: Number.NaN }).field).toBe(field),
  );
});

describe('a request that contradicts itself is refused', () => {
  it('a bank over the limit of the aircraft, with the limit', () => {
    const limited = { ...aircraft, turns: { ...aircraft.turns, limit: 40 * degrees } };
    const error = errorOf({ aircraft: limited, bank: 41 * degrees });
    expect(error.field).toBe('bank');
    expect(saying(error)).toContain('40 degrees');
    const limit = (angle: number) => ({ ...aircraft, turns: { ...aircraft.turns, limit: angle * degrees } });
    expect(saying(errorOf({ aircraft: limit(40.6), bank: 50 * degrees }))).toContain('limit of 40 degrees');
    const near = saying(errorOf({ aircraft: limit(40.2), bank: 40.4 * degrees }));
    expect(near).toMatch(/bank of 40\.4 degrees .* limit of 40\.2 degrees$/);
  });

  it('gusts that are less than the wind, and takes those that are as much', () => {
    const wind = { from: 0, speed: 6 };
    const error = errorOf({ wind, gust: 5.9 });
    expect(error.field).toBe('gust');
    expect(saying(error)).toMatch(/of 11\skt .*of 12\skt/);
    for (const gust of [6, 9]) expect(resolveRequest({ ...request, wind, gust }).flown.gust).toBe(gust);
  });

  it('speeds that do not rise from stall to touchdown to approach', () => {
    const speeds = { stall: 20, touchdown: 18, approach: 23 };
    expect(errorOf({ aircraft: { ...aircraft, speeds } }).field).toBe('aircraft.speeds');
  });

  it('a steep approach at no more than the stall speed', () => {
    const steep = { ...aircraft, steepApproach: { speed: aircraft.speeds.stall, ratio: 4 } };
    expect(errorOf({ aircraft: steep }).field).toBe('aircraft.steepApproach');
  });

  it('the engine stopped, of an aircraft without that glide, with the line to add', () => {
    const error = errorOf({
      power: 'stopped',
      aircraft: { ...aircraft, glide: { idle: aircraft.glide.idle } },
    });
    expect(error.field).toBe('power');
    expect(saying(error)).toContain('glide.stopped');
  });

  it('a profile of layers without one, or with heights that do not rise', () => {
    expect(errorOf({ windProfile: 'layers' }).field).toBe('windLayers');
    const layers = [100, 100].map((height) => ({ height, from: 0, speed: 5 }));
    expect(errorOf({ windLayers: layers }).field).toBe('windLayers');
  });
});

describe('what a request leaves out', () => {
  it("takes the aircraft's figures, and the airfield's pattern where the aircraft has none", () => {
    const { flown } = resolveRequest(request);
    expect(flown.mass).toBe(aircraft.mass.flown);
    expect(flown.bank).toBe(aircraft.turns.bank);
    expect(flown.height).toBe(airfield.pattern.height);
    expect(flown.windProfile).toBe('power');
    expect(resolveRequest(requestFor('withy')).flown.spacing).toBe(
      requestFor('withy').aircraft.pattern!.spacing,
    );
  });

  it('brings every speed to the flown mass', () => {
    const { flown } = resolveRequest({ ...request, mass: aircraft.mass.reference * 0.81 });
    expect(flown.stallSpeed).toBeCloseTo(0.9 * aircraft.speeds.stall, 9);
    expect(flown.touchdownSpeed).toBeCloseTo(0.9 * aircraft.speeds.touchdown, 9);
    expect(flown.approachSpeed).toBeCloseTo(0.9 * aircraft.speeds.approach, 9);
    expect(flown.glideSpeed).toBeCloseTo(0.9 * resolveAircraft(aircraft).glide.idle.speed, 9);
  });
});
