import { describe, expect, it } from 'vitest';
import { sampleRequest } from '../../../tests/press-sample.ts';
import { planApproach } from '../../flight/plan/planner.ts';
import { settingOf } from './setting.ts';

const inFeet = { height: 'ft', distance: 'ft', speed: 'kt' } as const;
const inMetres = { height: 'm', distance: 'm', speed: 'km/h' } as const;

function windDetail(veer: number | undefined, units: typeof inFeet | typeof inMetres, changes = {}) {
  const windVeer = veer && (veer * Math.PI) / 180;
  const airfield = { ...sampleRequest.airfield, windVeer };
  const plan = planApproach({ ...sampleRequest, airfield, detail: 'flight', ...changes });
  return settingOf(plan, units)
    .find(({ label }) => label === 'Wind at 10 m')!
    .detail.replaceAll('\u00a0', ' ');
}

describe('the wind of a setting', () => {
  it('says how far it turns with height, which way and up to where, in the units of the page', () => {
    const stronger = 'stronger with height, by the power law';
    expect(windDetail(20, inFeet)).toBe(`${stronger}, turning 20° clockwise up to 1,000 ft; direction true`);
    expect(windDetail(-15, inMetres)).toBe(
      `${stronger}, turning 15° anticlockwise up to 305 m; direction true`,
    );
    expect(windDetail(undefined, inFeet)).toBe(`${stronger}; direction true`);
  });

  it('says nothing of it where the profile or a calm does not turn', () => {
    expect(windDetail(20, inFeet, { windProfile: 'uniform' })).not.toContain('turning');
    expect(windDetail(20, inFeet, { wind: { from: 0, speed: 0 } })).toBe('at every height');
  });
});
