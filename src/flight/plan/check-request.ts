import { approaches } from '../approaches/approaches.ts';
import { aircraftClasses } from '../terms/aircraft-class.ts';
import { approachIds } from '../terms/approach.ts';
import { RequestError } from '../terms/errors.ts';
import type { PlanRequest } from '../terms/plan.ts';
import { listOf, number, oneOf, optional, type Rule, record, text, wholeNumber } from '../terms/rules.ts';

const radians = (degrees: number) => (degrees * Math.PI) / 180;

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
  class: oneOf(...aircraftClasses),
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
  approach: oneOf(...approachIds),
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
  options: optional(
    record(Object.fromEntries(approachIds.map((id) => [id, optional(record(approaches[id].options))]))),
  ),
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
 * Checks that every part of a request is there, is of the right kind and within its allowed range, and that gusts are
 * no less than the wind. Throws RequestError with the first field where that is not so, and what is allowed there.
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
