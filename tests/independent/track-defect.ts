import type { Phase, Plan, PlanRequest, TrackSample } from '../../src/flight/terms/plan.ts';
import {
  alongTrack,
  BANK,
  EAS,
  H,
  holdingOff,
  PATH,
  PSI,
  type Rates,
  roundCircle,
  roundingOut,
  type State,
  size,
  TRACK,
  turning,
  X,
  Y,
} from './rates.ts';
import { advance } from './runge-kutta.ts';
import { worldOf } from './world.ts';

/** Where a reported track satisfies the equations least. */
export interface Defect {
  /** m: between the place that the equations lead to from one sample, and the next sample. */
  readonly metres: number;
  readonly phase: Phase;
  readonly time: number;
}

/** Flies from every sample of a plan's track to the next by the equations, and says where they differ most. */
export function worstDefect(request: PlanRequest, plan: Plan): Defect {
  const world = worldOf(request);
  const { side } = world;
  const tracks = { downwind: -side * Math.PI, base: (-side * Math.PI) / 2, final: 0 } as const;
  const { track } = plan;
  const radius =
    request.approach === '360' || plan.solved.name === 'circle-radius' ? radiusOf(plan) : undefined;
  const level = track.findLast(({ phase }) => phase === 'round-out');
  const ratesFor = (a: TrackSample, b: TrackSample): Rates[] => {
    const { phase } = b;
    if (phase === 'downwind' || phase === 'base' || phase === 'final') {
      const ways = ([-1, 0, 1] as const).map((change) =>
        alongTrack(world, world.glide, tracks[phase], change),
      );
      const noseStays = a.height <= world.speedHeldDownTo + 1e-3;
      return noseStays ? [...ways, alongTrack(world, world.glide, tracks[phase], 0, false)] : ways;
    }
    if (phase === 'round-out') return [roundingOut(world, plan.roundOut.loadFactor)];
    if (phase === 'hold-off') {
      const toLose = (level!.eas - world.touchdown) * world.thinness(0);
      return [holdingOff(world, level!.height / toLose)];
    }
    if (radius !== undefined && (request.approach === '360' || phase === 'circle')) {
      return [roundCircle(world, radius, side)];
    }
    return [turning(world, (b.bank - a.bank) / (b.time - a.time))];
  };
  let worst: Defect = { metres: 0, phase: 'final', time: 0 };
  for (let i = 1; i < track.length; i++) {
    const [a, b] = [track[i - 1]!, track[i]!];
    if (!(b.time > a.time) || world.kinks.some((kink) => passes(kink, a, b))) continue;
    const off = ratesFor(a, b).map((rates) => apartAfter(rates, a, b, plan.runway.heading, side, radius));
    const metres = Math.min(...off);
    if (!(metres <= worst.metres)) worst = { metres, phase: b.phase, time: b.time };
  }
  return worst;
}

/** Where the wind's change with height jumps, the plan rounds it: a twentieth of the height to each side, or half a metre. */
function passes(kink: number, a: TrackSample, b: TrackSample): boolean {
  const rounded = Math.max(0.5, kink / 20);
  const [low, high] = [Math.min(a.height, b.height), Math.max(a.height, b.height)];
  return low < kink + rounded && high > kink - rounded;
}

function radiusOf(plan: Plan): number {
  if (plan.solved.name === 'circle-radius') return plan.solved.value;
  return Math.abs(plan.keys.find(({ id }) => id === 'downwind-key')!.across) / 2;
}

function stateAt(sample: TrackSample, runwayHeading: number): State {
  const state = new Float64Array(size);
  state[X] = sample.along;
  state[Y] = sample.across;
  state[H] = sample.height;
  state[PSI] = sample.heading - runwayHeading;
  state[BANK] = sample.bank;
  state[EAS] = sample.eas;
  state[PATH] = Math.asin(Math.min(1, sample.sink / sample.tas));
  return state;
}

function apartAfter(
  rates: Rates,
  a: TrackSample,
  b: TrackSample,
  runwayHeading: number,
  side: 1 | -1,
  radius: number | undefined,
): number {
  const state = stateAt(a, runwayHeading);
  if (radius !== undefined) state[TRACK] = trackOnCircle(a, b, radius, side);
  const steps = 20;
  for (let i = 0; i < steps; i++) advance(rates, state, (b.time - a.time) / steps, state);
  const speed = (b.time - a.time) * (state[EAS]! - b.eas);
  return Math.hypot(state[X]! - b.along, state[Y]! - b.across, state[H]! - b.height, speed);
}

/** The direction of a circle's tangent at a sample, from the chord to the next. */
function trackOnCircle(a: TrackSample, b: TrackSample, radius: number, side: 1 | -1): number {
  const chord = Math.hypot(b.along - a.along, b.across - a.across);
  const half = Math.asin(Math.min(1, chord / (2 * radius)));
  return Math.atan2(b.across - a.across, b.along - a.along) - side * half;
}
