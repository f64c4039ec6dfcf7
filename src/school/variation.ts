import geomagnetism from 'geomagnetism';
import { radiansPerDegree } from '../units/factors.ts';

/** A place and a day. */
export interface PlaceAndDay {
  /** rad, north positive. */
  readonly latitude: number;
  /** rad, east positive. */
  readonly longitude: number;
  /** m above mean sea level. The model asks for height above the ellipsoid; the 100 m between them make no difference. */
  readonly elevation: number;
  readonly date: Date;
}

/** The day that variation is worked out for where none is asked for: about the middle of the newest model's five years. */
export const usualDay = new Date('2027-05-15T00:00:00Z');

/** A day that the oldest model covers. */
const firstModelDay = new Date('2015-01-01T00:00:00Z');

/**
 * nT. Where the horizontal field is weaker than this, the model's own makers trust neither its variation nor a
 * compass: the blackout zones around the magnetic poles (The US/UK World Magnetic Model for 2020-2025, technical
 * report; figure from memory).
 */
const blackout = 2000;

/**
 * Magnetic variation by the World Magnetic Model, rad, east positive. The models here cover 15 December 2014 to
 * 13 November 2029.
 * @throws RangeError outside these days, for a place that is not on Earth, for an elevation outside -1 to 850 km, and
 * in the blackout zones.
 */
export function variationAt({ latitude, longitude, elevation, date }: PlaceAndDay): number {
  const degrees = [latitude / radiansPerDegree, longitude / radiansPerDegree] as const;
  if (!(Math.abs(degrees[0]) <= 90 + 1e-9)) throw new RangeError('a latitude is at most 90 degrees');
  if (!(Math.abs(degrees[1]) <= 180 + 1e-9)) throw new RangeError('a longitude is at most 180 degrees');
  if (!(elevation >= -1000 && elevation <= 850_000)) {
    throw new RangeError('the magnetic model holds from 1 km below to 850 km above the sea');
  }
  const { decl, h } = modelOf(date).point([...degrees, elevation / 1000]);
  if (!(h >= blackout)) throw new RangeError('no magnetic model can be trusted so near a magnetic pole');
  return decl * radiansPerDegree;
}

function modelOf(date: Date): ReturnType<typeof geomagnetism.model> {
  // The library computes on even with a date that is not one.
  if (Number.isNaN(date.getTime())) throw new RangeError('the magnetic model needs a day');
  try {
    return geomagnetism.model(date);
  } catch {
    const first = written(geomagnetism.model(firstModelDay).start_date);
    const last = written(geomagnetism.model(usualDay).end_date);
    throw new RangeError(`the magnetic models cover ${first} to ${last}, not ${written(date)}`);
  }
}

function written(date: Date): string {
  return date.toISOString().slice(0, 10);
}
