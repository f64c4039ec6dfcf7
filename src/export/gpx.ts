import { toXml } from 'xast-util-to-xml';
import { x } from 'xastscript';
import type { AirPoint, PlacedFlight } from './placed-flight.ts';

/**
 * GPX 1.1: key positions as waypoints, the flight and the outline of the reach as tracks. `ele` is in m above mean sea
 * level. No time of day: the flight is on paper.
 */
export function toGpx(flight: PlacedFlight): string {
  const { name, description, grade, keys, track, reach, reachName, elevation } = flight;
  const point = (element: string, { latitude, longitude, altitude }: AirPoint, called?: string) =>
    x(element, { lat: String(latitude), lon: String(longitude) }, [
      x('ele', String(altitude)),
      ...(called === undefined ? [] : [x('name', called), x('desc', description)]),
    ]);
  const line = (called: string, points: readonly AirPoint[]) =>
    x('trk', [
      x('name', called),
      x('desc', description),
      x(
        'trkseg',
        points.map((each) => point('trkpt', each)),
      ),
    ]);
  const root = x(null, [
    { type: 'instruction', name: 'xml', value: 'version="1.0" encoding="UTF-8"' },
    x('gpx', { version: '1.1', creator: 'Chalkwing', xmlns: 'http://www.topografix.com/GPX/1/1' }, [
      x('metadata', [x('name', name), x('desc', description), x('keywords', `grade: ${grade}`)]),
      ...keys.map((key) => point('wpt', key, key.name)),
      line(name, track),
      line(
        reachName,
        reach.map((each) => ({ ...each, altitude: elevation })),
      ),
    ]),
  ]);
  return `${toXml(root)}\n`;
}
