import { tellingApart } from '../../words/figures/telling-apart.ts';
import { RequestError } from '../terms/errors.ts';
import type { PlanRequest } from '../terms/plan.ts';

/** What is wrong with a value: where in it (nothing for the value itself), and what it must be. */
interface Fault {
  readonly path: string;
  readonly must: string;
}

/** Undefined where the value is right. The path is only put together for a fault: requests are checked by the thousand. */
type Rule = (value: unknown) => Fault | undefined;

const radians = (degrees: number) => (degrees * Math.PI) / 180;

/** A finite number within a range; `words` name the range as a person would write it. */
function number(low: number, high: number, words: string): Rule {
  const fault = { path: '', must: `must be ${words}` };
  return (value) => (typeof value === 'number' && value >= low && value <= high ? undefined : fault);
}

function wholeNumber(low: number, high: number): Rule {
  const inRange = number(low, high, `a whole number, ${low} to ${high}`);
  return (value) => inRange(Number.isInteger(value) ? value : Number.NaN);
}

const text: Rule = (value) => (typeof value === 'string' ? undefined : { path: '', must: 'must be a text' });

const yesOrNo: Rule = (value) =>
  typeof value === 'boolean' ? undefined : { path: '', must: 'must be true or false' };

function oneOf(...words: readonly string[]): Rule {
  const fault = { path: '', must: `must be one of: ${words.join(', ')}` };
  return (value) => (typeof value === 'string' && words.includes(value) ? undefined : fault);
}

function optional(rule: Rule): Rule {
  return (value) => (value === undefined ? undefined : rule(value));
}

function record(shape: Readonly<Record<string, Rule>>): Rule {
  const entries = Object.entries(shape);
  const fault = { path: '', must: `must hold: ${Object.keys(shape).join(', ')}` };
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
  const fault = { path: '', must: `must be a list of ${least} or more` };
  return (value) => {
    if (!Array.isArray(value) || value.length < least) return fault;
    for (const [i, item] of value.entries()) {
      const found = rule(item);
      if (found) return within(String(i), found);
    }
    return undefined;
  };
}

function within(key: string, { path, must }: Fault): Fault {
  return { path: path === '' ? key : `${key}.${path}`, must };
}

const direction = number(0, 2 * Math.PI, '0 to 360 degrees');
const airspeed = number(5, 70, '10 to 136 kt');
const mass = number(40, 6000, '40 to 6000 kg');
const height = number(60, 1500, '200 to 4900 ft');
const spacing = number(50, 5000, '50 to 5000 m');
const bank = number(radians(5), radians(60), '5 to 60 degrees');
const distance = number(-100_000, 100_000, '-100 to 100 km');

const best = { speed: airspeed, ratio: number(1, 60, '1 to 60') };
const sinkPoint = record({ speed: airspeed, sink: number(0.05, 40, '10 to 7900 ft/min') });

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
  height: number(0, 1000, '0 to 1000 m'),
  along: distance,
  across: distance,
  width: number(0, 10_000, '0 to 10 km'),
});

const limitWind = number(0, 60, '0 to 116 kt');

const aircraft = record({
  name: text,
  class: oneOf('weight-shift', 'three-axis', 'powered-parachute', 'glider'),
  source: text,
  seats: optional(wholeNumber(1, 20)),
  mass: record({ reference: mass, flown: mass, most: optional(mass), least: optional(mass) }),
  wing: record({ span: number(3, 40, '3 to 40 m'), aboveWheels: number(0, 8, '0 to 8 m') }),
  speeds: record({
    stall: number(5, 45, '10 to 87 kt'),
    touchdown: number(5, 60, '10 to 116 kt'),
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
    limit: number(radians(5), radians(80), '5 to 80 degrees'),
    rollRate: number(radians(2), radians(180), '2 to 180 degrees a second'),
  }),
  roundOut: record({ height: number(0.3, 30.5, '1 to 100 ft'), loadFactor: number(1.02, 3, '1.02 to 3') }),
  landingRoll: number(0, 3000, '0 to 3000 m'),
  limits: record({ wind: limitWind, crosswind: limitWind, tailwind: optional(limitWind) }),
  pattern: optional(record({ height: optional(height), spacing: optional(spacing) })),
  calibration: optional(listOf(record({ indicated: airspeed, equivalent: airspeed }))),
});

const runway = record({
  name: text,
  heading: direction,
  length: number(50, 5000, '50 to 5000 m'),
  width: number(1, 500, '1 to 500 m'),
  surface: text,
  circuit: oneOf('left', 'right'),
  spot: number(0, 5000, '0 to 5000 m'),
  obstacles: listOf(obstacle),
});

const wind = { from: direction, speed: number(0, 45, '0 to 87 kt') };

const request = record({
  aircraft,
  airfield: record({
    name: text,
    source: text,
    elevation: number(-500, 5000, '-500 to 5000 m'),
    variation: optional(number(-Math.PI, Math.PI, '180 degrees W to 180 degrees E')),
    windExponent: number(0, 0.6, '0 to 0.6'),
    windVeer: optional(number(radians(-90), radians(90), '-90 to 90 degrees')),
    pattern: record({ height, spacing }),
  }),
  runway,
  approach: oneOf('90', '180', '360', 'spiral'),
  power: oneOf('idle', 'stopped'),
  circuit: optional(oneOf('left', 'right')),
  wind: record(wind),
  gust: optional(number(0, 60, '0 to 116 kt')),
  windProfile: optional(oneOf('power', 'uniform', 'layers')),
  windLayers: optional(listOf(record({ ...wind, height: number(0.1, 10_000, '0.1 to 10,000 m') }), 1)),
  temperature: optional(number(213.15, 333.15, '-60 to 60 C')),
  qnh: optional(number(85_000, 110_000, '850 to 1100 hPa')),
  mass: optional(mass),
  height: optional(height),
  spacing: optional(spacing),
  bank: optional(bank),
  baseDistance: optional(number(50, 5000, '50 to 5000 m')),
  circles: optional(wholeNumber(1, 20)),
  circlesDrift: optional(yesOrNo),
  minimums: optional(
    record({
      finalTurn: optional(number(0, 1500, '0 to 4900 ft')),
      obstacleClearance: optional(number(0, 1500, '0 to 4900 ft')),
      mostTailwind: optional(limitWind),
    }),
  ),
  steps: optional(
    record({ height: number(0.01, 100, '0.01 to 100 m'), speed: number(0.01, 10, '0.01 to 10 m/s') }),
  ),
  detail: optional(oneOf('whole', 'flight')),
});

/**
 * Checks that every part of a request is there, is of its kind and lies in its allowed range, and that gusts are no less
 * than the wind. Throws RequestError with the first field that is not so, and what is allowed there.
 */
export function checkRequest(value: unknown): void {
  const fault = request(value);
  if (fault) {
    const field = fault.path || 'request';
    throw new RequestError(field, `${field} ${fault.must}`);
  }
  const { wind, gust } = value as Pick<PlanRequest, 'wind' | 'gust'>;
  if (gust !== undefined && gust < wind.speed - 1e-9) {
    const { value: less, limit } = tellingApart(gust, wind.speed, 'kt', 'least');
    throw new RequestError(
      'gust',
      `the gusts of ${less} are less than the wind of ${limit}: give the highest gust, or none`,
    );
  }
}
