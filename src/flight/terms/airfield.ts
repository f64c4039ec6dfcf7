import type { Pattern } from './aircraft.ts';

/** An airfield as the core uses it. SI units and radians; directions are true. */
export interface Airfield {
  readonly name: string;
  readonly source: string;
  /** m above mean sea level. */
  readonly elevation: number;
  /** Magnetic variation, rad, east positive; undefined where the airfield gives none. */
  readonly variation?: number | undefined;
  /** Exponent of the power-law wind profile. */
  readonly windExponent: number;
  /** rad: how far the wind of that profile turns clockwise from 10 m up to 1,000 ft; left out, it does not. */
  readonly windVeer?: number | undefined;
  readonly pattern: Pattern;
  readonly runways: readonly Runway[];
}

export interface Runway {
  readonly name: string;
  /** Landing direction, rad true. */
  readonly heading: number;
  /** m. */
  readonly length: number;
  readonly width: number;
  readonly surface: string;
  readonly circuit: Circuit;
  /** m from the runway's landing end to the spot where the wheels are meant to touch. */
  readonly spot: number;
  readonly obstacles: readonly Obstacle[];
}

export type Circuit = 'left' | 'right';

/** Something to stay clear of. Placed in the spot frame (m); `width` is its extent across the landing direction. */
export interface Obstacle {
  readonly what: string;
  readonly height: number;
  readonly along: number;
  readonly across: number;
  readonly width: number;
}
