import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { planToJson } from '../src/export/plan-json.ts';
import { planApproach } from '../src/flight/plan/planner.ts';
import { RequestError } from '../src/flight/terms/errors.ts';
import type { PlanRequest } from '../src/flight/terms/plan.ts';
import { metresPerSecondPerKnot, radiansPerDegree } from '../src/units/factors.ts';
import { aviation } from '../src/words/figures/aviation.ts';
import { requestSentence } from '../src/words/refusals/request-words.ts';
import { requestFor } from './flight-school.ts';

/*
 * Requests as a careless program might make them: a sensible one with up to eight things spoilt. Either a
 * RequestError says what to change, or there is a plan and every number in it is a number.
 */

const between = (min: number, max: number) => fc.double({ min, max, noNaN: true });
const maybe = <T>(value: fc.Arbitrary<T>) => fc.option(value, { nil: undefined, freq: 2 });

/** Within every allowed range, though not always within reach. */
const sensible: fc.Arbitrary<PlanRequest> = fc
  .record({
    id: fc.constantFrom('osier' as const, 'withy' as const),
    approach: fc.oneof(
      // As often as their cost allows: a spiral takes some thirty times as long as a half circuit.
      { weight: 48, arbitrary: fc.constant('180' as const) },
      { weight: 48, arbitrary: fc.constant('90' as const) },
      { weight: 3, arbitrary: fc.constant('360' as const) },
      { weight: 1, arbitrary: fc.constant('spiral' as const) },
    ),
    power: fc.constantFrom('idle' as const, 'stopped' as const),
    circuit: fc.constantFrom('left' as const, 'right' as const, undefined),
    from: between(0, 2 * Math.PI),
    knots: fc.oneof({ weight: 4, arbitrary: between(0, 20) }, { weight: 1, arbitrary: between(0, 87) }),
    gust: maybe(between(0, 60)),
    windProfile: fc.constantFrom('power' as const, 'uniform' as const, undefined),
    temperature: maybe(between(213.15, 333.15)),
    qnh: maybe(between(85_000, 110_000)),
    mass: maybe(between(200, 600)),
    height: maybe(between(60, 1500)),
    spacing: maybe(between(50, 2000)),
    bank: maybe(between(5 * radiansPerDegree, 60 * radiansPerDegree)),
    options: fc.record({
      spiral: fc.record({ circles: maybe(fc.integer({ min: 1, max: 6 })), drift: maybe(fc.boolean()) }),
    }),
  })
  .map(({ id, from, knots, gust, ...rest }) => {
    const speed = knots * metresPerSecondPerKnot;
    // A gust is no less than the wind.
    const gusts = gust === undefined ? undefined : Math.max(gust, speed);
    return requestFor(id, { ...rest, wind: { from, speed }, gust: gusts, detail: 'flight' });
  });

/** Where something can be spoilt: every field that the core reads, some of which are not in every request. */
const places = [
  ...['approach', 'power', 'circuit', 'wind', 'wind.from', 'wind.speed', 'gust', 'windProfile', 'windLayers'],
  ...['windLayers.0', 'windLayers.0.height', 'windLayers.0.from', 'windLayers.0.speed'],
  ...['temperature', 'qnh', 'mass', 'height', 'spacing', 'bank', 'options', 'options.90'],
  ...['options.spiral', 'options.spiral.circles', 'options.spiral.drift', 'options.90.baseDistance'],
  ...['airfield', 'airfield.elevation', 'airfield.windExponent', 'airfield.pattern'],
  ...['airfield.pattern.height', 'airfield.pattern.spacing', 'runway', 'runway.heading', 'runway.length'],
  ...['runway.width', 'runway.spot', 'runway.circuit', 'runway.obstacles', 'runway.obstacles.0'],
  ...['runway.obstacles.0.height', 'runway.obstacles.0.along', 'runway.obstacles.0.across'],
  ...['runway.obstacles.0.width', 'aircraft', 'aircraft.mass', 'aircraft.mass.reference'],
  ...['aircraft.mass.flown', 'aircraft.wing', 'aircraft.wing.span', 'aircraft.wing.aboveWheels'],
  ...['aircraft.speeds', 'aircraft.speeds.stall', 'aircraft.speeds.touchdown', 'aircraft.speeds.approach'],
  ...['aircraft.glide', 'aircraft.glide.idle', 'aircraft.glide.idle.speed', 'aircraft.glide.idle.ratio'],
  ...['aircraft.glide.stopped', 'aircraft.glide.stopped.speed', 'aircraft.glide.stopped.ratio'],
  ...['aircraft.glide.idle.points', 'aircraft.steepApproach', 'aircraft.steepApproach.speed'],
  ...['aircraft.steepApproach.ratio', 'aircraft.turns', 'aircraft.turns.bank', 'aircraft.turns.limit'],
  ...['aircraft.turns.rollRate', 'aircraft.roundOut', 'aircraft.roundOut.height'],
  ...['aircraft.roundOut.loadFactor', 'aircraft.landingRoll', 'aircraft.limits', 'aircraft.limits.wind'],
  ...['aircraft.limits.crosswind', 'aircraft.pattern', 'aircraft.pattern.height'],
  ...['aircraft.pattern.spacing', 'aircraft.calibration'],
];

const rubbish: fc.Arbitrary<unknown> = fc.oneof(
  fc.constantFrom(Number.NaN, Number.POSITIVE_INFINITY, Number.NEGATIVE_INFINITY, undefined, null),
  // 0, a negative ratio, a bank of 90 degrees, a wind from 400 degrees, a height plus a kilometre.
  fc.constantFrom(0, -0, -6.4, Math.PI / 2, 400 * radiansPerDegree, 1300, 1e-12, 1e9, -1e9, 1e300, 0.5, 7),
  fc.constantFrom('12', '', 'spiral', '210/12kt', 'toString', true, false),
  fc.constantFrom({}, [], [1, 2, 3], [{}], { points: [] }, [{ height: 0, from: 0, speed: 5 }]),
  fc.double(),
);

type Spoilt = readonly [place: string, value: unknown];
const spoilt: fc.Arbitrary<Spoilt> = fc.tuple(fc.constantFrom(...places), rubbish);

/** A copy of the request with rubbish in each of the places, whatever was there. */
function spoil(request: PlanRequest, changes: readonly Spoilt[]): PlanRequest {
  const copy = structuredClone(request) as never as Record<string, unknown>;
  for (const [place, value] of changes) {
    const names = place.split('.');
    const last = names.pop()!;
    let holder: unknown = copy;
    for (const name of names) holder = (holder as Record<string, unknown> | null | undefined)?.[name];
    // Where a list takes the place of a runway, its `length` is the list's own.
    if (typeof holder !== 'object' || holder === null || (Array.isArray(holder) && last === 'length'))
      continue;
    (holder as Record<string, unknown>)[last] = structuredClone(value);
  }
  return copy as never;
}

/** The paths of values that are not numbers although their type is `number`. */
function notNumbers(value: unknown, path = 'plan'): string[] {
  if (typeof value === 'number') return Number.isFinite(value) ? [] : [`${path} is ${value}`];
  if (typeof value !== 'object' || value === null) return [];
  return Object.entries(value).flatMap(([name, inner]) => notNumbers(inner, `${path}.${name}`));
}

/** A message is of use if it names a range, or says in words what is needed instead. */
const saysWhatToGive = /\d.* to .*\d|must|needs?\b|needed|known:|\badd\b|\bgive\b|\bbegin\b|limit of \d/;

/** Plans, and says whether it was refused. Fails for an error of another kind, and for a number that is not one. */
function flownOrRefused(request: PlanRequest): 'flown' | 'refused' {
  let json: Record<string, unknown>;
  try {
    json = planToJson(planApproach(request));
  } catch (error) {
    if (!(error instanceof RequestError)) throw error;
    expect(error.field).not.toBe('');
    expect(requestSentence(error, aviation)).toMatch(saysWhatToGive);
    return 'refused';
  }
  expect(notNumbers(json)).toEqual([]);
  return 'flown';
}

const spoiltRuns = 97_000;
const sensibleRuns = 3_000;
const minutes = 60_000;

describe('the core, asked for anything', () => {
  it(
    `refuses or flies each of ${spoiltRuns} spoilt requests, with no other error and no number that is none`,
    () => {
      const counts = { flown: 0, refused: 0 };
      fc.assert(
        fc.property(sensible, fc.array(spoilt, { minLength: 1, maxLength: 8 }), (request, changes) => {
          counts[flownOrRefused(spoil(request, changes))]++;
        }),
        { numRuns: spoiltRuns, seed: 1903 },
      );
      // Both happen; otherwise the mix would test nothing.
      expect(Math.min(counts.flown, counts.refused)).toBeGreaterThan(spoiltRuns / 100);
    },
    10 * minutes,
  );

  it(
    `gives an answer in numbers to each of ${sensibleRuns} sensible requests`,
    () => {
      fc.assert(
        fc.property(sensible, (request) => {
          flownOrRefused(request);
        }),
        { numRuns: sensibleRuns, seed: 1903 },
      );
    },
    10 * minutes,
  );

  const words = { power: 'full', circuit: 'Left', windProfile: 'log', approach: 'toString' } as const;
  it.each(Object.entries(words))('refuses a word that %s does not know: %s', (place, word) => {
    const asked = spoil(requestFor('osier', { detail: 'flight' }), [[place, word]]);
    expect(() => planApproach(asked)).toThrow(RequestError);
  });

  const numbers = [
    'wind.from',
    'wind.speed',
    'gust',
    'height',
    'spacing',
    'mass',
    'runway.spot',
    'runway.length',
  ];
  const figures = [...numbers, 'airfield.elevation', 'aircraft.landingRoll', 'aircraft.wing.aboveWheels'];
  // A text, a list or a yes that JavaScript takes for a number would silently be used in the calculation.
  it.each(figures)('refuses %s as anything but a number', (place) => {
    for (const value of ['70', [70], true]) {
      const asked = spoil(requestFor('osier', { detail: 'flight' }), [[place, value]]);
      expect(() => planApproach(asked), String(value)).toThrow(RequestError);
    }
  });
});
