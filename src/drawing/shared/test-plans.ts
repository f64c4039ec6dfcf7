import { planApproach } from '../../flight/plan/planner.ts';
import type { Aircraft } from '../../flight/terms/aircraft.ts';
import type { Airfield, Runway } from '../../flight/terms/airfield.ts';
import type { KeyId } from '../../flight/terms/key.ts';
import type { Phase, Plan, TrackSample } from '../../flight/terms/plan.ts';

// For tests: plans made of straight lines and arcs, so that a drawing can be checked against plain geometry.

export const aircraft: Aircraft = {
  name: 'Osier 15',
  class: 'weight-shift',
  source: 'invented for the tests',
  mass: { reference: 360, flown: 360 },
  wing: { span: 10, aboveWheels: 2.6 },
  speeds: { stall: 15.4, touchdown: 16.5, approach: 22.6 },
  glide: { idle: { speed: 20.6, ratio: 6.2 } },
  turns: { bank: 0.5236, limit: 1.047, rollRate: 0.5 },
  roundOut: { height: 3, loadFactor: 1.15 },
  landingRoll: 110,
  limits: { wind: 12, crosswind: 6 },
};

/** Faster, flatter, three-axis. */
export const fasterAircraft: Aircraft = {
  ...aircraft,
  name: 'Withy 80',
  class: 'three-axis',
  mass: { reference: 560, flown: 560 },
  speeds: { stall: 21, touchdown: 22.5, approach: 31 },
  glide: { idle: { speed: 31, ratio: 9.5 } },
};

export function runwayOf(changes: Partial<Runway> = {}): Runway {
  return {
    name: '24',
    heading: (237 * Math.PI) / 180,
    length: 520,
    width: 24,
    surface: 'grass',
    circuit: 'left',
    spot: 120,
    obstacles: [{ what: 'Hedge', height: 3, along: -150, across: 0, width: 90 }],
    ...changes,
  };
}

export function airfieldOf(runway: Runway): Airfield {
  return {
    name: 'Fallow Reach',
    source: 'invented for the tests',
    elevation: 62,
    variation: (-2 * Math.PI) / 180,
    windExponent: 1 / 7,
    pattern: { height: 304.8, spacing: 400 },
    runways: [runway],
  };
}

export interface Shape {
  readonly circuit: 'left' | 'right';
  /** m. */
  readonly spacing: number;
  readonly pastAbeam: number;
  readonly radius: number;
  readonly height: number;
  /** Whole circles over the spot and half a circle to the downwind leg, before the pattern. */
  readonly circles?: number;
  readonly runway?: Partial<Runway>;
}

const turning: readonly Phase[] = ['circle', 'base-turn', 'final-turn'];

/** A pattern in still air: straight legs, two arcs, the wheels at the spot; 20 m/s throughout. */
export function drawnPattern(shape: Shape): Plan {
  const runway = runwayOf({ circuit: shape.circuit, ...shape.runway });
  const side = shape.circuit === 'left' ? -1 : 1;
  const { spacing, pastAbeam, radius } = shape;
  const path: { along: number; across: number; phase: Phase; turn: number; heading: number }[] = [];
  const step = 5;
  const put = (along: number, wide: number, phase: Phase, heading: number) =>
    path.push({ along, across: side * wide, phase, turn: turning.includes(phase) ? 1 : 0, heading });
  const { circles } = shape;
  if (circles !== undefined) {
    const wide = spacing / 2;
    for (let t = 0; t < Math.PI * (2 * circles + 1); t += step / wide) {
      put(wide * Math.sin(t), wide - wide * Math.cos(t), 'circle', t);
    }
  }
  for (let a = circles === undefined ? 100 : 0; a > -pastAbeam; a -= step)
    put(a, spacing, 'downwind', Math.PI);
  const arc = (phase: Phase, a0: number, w0: number, from: number) => {
    for (let t = 0; t < Math.PI / 2; t += step / radius) {
      put(a0 - radius * Math.sin(from + t), w0 + radius * Math.cos(from + t), phase, Math.PI + from + t);
    }
  };
  arc('base-turn', -pastAbeam, spacing - radius, 0);
  for (let w = spacing - radius; w > radius; w -= step) put(-pastAbeam - radius, w, 'base', 1.5 * Math.PI);
  arc('final-turn', -pastAbeam, radius, Math.PI / 2);
  for (let a = -pastAbeam; a < -60; a += step) put(a, 0, 'final', 2 * Math.PI);
  for (let a = -60; a < -25; a += step) put(a, 0, 'round-out', 2 * Math.PI);
  for (let a = -25; a <= 0; a += step) put(a, 0, 'hold-off', 2 * Math.PI);
  const gliding = path.filter(({ phase }) => phase !== 'round-out' && phase !== 'hold-off').length;
  const track = path.map(({ along, across, phase, turn, heading }, index): TrackSample => {
    const height =
      index < gliding
        ? 3 + (shape.height - 3) * (1 - index / (gliding - 1))
        : 3 * ((path.length - 1 - index) / (path.length - gliding)) ** 2;
    return {
      time: (index * step) / 20,
      along,
      across,
      height,
      heading: runway.heading + side * heading,
      bank: side * turn * 0.5,
      eas: 20,
      tas: 20,
      sink: 3,
      groundspeed: 20,
      phase,
    };
  });
  const at = (id: KeyId, label: string, sample: TrackSample) => ({
    id,
    label,
    time: sample.time,
    along: sample.along,
    across: sample.across,
    height: sample.height,
  });
  const first = (phase: Phase) => track.find((sample) => sample.phase === phase)!;
  const abeam = track.find((sample) => sample.phase === 'downwind' && sample.along <= 0)!;
  const base =
    track.find((sample) => sample.phase === 'base' && Math.abs(sample.across) <= pastAbeam + radius) ??
    first('base');
  const finalSample = first('final');
  const aim = { ...track.at(-1)!, along: -75, height: 0, time: finalSample.time + (pastAbeam - 75) / 20 };
  const keys = [
    ...(circles === undefined ? [] : [at('overhead', 'Overhead', track[0]!)]),
    at('downwind-key', 'Downwind key', abeam),
    at('base-turn', 'Base turn', first('base-turn')),
    at('base-key', 'Base key', base),
    at('final-turn', 'Final turn', first('final-turn')),
    at('final', 'Final', finalSample),
    at('aim-point', 'Aim point', aim),
    at('touchdown', 'Touchdown', track.at(-1)!),
  ];
  const airfield = airfieldOf(runway);
  const flownWind = { from: (210 * Math.PI) / 180, speed: 6.2 };
  return {
    aircraft,
    airfield,
    runway,
    air: { elevation: 62, temperature: 287.7, pressure: 100580, density: 1.218, densityAltitude: 62 },
    wind: [
      { height: 10, ...flownWind },
      { height: 304.8, from: (220 * Math.PI) / 180, speed: 10.1 },
    ],
    approach: circles === undefined ? '180' : circles === 0 ? '360' : 'spiral',
    power: 'idle',
    circuit: shape.circuit,
    flown: {
      surfaceWind: flownWind,
      windProfile: 'layers',
      mass: 360,
      height: track[0]!.height,
      keyHeight: abeam.height,
      spacing,
      bank: 0.5236,
      glideSpeed: 20.6,
      approachSpeed: 22.6,
      touchdownSpeed: 16.5,
      stallSpeed: 15.4,
      glideRatio: 6.2,
    },
    solved: { name: 'past-abeam', value: pastAbeam, unit: 'm' },
    track,
    keys,
    gates: [
      { at: 'downwind-key', low: abeam.height * 0.8, plan: abeam.height, high: abeam.height * 1.25 },
      { at: 'base-key', low: base.height * 0.82, plan: base.height, high: base.height * 1.2 },
      { at: 'final', low: null, plan: finalSample.height, high: finalSample.height * 1.2 },
    ],
    touchdown: { along: 0, across: 0, time: track.at(-1)!.time, speed: 15 },
    roundOut: { roundOutDistance: 50, holdOffDistance: 25, loadFactor: 1.15 },
    cautions: [],
    grade: 'sound',
    made: true,
  };
}

/** Every approach, both circuits, calm and 10 kt from four sides, as the planner flies them. */
export function plannedCases(): [name: string, plan: () => Plan][] {
  const winds = [
    { from: 0, speed: 0 },
    ...[0, 90, 180, 270].map((off) => ({ from: (((237 + off) % 360) * Math.PI) / 180, speed: 5.14 })),
  ];
  const runway = runwayOf({ length: 640, spot: 150 });
  const cases: [string, () => Plan][] = [];
  for (const approach of ['90', '180', '360', 'spiral'] as const) {
    for (const circuit of ['left', 'right'] as const) {
      for (const [index, wind] of winds.entries()) {
        const flier = circuit === 'left' ? aircraft : fasterAircraft;
        const request = {
          aircraft: flier,
          airfield: airfieldOf(runway),
          runway,
          approach,
          circuit,
          wind,
        } as const;
        const name = `${flier.name}, ${approach}, ${circuit}, ${index === 0 ? 'calm' : `10 kt, side ${index}`}`;
        cases.push([name, () => planApproach({ ...request, power: 'idle' })]);
      }
    }
  }
  return cases;
}
