import { type RangeOf, RequestError, type RequestReason } from '../terms/errors.ts';
import type { PlanRequest } from '../terms/plan.ts';

/** What is wrong with a value: where in it (nothing for the value itself), and why. */
interface Fault {
  readonly path: string;
  readonly reason: RequestReason;
}

/** Undefined where the value is right. The path is only put together for a fault: requests are checked by the thousand. */
type Rule = (value: unknown) => Fault | undefined;

const radians = (degrees: number) => (degrees * Math.PI) / 180;

/** A finite number within a range. */
function number(low: number, high: number, of: RangeOf = 'number'): Rule {
  const fault: Fault = { path: '', reason: { code: 'out-of-range', of, low, high } };
  return (value) => (typeof value === 'number' && value >= low && value <= high ? undefined : fault);
}

function wholeNumber(low: number, high: number): Rule {
  const inRange = number(low, high, 'whole-number');
  return (value) => inRange(Number.isInteger(value) ? value : Number.NaN);
}

const text: Rule = (value) =>
  typeof value === 'string' ? undefined : { path: '', reason: { code: 'not-a-text' } };

const yesOrNo: Rule = (value) =>
  typeof value === 'boolean' ? undefined : { path: '', reason: { code: 'not-yes-or-no' } };

function oneOf(...words: readonly string[]): Rule {
  const fault: Fault = { path: '', reason: { code: 'none-of', words } };
  return (value) => (typeof value === 'string' && words.includes(value) ? undefined : fault);
}

function optional(rule: Rule): Rule {
  return (value) => (value === undefined ? undefined : rule(value));
}

function record(shape: Readonly<Record<string, Rule>>): Rule {
  const entries = Object.entries(shape);
  const fault: Fault = { path: '', reason: { code: 'not-a-record', keys: Object.keys(shape) } };
  return (value) => {
    if (typeof value !== 'object' || value === null || Array.isArray(value)) return fault;
    for (const [key, rule] of entries) {
      const found = rule((value as Record<string, unknown>)[key]);
      if (found) return within(key, found);
    }
    return undefined;
  };
}

function listOf(rule: Rule, least = 0): Rule {
  const fault: Fault = { path: '', reason: { code: 'not-a-list', least } };
  return (value) => {
    if (!Array.isArray(value) || value.length < least) return fault;
    for (const [i, item] of value.entries()) {
      const found = rule(item);
      if (found) return within(String(i), found);
    }
    return undefined;
  };
}

function within(key: string, { path, reason }: Fault): Fault {
  return { path: path === '' ? key : `${key}.${path}`, reason };
}

const direction = number(0, 2 * Math.PI, 'angle');
const airspeed = number(5, 70, 'airspeed');
const mass = number(40, 6000, 'mass');
const height = number(60, 1500, 'height');
const spacing = number(50, 5000, 'length');
const bank = number(radians(5), radians(60), 'angle');
const distance = number(-100_000, 100_000, 'distance');

const best = { speed: airspeed, ratio: number(1, 60) };
const sinkPoint = record({ speed: airspeed, sink: number(0.05, 40, 'sink') });

const bestGlide = record(best);
const measuredGlide = record({ points: listOf(sinkPoint, 3) });

/** A best glide, or measured points. */
const glide: Rule = (value) => {
  const measured =
    typeof value === 'object' && value !== null && 'points' in value && value.points !== undefined;
  return measured ? measuredGlide(value) : bestGlide(value);
};

const obstacle = record({
  what: text,
  height: number(0, 1000, 'length'),
  along: distance,
  across: distance,
  width: number(0, 10_000, 'distance'),
});

const limitWind = number(0, 60, 'wind');

const aircraft = record({
  name: text,
  class: oneOf('weight-shift', 'three-axis', 'powered-parachute', 'glider'),
  source: text,
  seats: optional(wholeNumber(1, 20)),
  mass: record({ reference: mass, flown: mass, most: optional(mass), least: optional(mass) }),
  wing: record({ span: number(3, 40, 'length'), aboveWheels: number(0, 8, 'length') }),
  speeds: record({
    stall: number(5, 45, 'airspeed'),
    touchdown: number(5, 60, 'airspeed'),
    approach: airspeed,
  }),
  glide: record({ idle: glide, stopped: optional(glide) }),
  steepApproach: optional(bestGlide),
  flap: optional(
    record({
      stall: optional(text),
      touchdown: optional(text),
      approach: optional(text),
      glide: optional(text),
      steepApproach: optional(text),
    }),
  ),
  turns: record({
    bank,
    limit: number(radians(5), radians(80), 'angle'),
    rollRate: number(radians(2), radians(180), 'roll-rate'),
  }),
  roundOut: record({ height: number(0.3, 30.5, 'low-height'), loadFactor: number(1.02, 3) }),
  landingRoll: number(0, 3000, 'length'),
  limits: record({ wind: limitWind, crosswind: limitWind, tailwind: optional(limitWind) }),
  pattern: optional(record({ height: optional(height), spacing: optional(spacing) })),
  calibration: optional(listOf(record({ indicated: airspeed, equivalent: airspeed }))),
});

const runway = record({
  name: text,
  heading: direction,
  length: number(50, 5000, 'length'),
  width: number(1, 500, 'length'),
  surface: text,
  circuit: oneOf('left', 'right'),
  spot: number(0, 5000, 'length'),
  obstacles: listOf(obstacle),
});

const wind = { from: direction, speed: number(0, 45, 'wind') };

const request = record({
  aircraft,
  airfield: record({
    name: text,
    source: text,
    elevation: number(-500, 5000, 'length'),
    variation: optional(number(-Math.PI, Math.PI, 'angle')),
    windExponent: number(0, 0.6),
    windVeer: optional(number(radians(-90), radians(90), 'angle')),
    pattern: record({ height, spacing }),
  }),
  runway,
  approach: oneOf('90', '180', '360', 'spiral'),
  power: oneOf('idle', 'stopped'),
  circuit: optional(oneOf('left', 'right')),
  wind: record(wind),
  gust: optional(number(0, 60, 'wind')),
  windProfile: optional(oneOf('power', 'uniform', 'layers')),
  windLayers: optional(listOf(record({ ...wind, height: number(0.1, 10_000, 'height') }), 1)),
  temperature: optional(number(213.15, 333.15, 'temperature')),
  qnh: optional(number(85_000, 110_000, 'pressure')),
  mass: optional(mass),
  height: optional(height),
  spacing: optional(spacing),
  bank: optional(bank),
  baseDistance: optional(number(50, 5000, 'length')),
  circles: optional(wholeNumber(1, 20)),
  circlesDrift: optional(yesOrNo),
  minimums: optional(
    record({
      finalTurn: optional(number(0, 1500, 'height')),
      obstacleClearance: optional(number(0, 1500, 'height')),
      mostTailwind: optional(limitWind),
    }),
  ),
  steps: optional(record({ height: number(0.01, 100, 'length'), speed: number(0.01, 10, 'wind') })),
  detail: optional(oneOf('whole', 'flight')),
});

/**
 * Checks that every part of a request is there, is of its kind and lies in its allowed range, and that gusts are no less
 * than the wind. Throws RequestError with the first field that is not so, and what is allowed there.
 */
export function checkRequest(value: unknown): void {
  const fault = request(value);
  if (fault) {
    throw new RequestError(fault.path || 'request', fault.reason);
  }
  const { wind, gust } = value as Pick<PlanRequest, 'wind' | 'gust'>;
  if (gust !== undefined && gust < wind.speed - 1e-9) {
    throw new RequestError('gust', { code: 'gust-under-wind', gust, wind: wind.speed });
  }
}
