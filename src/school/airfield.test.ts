import { VFile } from 'vfile';
import { describe, expect, it } from 'vitest';
import type { Airfield } from '../flight/terms/airfield.ts';
import { type AirfieldFile, parseAirfield } from './airfield.ts';

const good = `name: Fallow Reach
source: Invented for this test.
elevation: 310 ft
variation: 2 deg W
pattern: { height: 1000 ft, spacing: 500 m }
runways:
  - name: "24"
    heading: 238 deg
    length: 520 m
    width: 25 m
    surface: grass
    circuit: left
    spot: 100 m
    obstacles: [{ what: hedge, height: 12 ft, along: −140 m, across: 0 m, width: 60 m }]
  - { name: 06, heading: 58 deg, length: 520 m, width: 25 m, surface: grass, circuit: right, spot: 100 m }
`;

function read(text: string): { value: AirfieldFile | undefined; found: string[] } {
  const file = new VFile({ path: 'fallow.yaml', value: text });
  const value = parseAirfield(file);
  return {
    value,
    found: file.messages.map((message) => `${message.line}:${message.column} ${message.reason}`),
  };
}

function changed(from: string, to: string): string[] {
  expect(good).toContain(from);
  return read(good.replace(from, to)).found;
}

describe('a good airfield file', () => {
  const { value, found } = read(good);
  it('is read in SI, west negative, with the default wind exponent', () => {
    expect(found).toEqual([]);
    expect(value?.elevation).toBeCloseTo(94.488, 10);
    expect(value?.variation).toBeCloseTo((-2 * Math.PI) / 180, 12);
    expect(value?.windExponent).toBe(1 / 7);
    expect(value?.runways[0]?.heading).toBeCloseTo((238 * Math.PI) / 180, 12);
    expect(value?.runways[0]?.obstacles[0]?.along).toBe(-140);
    expect(value?.runways[1]?.obstacles).toEqual([]);
    expect(value?.rules).toEqual([]);
    expect(value?.fields).toBeUndefined();
  });
  it('keeps a runway name as it was typed, quotes or none', () => {
    expect(value?.runways.map((runway) => runway.name)).toEqual(['24', '06']);
  });
  it('is what the flight core lands on', () => {
    const used: Airfield = value as AirfieldFile;
    expect(used.runways).toHaveLength(2);
  });
  it('may have its own wind exponent, a position, and fields to land in', () => {
    const more = `${good}wind-profile: { exponent: 0.2 }
position: { latitude: 48 deg N, longitude: 11 deg W }
fields:
  - { name: stubble, along: -600 m, across: 400 m, heading: 205 deg, length: 260 m, width: 60 m, surface: stubble }
`;
    const { value: full, found: none } = read(more);
    expect(none).toEqual([]);
    expect(full?.windExponent).toBe(0.2);
    expect(full?.position?.longitude).toBeCloseTo((-11 * Math.PI) / 180, 12);
    expect(full?.fields?.[0]?.length).toBe(260);
  });
  it('may say how far its wind turns, with the usual exponent where that is left out', () => {
    const turning = (profile: string) => read(`${good}wind-profile: ${profile}\n`);
    expect(value?.windVeer).toBeUndefined();
    const { value: veering, found: none } = turning('{ veer: 20 deg }');
    expect(none).toEqual([]);
    expect(veering?.windVeer).toBeCloseTo((20 * Math.PI) / 180, 12);
    expect(veering?.windExponent).toBe(1 / 7);
    expect(turning('{ exponent: 0.2, veer: −15 deg }').value?.windVeer).toBeCloseTo(
      (-15 * Math.PI) / 180,
      12,
    );
    expect(turning('{ veer: 20 }').found[0]).toMatch(/`veer` in `wind-profile`: `20` has no unit/);
    expect(turning('{ veer: 100 deg }').found[0]).toMatch(
      /outside what is possible here \(-90 deg to 90 deg\)/,
    );
  });
});

describe('an airfield file with a mistake', () => {
  it('may not have two runways of one name, whatever else is wrong', () => {
    const reason = 'There is a runway `24` before this one: give each its own name';
    expect(changed('name: 06', 'name: 24')).toContain(`15:13 ${reason}`);
    expect(read(good.replace('name: 06', 'name: 24').replace('310 ft', '310')).found).toEqual([
      '3:12 `elevation`: `310` has no unit: write a length such as `310 ft` (m, km, ft, NM, mi)',
      `15:13 ${reason}`,
    ]);
  });
  it('must have its spot inside the runway', () => {
    expect(changed('spot: 100 m', 'spot: 520 m')).toEqual([
      '13:11 `spot` in `runways` 1: must lie inside the runway, short of its `length`',
    ]);
  });
  it('counts runways and obstacles from one', () => {
    expect(changed('12 ft', '12')).toEqual([
      '14:40 `height` in `runways` 1, `obstacles` 1: `12` has no unit: write a length such as `12 ft` (m, km, ft, NM, mi)',
    ]);
    expect(changed(', surface: grass, circuit: right', '')).toEqual([
      '15:5 `surface` in `runways` 2 is missing: write it as `surface: grass`',
      '15:5 `circuit` in `runways` 2 is missing: write it as `circuit: left`',
    ]);
  });
  it.each([
    [
      '310 ft',
      '31,000 ft',
      '3:12 `elevation`: `31,000 ft` is outside what is possible here (-500 m to 5000 m)',
    ],
    ['2 deg W', '2 deg', '4:12 `variation`: `2 deg` does not end in E or W: write it as `2 deg W`'],
    ['238 deg', '400 deg', '8:14 `heading` in `runways` 1: `400 deg` is not between 0 and 360 degrees'],
    [
      'length: 520 m',
      'length: 20 m',
      '9:13 `length` in `runways` 1: `20 m` is outside what is possible here',
    ],
    [
      'circuit: left',
      'circuit: lft',
      '12:14 `circuit` in `runways` 1: `lft` is none of `left`, `right`; did you mean `left`?',
    ],
    ['runways:', 'runway:', '1:1 `runways` is missing'],
  ])('refuses %s changed to %s', (from, to, start) => {
    expect(changed(from, to)[0]!.slice(0, start.length)).toBe(start);
  });
  it('needs a runway', () => {
    const start = good.indexOf('runways:');
    expect(read(`${good.slice(0, start)}runways: []\n`).found[0]).toMatch(
      /^6:10 `runways`: the list needs at least 1/,
    );
  });
  it('is warned of a heading that does not go with the name, and still read', () => {
    const { value, found } = read(good.replace('238 deg', '283 deg'));
    expect(found).toEqual([
      '8:14 Runway `24` is 45° off its heading, 285° magnetic: one of `name`, `heading` (true) and `variation` is wrong',
    ]);
    expect(value).toBeDefined();
  });
});
