import type { AircraftData } from '../../src/flight/terms/aircraft-data.ts';
import type { Obstacle } from '../../src/flight/terms/airfield.ts';
import type { Approach } from '../../src/flight/terms/approach.ts';
import type { Plan, PlanRequest } from '../../src/flight/terms/plan.ts';
import type { Chance } from './random.ts';

const degrees = (angle: number) => (angle * Math.PI) / 180;
const invented = 'invented for this test';

/** An aircraft of 3:1 to 15:1 whose speeds are in a sensible relation. */
function randomAircraft(chance: Chance): AircraftData {
  const weightShift = chance.happens(0.5);
  const stall = weightShift ? chance.between(11, 17) : chance.between(15, 25);
  const touchdown = stall * chance.between(1.03, 1.2);
  const approach = Math.max(touchdown * 1.08, stall * chance.between(1.25, 1.65));
  const best = stall * chance.between(1.3, 1.75);
  const ratio = weightShift ? chance.between(3, 10) : chance.between(5, 15);
  const reference = chance.between(280, 600);
  const bank = degrees(chance.between(20, 45));
  return {
    name: 'Alder',
    class: weightShift ? 'weight-shift' : 'three-axis',
    source: invented,
    mass: { reference, flown: reference * chance.between(0.75, 1.1) },
    wing: { span: chance.between(8, 14), aboveWheels: chance.between(0.8, 3) },
    speeds: { stall, touchdown, approach },
    glide: {
      idle: { speed: best, ratio },
      stopped: { speed: best * chance.between(0.95, 1.05), ratio: ratio * chance.between(0.8, 1) },
    },
    steepApproach: chance.happens(0.5)
      ? { speed: best * chance.between(1.05, 1.3), ratio: ratio * chance.between(0.5, 0.8) }
      : undefined,
    turns: { bank, limit: degrees(chance.between(46, 60)), rollRate: degrees(chance.between(10, 40)) },
    roundOut: { height: chance.between(2.5, 7), loadFactor: chance.between(1.1, 1.3) },
    landingRoll: chance.between(60, 250),
    limits: { wind: 30, crosswind: 30 },
  };
}

/** Layers that turn and grow with height; sometimes with a jump of the wind between two of them. */
function randomLayers(chance: Chance, from: number, speed: number) {
  let height = chance.between(5, 20);
  return Array.from({ length: chance.whole(2, 5) }, (_, i) => {
    const layer = {
      height,
      from: (from + i * degrees(chance.between(-15, 25)) + 2 * Math.PI) % (2 * Math.PI),
      speed: speed * (1 + i * chance.between(-0.1, 0.3)),
    };
    height *= chance.between(1.6, 4);
    return layer;
  });
}

/** A request without obstacles. */
export function randomRequest(chance: Chance): PlanRequest {
  const aircraft = randomAircraft(chance);
  const { idle, stopped } = aircraft.glide as { idle: { ratio: number }; stopped: { ratio: number } };
  const power = chance.of(['idle', 'stopped'] as const);
  const { ratio } = power === 'idle' ? idle : stopped;
  const approach: Approach = chance.of(['90', '180', '180', '180', '180', '360', 'spiral']);
  // As strong as half the best glide, seldom nearly all of it.
  const glideSpeed = aircraft.speeds.stall * 1.4;
  const speed = chance.happens(0.1) ? 0 : glideSpeed * chance.between(0, chance.happens(0.15) ? 0.8 : 0.45);
  const from = chance.between(0, 2 * Math.PI);
  const heading = chance.between(0, 2 * Math.PI);
  const windProfile = chance.of(['power', 'power', 'power', 'uniform', 'layers'] as const);
  const spacing = chance.between(200, 900);
  // Roughly what a half circuit at this spacing takes.
  const enough = (spacing * chance.between(2.2, 4.5)) / ratio + 60;
  const height = Math.min(2500, Math.max(90, enough));
  const whole = {
    ...(approach === '180' ? { height } : {}),
    ...(approach === '90' && chance.happens(0.5)
      ? { options: { '90': { baseDistance: chance.between(150, 900) } } }
      : {}),
    ...(approach === '360' && chance.happens(0.7)
      ? { height: Math.min(2900, height * chance.between(1.3, 2)) }
      : {}),
    ...(approach === 'spiral' ? { height: Math.min(2900, height + chance.between(150, 700)) } : {}),
    ...(approach === 'spiral' && chance.happens(0.4) ? { options: { spiral: { drift: true } } } : {}),
  };
  return {
    aircraft,
    airfield: {
      name: 'Fallow Reach',
      source: invented,
      elevation: chance.between(0, 1800),
      windExponent: chance.of([1 / 7, 1 / 7, chance.between(0, 0.3)]),
      windVeer: chance.happens(0.5) ? degrees(chance.between(-45, 60)) : undefined,
      pattern: { height, spacing },
      runways: [],
    },
    runway: {
      name: '24',
      heading,
      length: 800,
      width: 30,
      surface: 'grass',
      circuit: chance.of(['left', 'right'] as const),
      spot: chance.between(40, 200),
      obstacles: [],
    },
    approach,
    power,
    wind: { from, speed },
    windProfile,
    windLayers: windProfile === 'layers' ? randomLayers(chance, from, speed) : undefined,
    temperature: chance.happens(0.7) ? chance.between(263, 313) : undefined,
    mass: chance.happens(0.3) ? aircraft.mass.reference * chance.between(0.7, 1.15) : undefined,
    spacing,
    bank: approach !== '360' && chance.happens(0.3) ? degrees(chance.between(15, 45)) : undefined,
    minimums: chance.happens(0.2) ? { finalTurn: chance.between(60, 160) } : undefined,
    ...whole,
  };
}

/** Walls around the path of a plan: under it, beside it, on it, anywhere on its legs, and a few elsewhere. */
export function randomObstacles(chance: Chance, plan: Plan, count = 6): Obstacle[] {
  return Array.from({ length: count }, (_, i) => {
    const sample = chance.of(plan.track);
    const beside = chance.between(-60, 60);
    return {
      what: `wall ${i + 1}`,
      along: sample.along + chance.between(-40, 40),
      across: sample.across + beside,
      width: chance.happens(0.4) ? 1 : chance.between(1, 120),
      height: Math.max(0.5, Math.min(900, sample.height + chance.between(-40, 25))),
    };
  });
}
