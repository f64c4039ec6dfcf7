import type { AirPoint, PlacedFlight } from './placed-flight.ts';

/**
 * GeoJSON (RFC 7946): WGS-84 longitude, latitude, metres. The third figure is above mean sea level, and the file says
 * so.
 */
export function toGeoJson(flight: PlacedFlight): string {
  const { name, description, grade, keys, track, reach, reachName, elevation } = flight;
  const inAir = ({ longitude, latitude, altitude }: AirPoint) => [longitude, latitude, altitude];
  const feature = (called: string, geometry: object, more: object = {}) => ({
    type: 'Feature',
    properties: { name: called, description, heights: 'm above mean sea level', grade, ...more },
    geometry,
  });
  const ring = reach.map((point) => inAir({ ...point, altitude: elevation }));
  return `${JSON.stringify({
    type: 'FeatureCollection',
    name,
    description,
    features: [
      ...keys.map((key) =>
        feature(
          key.name,
          { type: 'Point', coordinates: inAir(key) },
          { heightAboveSpot: key.heightAboveSpot },
        ),
      ),
      feature(name, { type: 'LineString', coordinates: track.map(inAir) }),
      feature(reachName, { type: 'Polygon', coordinates: [ring] }),
    ],
  })}\n`;
}
