import {
  crosswind,
  drift,
  headwind,
  stillAir,
  surfaceWindHeight,
  windField,
  windTriangle,
} from '../flight/air/wind.ts';
import { radiansPerDegree as degree } from '../units/factors.ts';
import { invert } from './invert.ts';
import { input, type Published } from './published.ts';
import type { Topic } from './topic.ts';

/** `140/25`, or `045/30`, as a wind in the row's own speed unit. */
function windOf(row: Published, key = 'wind'): { from: number; speed: number } {
  const [from, speed] = String((row.inputs as Record<string, string>)[key]).split('/');
  return { from: Number(from) * degree, speed: Number(speed) };
}

const compass = (angle: number) => (((angle / degree) % 360) + 360) % 360;
/** The difference of two directions, rad, -pi to pi. */
const between = (a: number, b: number) => Math.atan2(Math.sin(a - b), Math.cos(a - b));

/** The airspeed that gives a groundspeed on a course in a wind; all in the row's unit of speed. */
function airspeedFor(row: Published): number {
  const north = drift(windOf(row), 0);
  const course = input(row, 'C') * degree;
  return invert((speed) => windTriangle(course, speed, north).groundspeed, input(row, 'GS'), 60, 500);
}

function headingFor(row: Published): number {
  return compass(windTriangle(input(row, 'C') * degree, airspeedFor(row), drift(windOf(row), 0)).heading);
}

/** The course made good on a heading, found by trying courses. */
function courseOf(row: Published): number {
  const north = drift(windOf(row, 'wind_mph'), 0);
  const heading = input(row, 'TH') * degree;
  const headingOn = (course: number) =>
    between(windTriangle(course, input(row, 'AS_mph'), north).heading, heading);
  return invert(headingOn, 0, heading - 1, heading + 1);
}

/** The wind that explains heading, airspeed, track and groundspeed, by Newton's method on the wind triangle. */
function windFromDrift(row: Published): { from: number; speed: number } {
  const miss = (along: number, across: number) => {
    const { heading, groundspeed } = windTriangle(input(row, 'track') * degree, input(row, 'TAS'), {
      along,
      across,
    });
    return [between(heading, input(row, 'TH') * degree), groundspeed - input(row, 'GS')] as const;
  };
  let [along, across] = [1, 1];
  for (let i = 0; i < 50; i++) {
    const [f, g] = miss(along, across);
    const [fx, gx] = miss(along + 1e-4, across).map((v, k) => (v - [f, g][k]!) / 1e-4) as [number, number];
    const [fy, gy] = miss(along, across + 1e-4).map((v, k) => (v - [f, g][k]!) / 1e-4) as [number, number];
    const determinant = fx * gy - fy * gx;
    along -= (f * gy - g * fy) / determinant;
    across -= (g * fx - f * gx) / determinant;
  }
  return { from: Math.atan2(-across, -along), speed: Math.hypot(along, across) };
}

export const windComponents: Topic = {
  heading: 'Wind components',
  rowTopics: ['4_wind'],
  quantities: {
    headwind: (row) => headwind(windOf(row), input(row, 'rwy_deg') * degree),
    crosswind: (row) => Math.abs(crosswind(windOf(row), input(row, 'rwy_deg') * degree)),
  },
};

export const windTriangles: Topic = {
  heading: 'The wind triangle',
  rowTopics: ['4_wind'],
  quantities: {
    groundspeed: (row) =>
      typeof row.inputs === 'object' && 'TC' in row.inputs
        ? windTriangle(input(row, 'TC') * degree, input(row, 'TAS'), drift(windOf(row), 0)).groundspeed
        : windTriangle(courseOf(row), input(row, 'AS_mph'), drift(windOf(row, 'wind_mph'), 0)).groundspeed,
    'true heading': (row) =>
      compass(windTriangle(input(row, 'TC') * degree, input(row, 'TAS'), drift(windOf(row), 0)).heading),
    course: (row) => compass(courseOf(row)),
    'required heading': headingFor,
    'required airspeed': airspeedFor,
    'wind direction from drift': (row) => compass(windFromDrift(row).from),
    'wind speed from drift': (row) => windFromDrift(row).speed,
  },
};

export const windProfile: Topic = {
  heading: 'The wind by height',
  rowTopics: ['9_wind_profile'],
  quantities: {
    'power-law exponent': () => {
      const out = stillAir();
      const wind = { from: 0, speed: 10 };
      windField(wind, { kind: 'power', exponent: 1 / 7, layers: [] }, 0)(10 * Math.E, out);
      return Math.log(-out.along / 10);
    },
    'WMO measuring height': () => surfaceWindHeight,
  },
};
