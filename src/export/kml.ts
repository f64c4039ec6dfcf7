import { toXml } from 'xast-util-to-xml';
import { x } from 'xastscript';
import type { AirPoint, PlacedFlight } from './placed-flight.ts';

/** KML 2.2 (OGC 07-147r2): heights are absolute, above mean sea level; the reach lies on the ground. */
export function toKml({ name, description, grade, keys, track, reach, reachName }: PlacedFlight): string {
  const inAir = ({ longitude, latitude, altitude }: AirPoint) => `${longitude},${latitude},${altitude}`;
  const absolute = x('altitudeMode', 'absolute');
  const placemark = (called: string, geometry: ReturnType<typeof x>) =>
    x('Placemark', [x('name', called), x('description', description), geometry]);
  const ring = reach.map(({ longitude, latitude }) => `${longitude},${latitude}`).join(' ');
  const document = x('Document', [
    x('name', name),
    x('description', description),
    x('ExtendedData', [x('Data', { name: 'grade' }, [x('value', grade)])]),
    ...keys.map((key) => placemark(key.name, x('Point', [absolute, x('coordinates', inAir(key))]))),
    placemark(name, x('LineString', [absolute, x('coordinates', track.map(inAir).join(' '))])),
    placemark(
      reachName,
      x('Polygon', [
        x('altitudeMode', 'clampToGround'),
        x('outerBoundaryIs', [x('LinearRing', [x('coordinates', ring)])]),
      ]),
    ),
  ]);
  const root = x(null, [
    { type: 'instruction', name: 'xml', value: 'version="1.0" encoding="UTF-8"' },
    x('kml', { xmlns: 'http://www.opengis.net/kml/2.2' }, [document]),
  ]);
  return `${toXml(root)}\n`;
}
