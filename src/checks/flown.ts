import { standardGravity } from '../flight/air/constants.ts';
import { inducedDragReduction } from '../flight/aircraft/ground-effect.ts';
import { flyPattern } from '../flight/flying/fly-pattern.ts';
import {
  ACROSS,
  ALONG,
  BANK,
  EAS,
  glideAlongLine,
  glidingTurn,
  HEADING,
  HEIGHT,
  holdOff,
  type Medium,
  stateSize,
} from '../flight/flying/motions.ts';
import { Integrator } from '../flight/numerics/integrator.ts';
import { workOut } from '../flight/plan/planner.ts';
import { type Resolved, resolveRequest } from '../flight/plan/request.ts';
import type { PlanRequest } from '../flight/terms/plan.ts';
import { radiansPerDegree as degree, metresPerSecondPerKnot } from '../units/factors.ts';
import { approachNames } from '../words/approaches/approach-names.ts';
import { gliding, slowingDistance } from './closed-forms.ts';

/** What the core flew, beside what a formula solved apart from it says. */
export interface FlownCheck {
  readonly aircraft: string;
  readonly quantity: string;
  readonly inputs: string;
  readonly unit: string;
  readonly formula: number;
  readonly flown: number;
  readonly allowed: number;
  readonly verdict: 'agrees' | 'disagrees';
}

/** One aircraft flown, compared with closed forms and with the same flight at half the step. */
export function flownChecks(flyer: PlanRequest): FlownCheck[] {
  const resolved = resolveRequest(flyer);
  return [
    ...circle(resolved),
    ...straightGlide(resolved),
    intoFallingWind(resolved),
    slowing(resolved),
    ...(['180', '360'] as const).flatMap((approach) => halvedStep({ ...flyer, approach })),
  ].map((check) => ({
    aircraft: flyer.aircraft.name,
    ...check,
    verdict: Math.abs(check.flown - check.formula) <= check.allowed ? 'agrees' : 'disagrees',
  }));
}

type Unjudged = Omit<FlownCheck, 'aircraft' | 'verdict'>;

/** The air of the field at every height, and a wind against the landing direction, m/s. */
function evenAir({ conditions }: Resolved, headwind = 0): Medium {
  const factor = conditions.tasOverEas(0);
  return {
    polar: conditions.polar,
    thinning: () => 0,
    tasOverEas: () => factor,
    wind: (_height, out) => {
      out.along = -headwind;
      out.across = 0;
    },
  };
}

const high = 1000;

function stateAt(eas: number): Float64Array {
  const state = new Float64Array(stateSize);
  state[EAS] = eas;
  state[HEIGHT] = high;
  return state;
}

function circle(resolved: Resolved): Unjudged[] {
  const { polar } = resolved.conditions;
  const { bank } = resolved.flown;
  const medium = evenAir(resolved);
  const tas = polar.speed * medium.tasOverEas(0);
  const path = gliding(polar, polar.speed, bank);
  const state = stateAt(polar.speed);
  state[BANK] = bank;
  const integrator = new Integrator(stateSize);
  const turnTo = (heading: number) =>
    integrator.run(
      glidingTurn(medium, 0, (s) => heading - s[HEADING]!),
      state,
      false,
    );
  turnTo(Math.PI);
  const radius = state[ACROSS]! / 2;
  turnTo(2 * Math.PI);
  const inputs = `best glide speed, ${Math.round(bank / degree)}° of bank, still air`;
  const [g, tan] = [standardGravity, Math.tan(bank)];
  return [
    {
      quantity: 'Radius of a gliding turn',
      inputs,
      unit: 'm',
      formula: (tas ** 2 * Math.cos(path)) / (g * tan),
      flown: radius,
      allowed: 0.01,
    },
    {
      quantity: 'Height lost in a circle',
      inputs,
      unit: 'm',
      formula: (tas * Math.sin(path) * 2 * Math.PI * tas) / (g * tan),
      flown: high - state[HEIGHT]!,
      allowed: 0.001,
    },
  ];
}

/** kt. */
const headwinds = [0, 10];

function straightGlide(resolved: Resolved): Unjudged[] {
  const { polar } = resolved.conditions;
  const drop = 300;
  return headwinds.map((knots) => {
    const wind = knots * metresPerSecondPerKnot;
    const medium = evenAir(resolved, wind);
    const state = stateAt(polar.speed);
    const motion = glideAlongLine(medium, 0, (s) => s[HEIGHT]! - (high - drop), 'held');
    new Integrator(stateSize).run(motion, state, false);
    const horizontal = polar.speed * medium.tasOverEas(0) * Math.cos(Math.atan(1 / polar.ratio));
    return {
      quantity: `Distance glided in ${drop} m of height`,
      inputs: `best glide speed, ${knots === 0 ? 'still air' : `${knots} kt against it at every height`}`,
      unit: 'm',
      formula: drop * polar.ratio * (1 - wind / horizontal),
      flown: state[ALONG]!,
      allowed: 0.01,
    };
  });
}

/**
 * A headwind that falls evenly on the way down costs height at a held airspeed: sink = V (D/W + F), with
 * F = (dW/dt)/g for the wind along the path (the F-factor of R. L. Bowles, AIAA 90-0341, 1990; from memory). With dW/dt the
 * sink times the wind's change with height, the sink is V D/W over 1 less V cos(path) (change)/g.
 */
function intoFallingWind(resolved: Resolved): Unjudged {
  const { polar } = resolved.conditions;
  const drop = 300;
  const knots = 10;
  const perMetre = (knots * metresPerSecondPerKnot) / drop;
  const still = evenAir(resolved);
  const medium: Medium = {
    ...still,
    wind: (height, out) => {
      out.along = -perMetre * (height - (high - drop));
      out.across = 0;
      out.alongShear = -perMetre;
      out.acrossShear = 0;
    },
  };
  const state = stateAt(polar.speed);
  const motion = glideAlongLine(medium, 0, (s) => s[HEIGHT]! - (high - drop), 'held');
  const { duration } = new Integrator(stateSize).run(motion, state, false);
  const tas = polar.speed * medium.tasOverEas(0);
  const path = Math.atan(1 / polar.ratio);
  return {
    quantity: `Time to glide ${drop} m of height`,
    inputs: `best glide speed held, a headwind of ${knots} kt that falls evenly to none`,
    unit: 's',
    formula: (drop / (tas * Math.sin(path))) * (1 - (tas * Math.cos(path) * perMetre) / standardGravity),
    flown: duration,
    allowed: 0.001,
  };
}

/** Level, with the wheels at the ground, from the approach speed to the touchdown speed. */
function slowing(resolved: Resolved): Unjudged {
  const { aircraft, polar, speeds } = resolved.conditions;
  const { span, aboveWheels } = aircraft.wing;
  const medium = evenAir(resolved);
  const state = stateAt(speeds.approach);
  state[HEIGHT] = 0;
  const landing = { wingSpan: span, wingAboveWheels: aboveWheels };
  const motion = holdOff(medium, landing, {
    level: 0,
    entryEas: speeds.approach,
    touchdownEas: speeds.touchdown,
  });
  new Integrator(stateSize).run(motion, state, false);
  const inducedShare = 1 - inducedDragReduction(aboveWheels / span);
  return {
    quantity: 'Level distance, approach to touchdown speed',
    inputs: 'wheels at the ground, still air',
    unit: 'm',
    formula: slowingDistance(polar, speeds, inducedShare) * medium.tasOverEas(0) ** 2,
    flown: state[ALONG]!,
    allowed: 0.01,
  };
}

/** s. */
const step = 0.5;

/** Nothing where the approach cannot be flown in this wind. */
function halvedStep(request: PlanRequest): Unjudged[] {
  const { solution, resolved } = workOut(request);
  if (!solution) return [];
  const touchdown = (seconds: number) => {
    const { heading } = request.runway;
    const { track } = flyPattern(solution.closed.procedure, resolved.conditions, heading, seconds).flight;
    return track.at(-1)!;
  };
  const [whole, half] = [touchdown(step), touchdown(step / 2)];
  return [
    {
      quantity: 'Touchdown moved by halving the step',
      inputs: `${approachNames[request.approach].title}, the school’s wind, ${step} s to ${step / 2} s`,
      unit: 'mm',
      formula: 0,
      flown: 1000 * Math.hypot(whole.along - half.along, whole.across - half.across),
      allowed: 10,
    },
  ];
}
