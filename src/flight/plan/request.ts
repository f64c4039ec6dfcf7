import { airspeedFactor, fieldAir, thinningOf } from '../air/air.ts';
import { flownVeer } from '../air/flown-wind.ts';
import { turningBends, windField } from '../air/wind.ts';
import { polarAtMass, speedAtMass } from '../aircraft/glide.ts';
import { resolveAircraft } from '../aircraft/resolve-aircraft.ts';
import { approaches } from '../approaches/approaches.ts';
import type { Conditions } from '../flying/conditions.ts';
import type { Aircraft } from '../terms/aircraft.ts';
import type { Airfield } from '../terms/airfield.ts';
import type { ApproachOptions } from '../terms/approach.ts';
import { RequestError } from '../terms/errors.ts';
import type { Flown, PlanRequest, WindAtHeight } from '../terms/plan.ts';
import { checkRequest } from './check-request.ts';

/** A request with every default resolved and every number within its range. */
export interface Resolved {
  readonly flown: Flown;
  readonly conditions: Conditions;
}

/**
 * Resolves a request: defaults filled in, speeds brought to the flown mass, air and wind made ready.
 * Throws RequestError with the field and its allowed range.
 */
export function resolveRequest(request: PlanRequest): Resolved {
  checkRequest(request);
  const { airfield, runway, approach } = request;
  const aircraft = resolveAircraft(request.aircraft);
  checkSpeeds(aircraft);
  const mass = request.mass ?? aircraft.mass.flown;
  const polar = polarAtMass(aircraft, request.power, mass);
  if (!polar) {
    const { power } = request;
    throw new RequestError('power', { code: 'no-glide', aircraft: aircraft.name, power });
  }
  const { from, speed } = request.wind;
  const surfaceWind = { from, speed };
  const bank = request.bank ?? aircraft.turns.bank;
  if (bank > aircraft.turns.limit) {
    throw new RequestError('bank', { code: 'bank-over-limit', bank, limit: aircraft.turns.limit });
  }
  const air = fieldAir(airfield.elevation, request.temperature, request.qnh);
  const layers = checkedLayers(request);
  const windProfile = request.windProfile ?? (request.windLayers ? 'layers' : 'power');
  const pattern = aircraft.pattern?.height ?? airfield.pattern.height;
  const { startsAt, usualStart, insteadOfHeight = [] } = approaches[approach];
  const keyHeight = startsAt === 'downwind-key' ? (request.height ?? pattern) : pattern;
  const given: Readonly<Record<string, unknown>> = request.options?.[approach as keyof ApproachOptions] ?? {};
  const both = insteadOfHeight.find((option) => given[option] !== undefined);
  if (both && request.height !== undefined)
    throw new RequestError(both, { code: 'height-and-option', option: both });
  const speeds = {
    approach: speedAtMass(aircraft.speeds.approach, aircraft, mass),
    touchdown: speedAtMass(aircraft.speeds.touchdown, aircraft, mass),
    stall: speedAtMass(aircraft.speeds.stall, aircraft, mass),
  };
  const flown: Flown = {
    surfaceWind,
    gust: request.gust,
    windProfile,
    mass,
    height: request.height ?? (usualStart === 'pattern' ? keyHeight : usualStart),
    keyHeight,
    spacing: request.spacing ?? aircraft.pattern?.spacing ?? airfield.pattern.spacing,
    bank,
    glideSpeed: polar.speed,
    approachSpeed: speeds.approach,
    touchdownSpeed: speeds.touchdown,
    stallSpeed: speeds.stall,
    glideRatio: polar.ratio,
  };
  return {
    flown,
    conditions: {
      aircraft,
      air,
      polar,
      tasOverEas: airspeedFactor(air),
      thinning: thinningOf(air),
      wind: windField(
        surfaceWind,
        { kind: windProfile, exponent: airfield.windExponent, veer: airfield.windVeer, layers },
        runway.heading,
      ),
      windBends: bendsOf(flown, request.airfield, layers),
      steep: aircraft.steepApproach && {
        speed: speedAtMass(aircraft.steepApproach.speed, aircraft, mass),
        ratio: aircraft.steepApproach.ratio,
      },
      rollRate: aircraft.turns.rollRate,
      speeds,
    },
  };
}

/** m. Where the wind's change with height would jump. */
function bendsOf(flown: Flown, airfield: Airfield, layers: readonly WindAtHeight[]): readonly number[] {
  if (flown.windProfile === 'layers') return layers.length > 1 ? layers.map(({ height }) => height) : [];
  return flownVeer({ flown, airfield }) === 0 ? [] : turningBends;
}

function checkSpeeds({ speeds: { stall, touchdown, approach }, glide, steepApproach }: Aircraft): void {
  if (!(stall <= touchdown && touchdown < approach)) {
    throw new RequestError('aircraft.speeds', { code: 'speeds-not-rising' });
  }
  if (!(glide.idle.speed > stall && (!glide.stopped || glide.stopped.speed > stall))) {
    throw new RequestError('aircraft.glide', { code: 'glide-under-stall' });
  }
  if (steepApproach && !(steepApproach.speed > stall)) {
    throw new RequestError('aircraft.steepApproach', { code: 'steep-under-stall' });
  }
}

/** m. */
const highestLayer = 10_000;

function checkedLayers(request: PlanRequest) {
  const layers = request.windLayers ?? [];
  if (request.windProfile === 'layers' && layers.length === 0) {
    throw new RequestError('windLayers', { code: 'no-layers' });
  }
  layers.forEach((layer, i) => {
    const lower = layers[i - 1]?.height ?? 0;
    if (!(layer.height > lower && layer.height <= highestLayer)) {
      throw new RequestError('windLayers', { code: 'layers-not-rising', highest: highestLayer });
    }
  });
  return layers;
}
