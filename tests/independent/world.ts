/*
 * The second implementation: what an aircraft flies in and with, worked out from a request and the published
 * formulas. Nothing here comes from src/flight except the type of a request. SI, rad; the spot frame.
 */
import type { PlanRequest } from '../../src/flight/terms/plan.ts';

export const g = 9.80665;
/** US Standard Atmosphere 1976: sea level, the lowest layer, dry air. */
const [T0, p0, lapse, R] = [288.15, 101325, 0.0065, 8314.32 / 28.9644];
const rho0 = p0 / (R * T0);
const hydrostatic = g / (R * lapse);

/** The wind's drift and its change with height (m/s, 1/s), along the landing direction and to the right. */
export interface Wind {
  along: number;
  across: number;
  alongPerMetre: number;
  acrossPerMetre: number;
}

export const noWind = (): Wind => ({ along: 0, across: 0, alongPerMetre: 0, acrossPerMetre: 0 });

export interface BestGlide {
  readonly speed: number;
  readonly ratio: number;
}

/** All that the equations need, at the mass flown. */
export interface World {
  /** TAS over EAS at a height, and the share by which it grows for each metre. */
  readonly thinness: (height: number) => number;
  readonly thinning: (height: number) => number;
  /** Fills in the wind at a height. */
  readonly wind: (height: number, out: Wind) => void;
  /** Heights at which the wind's gradient jumps. */
  readonly kinks: readonly number[];
  readonly glide: BestGlide;
  readonly steep: BestGlide | undefined;
  /** m/s EAS. */
  readonly stall: number;
  readonly approach: number;
  readonly touchdown: number;
  readonly span: number;
  readonly wingAboveWheels: number;
  readonly roundOutHeight: number;
  readonly rollRate: number;
  readonly bank: number;
  readonly bankLimit: number;
  /** 1 for a right-hand pattern, -1 for left. */
  readonly side: 1 | -1;
  readonly spacing: number;
  /** m. Every turn to final is complete at least this high. */
  readonly leastFinal: number;
  /** m. Down to here the nose holds the airspeed on a straight leg; below, it stays where it is. */
  readonly speedHeldDownTo: number;
}

/** The air above a field: temperature falls from the field's own at the standard rate, pressure follows hydrostatically. */
export function thinnessOf(elevation: number, temperature?: number, qnh = p0) {
  const atField = temperature ?? T0 - lapse * elevation;
  // The standard altitude of the QNH, and that of the field, differ by the elevation.
  const standardAltitude = (T0 / lapse) * (1 - (qnh / p0) ** (1 / hydrostatic));
  const pressure = p0 * (1 - (lapse * (standardAltitude + elevation)) / T0) ** hydrostatic;
  const rhoField = pressure / (R * atField);
  const exponent = (hydrostatic - 1) / 2;
  const atZero = Math.sqrt(rho0 / rhoField);
  const thinness = (height: number) =>
    atZero * Math.exp(-exponent * Math.log(1 - (lapse * height) / atField));
  const thinning = (height: number) => (exponent * lapse) / (atField - lapse * height);
  return { thinness, thinning };
}

/** Where a wind from a true direction carries the aircraft, seen from the landing direction. */
function carried(from: number, speed: number, heading: number): [number, number] {
  return [-speed * Math.cos(from - heading), -speed * Math.sin(from - heading)];
}

/** m: below this the wind no longer changes. */
const lowest = 2;

/** m: a wind that turns with height does so evenly between these (1,000 ft in m). */
const [veersFrom, veeredAt] = [10, 304.8];

function windOf({
  wind: { from, speed },
  windProfile,
  windLayers,
  airfield,
  runway,
}: PlanRequest): Pick<World, 'wind' | 'kinks'> {
  const kind = windProfile ?? (windLayers ? 'layers' : 'power');
  if (kind === 'layers') {
    const nodes = (windLayers ?? []).map((layer) => {
      const [x, y] = carried(layer.from, layer.speed, runway.heading);
      return { log: Math.log(Math.max(lowest, layer.height)), x, y };
    });
    return { wind: byLayers(nodes), kinks: [lowest, ...nodes.map(({ log }) => Math.exp(log))] };
  }
  const exponent = kind === 'uniform' ? 0 : airfield.windExponent;
  const veer = kind === 'uniform' ? 0 : (airfield.windVeer ?? 0);
  const veerPerMetre = veer / (veeredAt - veersFrom);
  return {
    kinks: kind === 'uniform' ? [] : veer === 0 ? [lowest] : [lowest, veersFrom, veeredAt],
    wind: (height, out) => {
      const share = Math.exp(exponent * Math.log(Math.max(height, lowest) / 10));
      const perMetre = height > lowest ? (exponent * share) / height : 0;
      // The direction it blows from at this height, seen from the landing direction; it carries away from there.
      const blowsFrom =
        from - runway.heading + veerPerMetre * (Math.min(veeredAt, Math.max(veersFrom, height)) - veersFrom);
      const spin = height > veersFrom && height < veeredAt ? veerPerMetre : 0;
      const [c, s] = [Math.cos(blowsFrom), Math.sin(blowsFrom)];
      out.along = -speed * share * c;
      out.across = -speed * share * s;
      out.alongPerMetre = speed * (share * spin * s - perMetre * c);
      out.acrossPerMetre = -speed * (share * spin * c + perMetre * s);
    },
  };
}

interface Node {
  readonly log: number;
  readonly x: number;
  readonly y: number;
}

/** Vectors, linear in the logarithm of height between the layers, constant beyond the first and the last. */
function byLayers(nodes: readonly Node[]): World['wind'] {
  return (height, out) => {
    const log = Math.log(Math.max(height, lowest));
    const first = nodes[0]!;
    const last = nodes.at(-1)!;
    const still = log <= first.log ? first : log >= last.log ? last : undefined;
    if (still) {
      [out.along, out.across, out.alongPerMetre, out.acrossPerMetre] = [still.x, still.y, 0, 0];
      return;
    }
    const i = nodes.findIndex((node) => node.log > log);
    const [a, b] = [nodes[i - 1]!, nodes[i]!];
    const perLog = 1 / (b.log - a.log);
    const share = (log - a.log) * perLog;
    out.along = a.x + share * (b.x - a.x);
    out.across = a.y + share * (b.y - a.y);
    const perMetre = height > lowest ? perLog / height : 0;
    out.alongPerMetre = (b.x - a.x) * perMetre;
    out.acrossPerMetre = (b.y - a.y) * perMetre;
  };
}

const foot = 0.3048;

/** A request as the equations need it. Its glides are best glides, its speeds equivalent. */
export function worldOf(request: PlanRequest): World {
  const { aircraft, airfield, runway, power, minimums } = request;
  const mass = Math.sqrt((request.mass ?? aircraft.mass.flown) / aircraft.mass.reference);
  const measured = power === 'idle' ? aircraft.glide.idle : aircraft.glide.stopped;
  if (!measured || measured.points) throw new Error('a best glide is needed');
  const { steepApproach, speeds } = aircraft;
  return {
    ...thinnessOf(airfield.elevation, request.temperature, request.qnh),
    ...windOf(request),
    glide: { speed: measured.speed * mass, ratio: measured.ratio },
    steep: steepApproach && { speed: steepApproach.speed * mass, ratio: steepApproach.ratio },
    stall: speeds.stall * mass,
    approach: speeds.approach * mass,
    touchdown: speeds.touchdown * mass,
    span: aircraft.wing.span,
    wingAboveWheels: aircraft.wing.aboveWheels,
    roundOutHeight: aircraft.roundOut.height,
    rollRate: aircraft.turns.rollRate,
    bank: request.bank ?? aircraft.turns.bank,
    bankLimit: aircraft.turns.limit,
    side: (request.circuit ?? runway.circuit) === 'right' ? 1 : -1,
    spacing: request.spacing ?? aircraft.pattern?.spacing ?? airfield.pattern.spacing,
    leastFinal: Math.max(300 * foot, minimums?.finalTurn ?? 0),
    speedHeldDownTo: 50 * foot,
  };
}
