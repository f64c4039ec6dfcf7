import type { GroundPoint } from '../flight/flying/reach.ts';

/** Latitude and longitude in degrees, north and east positive, WGS-84. */
export interface EarthPoint {
  readonly latitude: number;
  readonly longitude: number;
}

/** Where a runway lies: its position (rad, north and east positive), its elevation (m) and its landing direction (rad true). */
export interface Ground {
  readonly latitude: number;
  readonly longitude: number;
  readonly elevation: number;
  readonly heading: number;
}

/** A place that these files cannot hold; the message says why, and what to type. */
export class UnplaceableError extends Error {
  override readonly name = 'UnplaceableError';
}

/** WGS-84's defining semi-major axis (m) and flattening: NGA.STND.0036, World Geodetic System 1984. */
const semiMajor = 6378137;
const flattening = 1 / 298.257223563;
const eccentricitySquared = flattening * (2 - flattening);

const degrees = (radians: number) => (radians * 180) / Math.PI;
/** rad. Nearer to a pole the meridians converge too fast for the flat ground used here. */
const furthestLatitude = (60 * Math.PI) / 180;

/**
 * Puts points of a flat frame (m; along the heading, and across it to the right) on to the Earth, `ground` being its
 * origin. The frame is the plane tangent at the origin; metres become angles by the radii of curvature of the
 * ellipsoid in the meridian and in the prime vertical there, at the field's elevation (Torge and Müller, Geodesy, 4th
 * edition, on the ellipsoid of revolution; from memory). The convergence of the meridians is left out: up to 10 km
 * from the origin and 60 degrees of latitude, distances from the origin are right within 0.1 % and places within 0.2
 * % of the distance. Throws `UnplaceableError` beyond that latitude, and for a place across the 180th meridian.
 */
export function placer(ground: Ground): (point: GroundPoint) => EarthPoint {
  const { latitude, longitude, elevation, heading } = ground;
  if (Math.abs(latitude) > furthestLatitude) {
    throw new UnplaceableError(
      'the airfield lies beyond 60 degrees of latitude, where these files would be too far off; print the packet instead',
    );
  }
  const root = 1 - eccentricitySquared * Math.sin(latitude) ** 2;
  const meridian = (semiMajor * (1 - eccentricitySquared)) / root ** 1.5;
  const primeVertical = semiMajor / Math.sqrt(root);
  return ({ along, across }) => {
    const north = along * Math.cos(heading) - across * Math.sin(heading);
    const east = along * Math.sin(heading) + across * Math.cos(heading);
    const placed = {
      latitude: degrees(latitude + north / (meridian + elevation)),
      longitude: degrees(longitude + east / ((primeVertical + elevation) * Math.cos(latitude))),
    };
    if (Math.abs(placed.longitude) > 180) {
      throw new UnplaceableError(
        'the flight crosses the 180th meridian, which these files do not hold; print the packet instead',
      );
    }
    return placed;
  };
}
