import { metresPerFoot } from '../units/factors.ts';
import { airspeedFactor, fieldAir } from './air.ts';
import type { Aircraft } from './aircraft.ts';
import { resolveAircraft } from './aircraft-data.ts';
import type { Conditions } from './conditions.ts';
import { RequestError } from './errors.ts';
import { polarAtMass, speedAtMass } from './glide.ts';
import type { Approach, Flown, PlanRequest } from './plan.ts';
import { windField } from './wind.ts';

/** A request with every default resolved and every number within its range. */
export interface Resolved {
  readonly flown: Flown;
  readonly conditions: Conditions;
}

/** m. Start heights of the approaches that begin above the pattern (FAA-H-8083-3, chapter 9, for the 360). */
const usualStart: Partial<Record<Approach, number>> = {
  '360': 2000 * metresPerFoot,
  spiral: 2500 * metresPerFoot,
};

const radians = (degrees: number) => (degrees * Math.PI) / 180;

/** Allowed ranges, SI and rad, and how a message names them. */
const ranges = {
  'wind.speed': [0, 45, '0 to 87 kt'],
  'wind.from': [0, 2 * Math.PI, '0 to 360 degrees'],
  gust: [0, 60, '0 to 116 kt'],
  temperature: [213.15, 333.15, '-60 to 60 C'],
  qnh: [85_000, 110_000, '850 to 1100 hPa'],
  mass: [40, 6000, '40 to 6000 kg'],
  height: [60, 1500, '200 to 4900 ft'],
  spacing: [50, 5000, '50 to 5000 m'],
  baseDistance: [50, 5000, '50 to 5000 m'],
  circles: [1, 20, '1 to 20'],
  bank: [radians(5), radians(60), '5 to 60 degrees'],
  'airfield.elevation': [-500, 5000, '-500 to 5000 m'],
  'airfield.windExponent': [0, 0.6, '0 to 0.6'],
  'runway.heading': [0, 2 * Math.PI, '0 to 360 degrees'],
  'runway.length': [50, 5000, '50 to 5000 m'],
  'runway.spot': [0, 5000, '0 to 5000 m'],
  'aircraft.mass.reference': [40, 6000, '40 to 6000 kg'],
  'aircraft.wing.span': [3, 40, '3 to 40 m'],
  'aircraft.wing.aboveWheels': [0, 8, '0 to 8 m'],
  'aircraft.speeds.stall': [5, 45, '10 to 87 kt'],
  'aircraft.speeds.touchdown': [5, 60, '10 to 116 kt'],
  'aircraft.speeds.approach': [5, 70, '10 to 136 kt'],
  'aircraft.glide.speed': [5, 70, '10 to 136 kt'],
  'aircraft.glide.ratio': [1, 60, '1 to 60'],
  'aircraft.turns.limit': [radians(5), radians(80), '5 to 80 degrees'],
  'aircraft.turns.rollRate': [radians(2), radians(180), '2 to 180 degrees a second'],
  'aircraft.roundOut.height': [0.5, 30, '2 to 98 ft'],
  'aircraft.roundOut.loadFactor': [1.02, 3, '1.02 to 3'],
  'aircraft.landingRoll': [0, 3000, '0 to 3000 m'],
} as const;

type Field = keyof typeof ranges;

/** Throws RequestError unless the number lies within the field's range; not-a-number never does. */
function within(field: Field, value: number): number {
  const [low, high, words] = ranges[field];
  if (!(value >= low && value <= high)) throw new RequestError(field, `${field} must be ${words}`);
  return value;
}

/**
 * Resolves a request: defaults filled in, speeds brought to the flown mass, air and wind made ready.
 * Throws RequestError with the field and its allowed range.
 */
export function resolveRequest(request: PlanRequest): Resolved {
  const { airfield, runway, approach } = request;
  const aircraft = resolveAircraft(request.aircraft);
  checkAircraft(aircraft);
  within('airfield.elevation', airfield.elevation);
  within('airfield.windExponent', airfield.windExponent);
  within('runway.heading', runway.heading);
  within('runway.length', runway.length);
  within('runway.spot', runway.spot);
  const mass = within('mass', request.mass ?? aircraft.mass.flown);
  const polar = polarAtMass(aircraft, request.power, mass);
  if (!polar) {
    throw new RequestError(
      'power',
      `${aircraft.name} has no glide for the engine ${request.power}: add glide.${request.power}`,
    );
  }
  within('aircraft.glide.speed', polar.speed);
  within('aircraft.glide.ratio', polar.ratio);
  const surfaceWind = {
    from: within('wind.from', request.wind.from),
    speed: within('wind.speed', request.wind.speed),
  };
  const bank = within('bank', request.bank ?? aircraft.turns.bank);
  if (bank > aircraft.turns.limit) {
    throw new RequestError(
      'bank',
      `the bank is over the aircraft's limit of ${Math.round((aircraft.turns.limit * 180) / Math.PI)} degrees`,
    );
  }
  const air = fieldAir(
    airfield.elevation,
    request.temperature === undefined ? undefined : within('temperature', request.temperature),
    request.qnh === undefined ? undefined : within('qnh', request.qnh),
  );
  const layers = checkedLayers(request);
  const windProfile = request.windProfile ?? (request.windLayers ? 'layers' : 'power');
  const pattern = aircraft.pattern?.height ?? airfield.pattern.height;
  const keyHeight = within('height', approach === '180' ? (request.height ?? pattern) : pattern);
  if (request.baseDistance !== undefined) {
    within('baseDistance', request.baseDistance);
    if (request.height !== undefined) {
      throw new RequestError(
        'baseDistance',
        'give the height or the base distance of a 90, not both: the other is found',
      );
    }
  }
  if (request.circles !== undefined && !Number.isInteger(within('circles', request.circles))) {
    throw new RequestError('circles', 'circles must be a whole number, 1 to 20');
  }
  const speeds = {
    approach: speedAtMass(aircraft.speeds.approach, aircraft, mass),
    touchdown: speedAtMass(aircraft.speeds.touchdown, aircraft, mass),
    stall: speedAtMass(aircraft.speeds.stall, aircraft, mass),
  };
  return {
    flown: {
      surfaceWind,
      gust: request.gust === undefined ? undefined : within('gust', request.gust),
      windProfile,
      mass,
      height: within('height', request.height ?? usualStart[approach] ?? keyHeight),
      keyHeight,
      spacing: within('spacing', request.spacing ?? aircraft.pattern?.spacing ?? airfield.pattern.spacing),
      bank,
      glideSpeed: polar.speed,
      approachSpeed: speeds.approach,
      touchdownSpeed: speeds.touchdown,
      stallSpeed: speeds.stall,
      glideRatio: polar.ratio,
    },
    conditions: {
      aircraft,
      air,
      polar,
      tasOverEas: airspeedFactor(air),
      wind: windField(
        surfaceWind,
        { kind: windProfile, exponent: airfield.windExponent, layers },
        runway.heading,
      ),
      steep: aircraft.steepApproach && {
        speed: speedAtMass(aircraft.steepApproach.speed, aircraft, mass),
        ratio: aircraft.steepApproach.ratio,
      },
      rollRate: aircraft.turns.rollRate,
      speeds,
    },
  };
}

function checkAircraft(aircraft: Aircraft): void {
  within('aircraft.mass.reference', aircraft.mass.reference);
  within('aircraft.wing.span', aircraft.wing.span);
  within('aircraft.wing.aboveWheels', aircraft.wing.aboveWheels);
  const stall = within('aircraft.speeds.stall', aircraft.speeds.stall);
  const touchdown = within('aircraft.speeds.touchdown', aircraft.speeds.touchdown);
  const approach = within('aircraft.speeds.approach', aircraft.speeds.approach);
  if (!(stall <= touchdown && touchdown < approach)) {
    throw new RequestError('aircraft.speeds', 'speeds must rise: stall, touchdown, approach');
  }
  within('aircraft.turns.limit', aircraft.turns.limit);
  within('aircraft.turns.rollRate', aircraft.turns.rollRate);
  within('aircraft.roundOut.height', aircraft.roundOut.height);
  within('aircraft.roundOut.loadFactor', aircraft.roundOut.loadFactor);
  within('aircraft.landingRoll', aircraft.landingRoll);
}

function checkedLayers(request: PlanRequest) {
  const layers = request.windLayers ?? [];
  if (request.windProfile === 'layers' && layers.length === 0) {
    throw new RequestError('windLayers', 'the wind profile `layers` needs at least one wind at a height');
  }
  layers.forEach((layer, i) => {
    within('wind.from', layer.from);
    within('wind.speed', layer.speed);
    const lower = layers[i - 1]?.height ?? 0;
    if (!(layer.height > lower && layer.height <= 10_000)) {
      throw new RequestError(
        'windLayers',
        'the heights of wind layers must rise from above the ground to at most 10,000 m',
      );
    }
  });
  return layers;
}
