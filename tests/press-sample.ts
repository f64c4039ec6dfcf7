import type { Aircraft } from '../src/flight/terms/aircraft.ts';
import type { Airfield } from '../src/flight/terms/airfield.ts';
import type { PlanRequest } from '../src/flight/terms/plan.ts';

// An invented aircraft and airfield, for tests of the printed page.
const knot = 1852 / 3600;
const foot = 0.3048;
const degree = Math.PI / 180;

export const sampleAircraft: Aircraft = {
  name: 'Osier 15',
  class: 'weight-shift',
  source: "Invented for the demonstration. Use your own aircraft's handbook.",
  mass: { reference: 390, flown: 365 },
  wing: { span: 10, aboveWheels: 2.6 },
  speeds: { stall: 29 * knot, touchdown: 33 * knot, approach: 45 * knot },
  glide: { idle: { speed: 42 * knot, ratio: 6.4 }, stopped: { speed: 42 * knot, ratio: 5.7 } },
  steepApproach: { speed: 52 * knot, ratio: 4.1 },
  turns: { bank: 30 * degree, limit: 60 * degree, rollRate: 20 * degree },
  roundOut: { height: 15 * foot, loadFactor: 1.15 },
  landingRoll: 90,
  limits: { wind: 18 * knot, crosswind: 9 * knot },
};

const sampleAirfield: Airfield = {
  name: 'Fallow Reach',
  source: 'Invented for the demonstration.',
  elevation: 310 * foot,
  variation: -2 * degree,
  windExponent: 1 / 7,
  pattern: { height: 1000 * foot, spacing: 500 },
  runways: [
    {
      name: '24',
      heading: 238 * degree,
      length: 520,
      width: 25,
      surface: 'grass',
      circuit: 'left',
      spot: 100,
      obstacles: [{ what: 'hedge', height: 12 * foot, along: -140, across: 0, width: 60 }],
    },
  ],
};

export const sampleRequest: PlanRequest = {
  aircraft: sampleAircraft,
  airfield: sampleAirfield,
  runway: sampleAirfield.runways[0]!,
  approach: '180',
  power: 'idle',
  wind: { from: 210 * degree, speed: 12 * knot },
  temperature: 298.15,
  qnh: 100800,
};
