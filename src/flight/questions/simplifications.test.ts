import { describe, expect, it } from 'vitest';
import { requestFor, windOffRunway } from '../../../tests/flight-school.ts';
import { fieldAir } from '../air/air.ts';
import { planApproach } from '../plan/planner.ts';
import type { PlanRequest } from '../terms/plan.ts';
import {
  airMoves,
  idleRatioAt,
  type SimplificationCode,
  saturatedDensityShare,
  simplifications,
} from './simplifications.ts';

const foot = 0.3048;
const knot = 1852 / 3600;
const degree = Math.PI / 180;

/** The plan of the report that gave these sizes: Osier 15, runway 24, 210/12kt, the half-circuit approach. */
const reported = (changes: Partial<PlanRequest> = {}) =>
  requestFor('osier', { wind: { from: 210 * degree, speed: 12 * knot }, ...changes });

function feet(request: PlanRequest, code: SimplificationCode): number {
  const found = simplifications(request).find((one) => one.code === code);
  if (!found) throw new Error(`no size of ${code}`);
  expect(found.ends).toBe('on-final');
  return found.along / foot;
}

const codes = (request: PlanRequest) => simplifications(request).map(({ code }) => code);

describe('what a simplification comes to in a plan', () => {
  it('idle thrust that does not grow with the mass: about 34 ft long at 365 kg, 187 at 280', () => {
    expect(Math.abs(feet(reported({ mass: 365 }), 'idle-thrust') - 34)).toBeLessThan(4);
    expect(Math.abs(feet(reported({ mass: 280 }), 'idle-thrust') - 187)).toBeLessThan(10);
    expect(feet(reported({ mass: 430 }), 'idle-thrust')).toBeLessThan(-20);
  });

  it('has no idle thrust at the reference mass, with the engine stopped, or without the glide of a stopped engine', () => {
    const { aircraft } = reported();
    expect(codes(reported({ mass: 390 }))).not.toContain('idle-thrust');
    expect(codes(reported({ power: 'stopped' }))).not.toContain('idle-thrust');
    const glide = { idle: aircraft.glide.idle };
    expect(codes(reported({ aircraft: { ...aircraft, glide } }))).not.toContain('idle-thrust');
  });

  it('a propeller that windmills: about 420 ft short with a tenth of the idling ratio, less of the stopped one', () => {
    expect(codes(reported())).not.toContain('windmilling');
    const stopped = feet(reported({ power: 'stopped' }), 'windmilling');
    // Of 6.4:1, as it was reported; 5.7:1 goes less far, and a tenth of it is less.
    const { aircraft } = reported();
    const glide = { ...aircraft.glide, stopped: aircraft.glide.idle };
    const ofIdle = feet(reported({ power: 'stopped', aircraft: { ...aircraft, glide } }), 'windmilling');
    expect(Math.abs(ofIdle + 423)).toBeLessThan(30);
    expect(stopped / ofIdle).toBeGreaterThan(5.7 / 6.4 - 0.05);
    expect(stopped / ofIdle).toBeLessThan(1);
  });

  it('the wind gradient: about 126 ft in this headwind, 246 for Withy 80; a gain in a tailwind, none in a calm', () => {
    expect(Math.abs(feet(reported(), 'wind-gradient') + 126)).toBeLessThan(10);
    const withy = requestFor('withy', { wind: reported().wind });
    expect(Math.abs(feet(withy, 'wind-gradient') + 246)).toBeLessThan(20);
    expect(feet(requestFor('osier', { wind: windOffRunway(180, 4) }), 'wind-gradient')).toBeGreaterThan(10);
    expect(codes(requestFor('osier'))).not.toContain('wind-gradient');
    expect(codes(reported({ windProfile: 'uniform' }))).not.toContain('wind-gradient');
  });

  it('air that sinks costs in a calm what its sink costs in the time flown', () => {
    const request = requestFor('osier');
    const { track } = planApproach({ ...request, detail: 'flight' });
    const final = track.filter(({ phase }) => phase === 'final');
    const { groundspeed, sink } = final[Math.floor(final.length / 2)]!;
    const lost = (final.at(-1)!.time - track[0]!.time) * airMoves;
    // That much less height at the round-out as planned; from there back up the flown final, steeper because of the
    // same air.
    const short = (lost * groundspeed) / (sink + airMoves) / foot;
    expect(-feet(request, 'sinking-air') / short).toBeGreaterThan(0.9);
    expect(-feet(request, 'sinking-air') / short).toBeLessThan(1.1);
    const long = (lost * groundspeed) / (sink - airMoves) / foot;
    expect(feet(request, 'rising-air') / long).toBeGreaterThan(0.9);
    expect(feet(request, 'rising-air') / long).toBeLessThan(1.1);
  });

  it('a wet wing is half of a windmilling propeller', () => {
    const request = reported({ power: 'stopped' });
    const half = feet(request, 'wet-wing') / feet(request, 'windmilling');
    expect(Math.abs(half - 0.5)).toBeLessThan(0.02);
  });

  it('a wind that turns is a mirror image in a mirrored circuit, and none where the winds at height are given', () => {
    const left = reported({ wind: windOffRunway(30, 12), circuit: 'left' });
    const right = reported({ wind: windOffRunway(-30, 12), circuit: 'right' });
    const veering = feet(left, 'veering-wind');
    expect(Math.abs(veering)).toBeGreaterThan(10);
    expect(Math.abs(veering - feet(right, 'backing-wind'))).toBeLessThan(1);
    const windLayers = [{ height: 100, from: 0, speed: 5 }];
    expect(codes(reported({ windLayers }))).not.toContain('veering-wind');
    expect(codes(requestFor('osier'))).not.toContain('veering-wind');
  });

  it('a wind that turns already is turned on from there: back to none is what its veer came to', () => {
    const wind = windOffRunway(30, 12);
    const { airfield } = reported();
    const veering = reported({ wind, airfield: { ...airfield, windVeer: 20 * degree } });
    expect(codes(veering)).not.toContain('veering-wind');
    const more = feet(veering, 'wind-clockwise');
    const less = feet(veering, 'wind-anticlockwise');
    expect(Math.sign(more)).toBe(Math.sign(feet(reported({ wind }), 'veering-wind')));
    expect(Math.sign(less)).toBe(-Math.sign(more));
    expect(codes({ ...veering, windProfile: 'uniform' })).toContain('veering-wind');
  });

  it('is left out where the approach has no procedure', () => {
    const blown = requestFor('osier', { approach: '90', wind: windOffRunway(90, 38) });
    expect(planApproach(blown).solved.name).toBe('none');
    expect(simplifications(blown)).toEqual([]);
  });
});

describe('the ratio of an idling engine at another mass', () => {
  const { aircraft } = planApproach(requestFor('osier', { detail: 'flight' }));

  it('is the reciprocal of the stopped one less the thrust over the weight (by hand)', () => {
    // 1/5.7 = 0.175439, 1/6.4 = 0.15625: t = 0.019189; at 365 kg 0.020503 of the weight; 1/0.154936 = 6.4543.
    expect(idleRatioAt(aircraft, 365)).toBeCloseTo(6.4543, 3);
    expect(idleRatioAt(aircraft, 390)).toBe(6.4);
    expect(idleRatioAt(aircraft, 415)!).toBeLessThan(6.4);
  });

  it('is not known where the propeller would carry the aircraft', () => {
    // t m_ref/m is 1/E stopped at 0.10938 of the reference mass.
    expect(idleRatioAt(aircraft, 0.1095 * 390)).toBeGreaterThan(1000);
    expect(idleRatioAt(aircraft, 0.1093 * 390)).toBeUndefined();
  });
});

describe('the air that is left out', () => {
  it('saturated air at 30 °C is about 1.6 % thinner (vapour 42.4 hPa, Smithsonian tables, from memory)', () => {
    expect(saturatedDensityShare(fieldAir(0, 303.15))).toBeCloseTo(1 - (0.378 * 42.4) / 1013.25, 3);
  });
});
