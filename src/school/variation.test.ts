import { readFileSync } from 'node:fs';
import { VFile } from 'vfile';
import { describe, expect, it } from 'vitest';
import { parseAirfield } from './airfield.ts';
import { usualDay, variationAt } from './variation.ts';

interface Row {
  readonly date: number;
  readonly h_km: number;
  readonly lat: number;
  readonly lon: number;
  readonly D_deg: number;
  readonly H_nT: number;
}
const { source, rows }: { source: string; rows: readonly Row[] } = JSON.parse(
  readFileSync(new URL('../../tests/reference/wmm2020.json', import.meta.url), 'utf8'),
);
const degree = Math.PI / 180;
/** The test values are printed to 0.01 degree. */
const halfPlace = 0.005 + 1e-9;

/** All the rows are for the first of January, or half a year later. */
function day(year: number): Date {
  const from = Date.UTC(Math.floor(year), 0, 1);
  return new Date(from + (year % 1) * (Date.UTC(Math.floor(year) + 1, 0, 1) - from));
}

function modelled({ lat, lon, h_km, date }: Row): number {
  const place = { latitude: lat * degree, longitude: lon * degree, elevation: h_km * 1000 };
  return variationAt({ ...place, date: day(date) }) / degree;
}

describe(`variation by the model, against ${source}`, () => {
  it('has all hundred rows to try', () => expect(rows).toHaveLength(100));
  it.each(rows.filter(({ H_nT }) => H_nT >= 2000))('$date at $lat $lon, $h_km km: $D_deg', (row) => {
    expect(Math.abs(modelled(row) - row.D_deg)).toBeLessThanOrEqual(halfPlace);
  });
  it.each(rows.filter(({ H_nT }) => H_nT < 2000))(
    '$date at $lat $lon is too near a pole: $H_nT nT',
    (row) => {
      expect(() => modelled(row)).toThrow(RangeError);
    },
  );
});

describe('variation outside the model', () => {
  const place = { latitude: 0.8, longitude: 0.1, elevation: 100, date: usualDay };
  it('is there on the days from 2014 to 2029', () => {
    for (const date of ['2014-12-16', '2018-06-01', '2020-01-01', '2024-12-15', '2029-11-12']) {
      expect(Math.abs(variationAt({ ...place, date: new Date(date) }))).toBeLessThan(0.2);
    }
  });
  it.each(['2014-12-01', '1990-01-01', '2029-11-14', '2050-01-01', 'no day'])('is refused on %s', (date) => {
    expect(() => variationAt({ ...place, date: new Date(date) })).toThrow(RangeError);
  });
  it.each([
    { latitude: 1.6 },
    { latitude: Number.NaN },
    { longitude: 7 },
    { longitude: Number.NaN },
    { elevation: -2000 },
    { elevation: 900_000 },
    { elevation: Number.NaN },
  ])('is refused at %o', (wrong) => {
    expect(() => variationAt({ ...place, ...wrong })).toThrow(RangeError);
  });
});

describe('the variation of an airfield file', () => {
  const invented = (lines: string) => `name: Fallow Reach
source: Invented for this test.
elevation: 310 ft
${lines}
pattern: { height: 1000 ft, spacing: 500 m }
runways:
  - { name: "24", heading: 238 deg, length: 520 m, width: 25 m, surface: grass, circuit: left, spot: 100 m }
`;
  const position = 'position: { latitude: 48 deg N, longitude: 11 deg W }';
  function read(lines: string, date?: Date) {
    const file = new VFile({ path: 'fallow.yaml', value: invented(lines) });
    const value = parseAirfield(file, date);
    const found = file.messages.map(({ line, column, reason }) => `${line}:${column} ${reason}`);
    return { variation: value?.variation, read: value !== undefined, found };
  }
  const here = { latitude: 48 * degree, longitude: -11 * degree, elevation: 310 * 0.3048 };

  it('is its own, where it has one', () => {
    const { variation, found } = read(`${position}\nvariation: 2 deg W`);
    expect(variation).toBeCloseTo(-2 * degree, 12);
    expect(found).toEqual([]);
  });
  it('is that of its position otherwise, on the day asked for or the usual one', () => {
    const date = new Date('2021-03-01');
    expect(read(position, date).variation).toBeCloseTo(variationAt({ ...here, date }), 12);
    expect(read(position).variation).toBeCloseTo(variationAt({ ...here, date: usualDay }), 12);
    expect(read(position, date).variation).not.toBeCloseTo(read(position).variation!, 3);
  });
  it('is absent where it has neither', () => {
    expect(read('variation: 2 deg W').variation).toBeCloseTo(-2 * degree, 12);
    expect(read('rules: []').variation).toBeUndefined();
  });
  it('is a warning where the two differ by more than two degrees, as with the wrong side', () => {
    const { variation, read: wasRead, found } = read(`${position}\nvariation: 2 deg E`);
    expect(wasRead).toBe(true);
    expect(variation).toBeCloseTo(2 * degree, 12);
    expect(found).toEqual([
      '5:12 The magnetic model gives 2° W at this position: one of `variation` and `position` is wrong',
    ]);
    expect(read(`${position}\nvariation: 3.9 deg W`).found).toEqual([]);
    expect(read(`${position}\nvariation: 4.1 deg W`).found).toHaveLength(1);
  });
  it('is a warning where the model does not cover the day, and the airfield is read without', () => {
    const { variation, read: wasRead, found } = read(position, new Date('2040-01-01'));
    expect(wasRead).toBe(true);
    expect(variation).toBeUndefined();
    expect(found[0]).toMatch(
      /^4:11 There is no magnetic variation .* 2029-11-13, not 2040-01-01; .*write it as `variation: 2 deg W`/,
    );
    expect(read(`${position}\nvariation: 2 deg W`, new Date('2040-01-01')).found).toEqual([]);
  });
  it('goes into the check of the runway names', () => {
    const far = read('position: { latitude: 60 deg S, longitude: 130 deg E }');
    expect(far.found[0]).toMatch(/Runway `24` is \d+° off its heading/);
  });
});
