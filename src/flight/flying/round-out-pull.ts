import { stillAir } from '../air/wind.ts';
import { Integrator, type State } from '../numerics/integrator.ts';
import { rootInBracket } from '../numerics/root.ts';
import { RequestError, unlessRefused } from '../terms/errors.ts';
import type { Conditions } from './conditions.ts';
import { EAS, glideAlongLine, HEIGHT, roundOut, speedHeldDownTo, stateSize } from './motions.ts';

/** m. The wheel height at which a round-out that has to be firmer than the aircraft's own becomes level: about a foot. */
const holdOffHeight = 0.3;

/** No aircraft of ours is pulled harder than this near the ground. */
const hardestPull = 3;

/**
 * The load factor with which the round-out is flown at the end of a final at the approach speed: the aircraft's own,
 * or as much more as it takes to be level a foot above the ground. A wind that drops near the ground plays its part.
 * Where it takes so much that no landing is left, it is the aircraft's own, and the flight shows what happens. Throws
 * RequestError where the approach leaves no speed to hold off even in still air.
 */
export function roundOutPull(conditions: Conditions): number {
  const pull = firmerPull(endOfFinal(conditions), conditions);
  if (pull !== undefined) return pull;
  const calm: Conditions = {
    ...conditions,
    wind: (_height, out) => Object.assign(out, stillAir()),
  };
  pullFrom(endOfFinal(calm), calm);
  return conditions.aircraft.roundOut.loadFactor;
}

/** The same for a round-out that begins in a given state: its height, airspeed and path. */
export function pullFrom(begins: State, conditions: Conditions): number {
  const { aircraft, speeds } = conditions;
  const own = aircraft.roundOut.loadFactor;
  const withOwn = levelAfter(begins, conditions, own);
  const pull = withOwn.height >= holdOffHeight ? own : firmer(begins, conditions);
  const { eas } = pull === own ? withOwn : levelAfter(begins, conditions, pull);
  if (eas <= speeds.touchdown) {
    throw new RequestError('speeds.approach', { code: 'no-speed-to-hold-off' });
  }
  return pull;
}

function firmer(begins: State, conditions: Conditions): number {
  const own = conditions.aircraft.roundOut.loadFactor;
  const miss = (pull: number) => levelAfter(begins, conditions, pull).height - holdOffHeight;
  const pull = rootInBracket(miss, [own, hardestPull], 1e-6);
  if (pull === undefined) {
    throw new RequestError('round-out.height', { code: 'no-pull-is-level' });
  }
  return pull;
}

/** The pull that a round-out from a state needs; undefined where no pull is level, or none leaves a speed to hold off. */
export function firmerPull(begins: State, conditions: Conditions): number | undefined {
  return unlessRefused(() => pullFrom(begins, conditions));
}

const integrator = new Integrator(stateSize);

/** Where the round-out begins: at the end of a final that was flown at the approach speed for as long as it is held. */
function endOfFinal(conditions: Conditions): State {
  const { aircraft, speeds } = conditions;
  const { height } = aircraft.roundOut;
  const state = new Float64Array(stateSize);
  state[HEIGHT] = Math.max(height, speedHeldDownTo);
  state[EAS] = speeds.approach;
  const speed = height > speedHeldDownTo ? 'held' : 'left';
  const glide = glideAlongLine(conditions, 0, (now) => now[HEIGHT]! - height, speed);
  glide.settle?.(state);
  integrator.run(glide, state, false);
  return state;
}

/** Height and speed at which a round-out becomes level. */
function levelAfter(begins: State, conditions: Conditions, pull: number): { height: number; eas: number } {
  const { wing } = conditions.aircraft;
  const state = begins.slice();
  const landing = { wingSpan: wing.span, wingAboveWheels: wing.aboveWheels };
  integrator.run(roundOut(conditions, landing, pull), state, false);
  return { height: state[HEIGHT]!, eas: state[EAS]! };
}
