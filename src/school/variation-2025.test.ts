import { readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { variationAt } from './variation.ts';

interface Row {
  readonly date: number;
  readonly h_km: number;
  readonly lat: number;
  readonly lon: number;
  readonly D_deg: number;
}
const { source, rows }: { source: string; rows: readonly Row[] } = JSON.parse(
  readFileSync(new URL('../../tests/reference/wmm2025.json', import.meta.url), 'utf8'),
);
const degree = Math.PI / 180;
/** The test values are printed to 0.01 degree. */
const halfPlace = 0.005 + 1e-9;
/** The first instant of each decimal year in the table. */
const days: Readonly<Record<number, string>> = {
  2025: '2025-01-01T00:00:00Z',
  2027.5: '2027-07-02T12:00:00Z',
};

/** The model used for today's flights; the one before it is checked in `variation.test.ts`. */
describe(`variation by the newest model, against ${source}`, () => {
  it('has the twelve rows of the table to try', () => expect(rows).toHaveLength(12));
  it.each(rows)('$date at $lat $lon, $h_km km: $D_deg', ({ date, h_km, lat, lon, D_deg }) => {
    // The table counts longitude up to 360 degrees, an airfield file up to 180 on either side.
    const east = lon > 180 ? lon - 360 : lon;
    const variation = variationAt({
      latitude: lat * degree,
      longitude: east * degree,
      elevation: h_km * 1000,
      date: new Date(days[date] ?? Number.NaN),
    });
    expect(Math.abs(variation / degree - D_deg)).toBeLessThanOrEqual(halfPlace);
  });
});
