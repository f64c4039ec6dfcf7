import geodesic from 'geographiclib-geodesic';
import { describe, expect, it } from 'vitest';
import { placer, UnplaceableError } from './on-earth.ts';

const radians = (degrees: number) => (degrees * Math.PI) / 180;
const ground = (latitude: number, longitude = -11) => ({
  latitude: radians(latitude),
  longitude: radians(longitude),
  elevation: 0,
  heading: radians(238),
});

// Karney, Algorithms for geodesics, Journal of Geodesy 87 (2013), as GeographicLib computes them.
describe('a point of the flat frame on the Earth', () => {
  it.each([0, 30, -48, 60])(
    'lies within the stated bounds of the geodesic, up to 10 km, at latitude %d',
    (latitude) => {
      const place = placer(ground(latitude));
      for (const distance of [100, 1000, 10_000]) {
        for (let bearing = 0; bearing < 360; bearing += 15) {
          const angle = radians(bearing);
          const point = place({ along: distance * Math.cos(angle), across: distance * Math.sin(angle) });
          const solved = geodesic.Geodesic.WGS84.Inverse(latitude, -11, point.latitude, point.longitude);
          const exact = geodesic.Geodesic.WGS84.Direct(latitude, -11, 238 + bearing, distance);
          const off = geodesic.Geodesic.WGS84.Inverse(
            exact.lat2!,
            exact.lon2!,
            point.latitude,
            point.longitude,
          );
          expect(Math.abs(solved.s12! / distance - 1)).toBeLessThan(0.001);
          expect(off.s12! / distance).toBeLessThan(0.002);
        }
      }
    },
  );

  it('is refused beyond 60 degrees of latitude and across the 180th meridian', () => {
    expect(() => placer(ground(61))).toThrow(UnplaceableError);
    const place = placer({ ...ground(10, 179.999), heading: radians(90) });
    expect(() => place({ along: 1000, across: 0 })).toThrow(/180th meridian/);
  });
});
