import { execFile } from 'node:child_process';
import { mkdtemp, readFile, rm, writeFile } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { check } from '@placemarkio/check-geojson';
import { gpx, kml } from '@tmcw/togeojson';
import { DOMParser } from '@xmldom/xmldom';
import geodesic from 'geographiclib-geodesic';
import type { FeatureCollection, LineString, Point, Polygon } from 'geojson';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';

// Readers from outside the project read the files back, and Karney's geodesics (GeographicLib: Algorithms for geodesics,
// Journal of Geodesy 87, 2013) measure on the ellipsoid what the plan says in metres.

const root = new URL('..', import.meta.url).pathname;
const fallowReach = 'lessons/airfields/fallow-reach.yaml';
const caution = 'Training material, not for navigation';

interface Ran {
  readonly code: number;
  readonly out: string;
  readonly err: string;
}

function run(command: string, more: readonly string[] = [], airfield = fallowReach, wind = '210/12kt') {
  const asked = [
    ...['--aircraft', 'lessons/fleet/osier-15.yaml', '--airfield', airfield],
    ...['--runway', '24', '--approach', '180', '--wind', wind, ...more],
  ];
  return new Promise<Ran>((resolve) => {
    execFile(
      process.execPath,
      ['src/cli/chalkwing.js', command, ...asked],
      { cwd: root, maxBuffer: 1 << 26 },
      (error, out, err) => resolve({ code: error ? Number(error.code) : 0, out, err }),
    );
  });
}

const xml = (text: string) => new DOMParser().parseFromString(text, 'text/xml') as unknown as Document;
const readers = {
  geojson: (text: string) => check(text) as FeatureCollection,
  kml: (text: string) => kml(xml(text)) as FeatureCollection,
  gpx: (text: string) => gpx(xml(text)) as FeatureCollection,
};
type Format = keyof typeof readers;

let folder: string;
// biome-ignore lint/suspicious/noExplicitAny: this is what came out of another program
let plan: any;
const files = new Map<Format, string>();
beforeAll(async () => {
  folder = await mkdtemp(join(tmpdir(), 'chalkwing-export-'));
  plan = JSON.parse((await run('plan', ['--json'])).out);
  for (const format of ['geojson', 'kml', 'gpx'] as const) {
    const out = join(folder, `flight.${format}`);
    const ran = await run('export', ['--format', format, '--out', out]);
    expect(ran).toEqual({ code: 0, out: '', err: '' });
    files.set(format, await readFile(out, 'utf8'));
  }
});
afterAll(() => rm(folder, { recursive: true }));

describe.each(['geojson', 'kml', 'gpx'] as const)('an approach exported as %s', (format) => {
  const collection = () => readers[format](files.get(format)!);
  const points = () => collection().features.filter(({ geometry }) => geometry?.type === 'Point');
  const lines = () => collection().features.filter(({ geometry }) => geometry?.type === 'LineString');
  const coordinates = (index: number) => (points()[index]!.geometry as Point).coordinates;

  it('holds every key position by its name, and every sample of the track', () => {
    expect(points().map(({ properties }) => properties?.name)).toEqual(
      plan.keys.map(({ label }: { label: string }) => label),
    );
    expect((lines()[0]!.geometry as LineString).coordinates).toHaveLength(plan.track.length);
  });

  it('says in every feature that it is not for navigation, and that its data is invented', () => {
    const told = format === 'gpx' ? 'desc' : 'description';
    for (const { properties } of collection().features) {
      expect(properties?.[told]).toContain(`${caution}.`);
      expect(properties?.[told]).toContain('Invented for the demonstration');
    }
    expect(lines()[0]!.properties?.name).toContain(caution);
  });

  it('gives heights above mean sea level: those above the spot, and the 310 ft of the field', () => {
    for (const [index, { height }] of plan.keys.entries()) {
      expect(coordinates(index)[2]).toBeCloseTo(height + 310 * 0.3048, 3);
    }
  });

  it('places the keys as far apart, and in the direction, as flown: within 0.1 % by the geodesic', () => {
    const last = plan.keys.length - 1;
    const spot = coordinates(last);
    for (let index = 0; index < last; index += 1) {
      const along = plan.keys[index].along - plan.keys[last].along;
      const across = plan.keys[index].across - plan.keys[last].across;
      const there = coordinates(index);
      const { s12, azi1 } = geodesic.Geodesic.WGS84.Inverse(spot[1]!, spot[0]!, there[1]!, there[0]!);
      const distance = Math.hypot(along, across);
      expect(Math.abs(s12! / distance - 1)).toBeLessThan(0.001);
      const turn = azi1! - 238 - (Math.atan2(across, along) * 180) / Math.PI;
      expect(Math.abs(Math.sin((turn * Math.PI) / 180))).toBeLessThan(0.001);
      expect(Math.cos((turn * Math.PI) / 180)).toBeGreaterThan(0);
    }
  });

  it('closes the reach, counterclockwise, round the downwind key that it is of', () => {
    const shape = collection().features.findLast(({ geometry }) => geometry.type !== 'Point')!.geometry as
      | Polygon
      | LineString;
    const ring = shape.type === 'Polygon' ? shape.coordinates[0]! : shape.coordinates;
    expect(ring.at(-1)).toEqual(ring[0]);
    const [x, y] = coordinates(0) as [number, number];
    let turned = 0;
    for (const [index, [longitude, latitude]] of ring.slice(0, -1).entries()) {
      const [nextLongitude, nextLatitude] = ring[index + 1]!;
      const a = Math.atan2(latitude! - y, longitude! - x);
      const step = Math.atan2(nextLatitude! - y, nextLongitude! - x) - a;
      turned += Math.atan2(Math.sin(step), Math.cos(step));
    }
    expect(turned).toBeCloseTo(2 * Math.PI, 6);
  });
});

describe('the grade of a plan', () => {
  it('stands in every file, and in its words where a limit is passed', async () => {
    for (const [format, text] of files) {
      expect(text, format).toMatch(
        /"grade":"sound"|<Data name="grade"><value>sound<|<keywords>grade: sound</,
      );
      expect(text, format).not.toContain('beyond a limit');
    }
    const ran = await run('export', ['--format', 'geojson', '--bank', '46deg']);
    expect(ran.code).toBe(0);
    for (const { properties } of readers.geojson(ran.out).features) {
      expect(properties?.grade).toBe('beyond-good-practice');
      expect(properties?.description).toMatch(/Beyond a limit of good practice: .*46/);
    }
    expect(JSON.parse(ran.out).name).toMatch(
      /^Training material, not for navigation, beyond a limit of good practice: /,
    );
  });

  it('writes nothing of a plan that is not to be flown: exit code 3, and what is wrong', async () => {
    const out = join(folder, 'never.geojson');
    const ran = await run('export', ['--format', 'geojson', '--out', out], fallowReach, '330/14kt');
    expect(ran).toMatchObject({ code: 3, out: '' });
    expect(ran.err).toMatch(
      /^Osier 15, .*: not to be flown\. .*The crosswind is 14.kt.* Nothing is written\.\n$/,
    );
    await expect(readFile(out)).rejects.toThrow('ENOENT');
  });
});

describe('an export that can not be', () => {
  it('says what to type where the airfield has no position', async () => {
    const text = await readFile(join(root, fallowReach), 'utf8');
    const airfield = join(folder, 'nowhere.yaml');
    await writeFile(airfield, text.replace(/^position:.*\n/m, ''));
    const ran = await run('export', ['--format', 'kml'], airfield);
    expect(ran.code).toBe(2);
    expect(ran.out).toBe('');
    expect(ran.err).toContain('position: { latitude: 51.2 deg N, longitude: 1.5 deg W }');
  });

  it('writes nothing of an approach that does not reach the spot', async () => {
    const ran = await run('export', ['--format', 'gpx', '--height', '300ft']);
    expect(ran).toMatchObject({ code: 3, out: '' });
    expect(ran.err).toMatch(/: not to be flown\. .*The spot cannot be made.* Nothing is written\.\n$/);
  });
});
