import { describe, expect, it } from 'vitest';
import { requestFor as requestOf, windOffRunway } from '../../../tests/flight-school.ts';
import { planApproach } from '../../flight/plan/planner.ts';
import type { PlanRequest } from '../../flight/terms/plan.ts';
import { canMoveWind, dialsOf, isSame, printedSetting, requestFor } from './study-setting.ts';

const feet = { height: 'ft', distance: 'm', speed: 'kt' } as const;
const metric = { height: 'm', distance: 'm', speed: 'km/h' } as const;

function printed(change: Partial<PlanRequest> = {}) {
  const request = requestOf('osier', { approach: '180', wind: windOffRunway(-28, 12), ...change });
  return { request, plan: planApproach(request) };
}

describe('the dials of a packet', () => {
  it('stand where the packet was printed, and can be moved both ways from there', () => {
    const flight = printed({ wind: { from: (213 * Math.PI) / 180, speed: 12.4 * (1852 / 3600) } });
    const { direction, speed, height } = dialsOf(flight, feet);
    expect(direction).toMatchObject({ printed: 213, least: 3, most: 353, step: 10 });
    expect(speed).toMatchObject({ printed: 12, least: 0, step: 1, unit: 'kt' });
    expect(height.label).toBe('Height at the downwind key');
    expect((height.printed - height.least) % height.stride).toBe(0);
    for (const { printed: at, least, most } of [direction, speed, height]) {
      expect(least).toBeLessThan(at);
      expect(most).toBeGreaterThan(at);
    }
  });

  it('are in the units of the school', () => {
    const { speed, height } = dialsOf(printed(), metric);
    expect([speed.unit, speed.printed]).toEqual(['km/h', 22]);
    expect([height.unit, height.step]).toEqual(['m', 5]);
  });

  it('call north 360, as the pages do', () => {
    const { direction } = dialsOf(printed({ wind: { from: 0, speed: 2 } }), feet);
    expect(direction).toMatchObject({ printed: 360, least: 10, most: 360 });
  });
});

describe('the request for a setting', () => {
  it('is the printed one to the last digit where nothing was moved', () => {
    const flight = printed({ wind: { from: 3.7201, speed: 6.3021 } });
    const dials = dialsOf(flight, feet);
    const home = printedSetting(dials, flight.request);
    expect(isSame(home, { ...home })).toBe(true);
    expect(requestFor(home, flight.request, dials, feet)).toEqual(flight.request);
  });

  it('has what was moved in SI and radians, and nothing else changed', () => {
    const flight = printed({ wind: { from: 3.7201, speed: 6.3021 } });
    const dials = dialsOf(flight, feet);
    const home = printedSetting(dials, flight.request);
    const moved = requestFor({ ...home, speed: 20, height: 800 }, flight.request, dials, feet);
    // International foot and nautical mile.
    expect(moved.wind.speed).toBeCloseTo((20 * 1852) / 3600, 12);
    expect(moved.height).toBeCloseTo(800 * 0.3048, 12);
    expect(moved.wind.from).toBe(3.7201);
    expect(requestFor({ ...home, direction: 360 }, flight.request, dials, feet).wind.from).toBe(0);
    expect({ ...moved, wind: flight.request.wind, height: flight.request.height }).toEqual(flight.request);
  });

  it('keeps gusts as far over the wind as they were: they do not fall out unseen', () => {
    const flight = printed({ gust: 9 });
    const dials = dialsOf(flight, feet);
    const home = printedSetting(dials, flight.request);
    const moved = requestFor({ ...home, speed: 0 }, flight.request, dials, feet);
    expect(moved.gust).toBeCloseTo(9 - flight.request.wind.speed, 12);
  });

  it('has the wind of the packet where it is given for each height', () => {
    expect(canMoveWind(printed().request)).toBe(true);
    expect(canMoveWind({ ...printed().request, windProfile: 'layers' })).toBe(false);
  });
});
