import type { Conditions } from './conditions.ts';
import { RequestError } from './errors.ts';
import { sinOfGlide } from './glide.ts';
import { Integrator } from './integrator.ts';
import { EAS, HEIGHT, PATH, roundOut, stateSize } from './motions.ts';
import { rootInBracket } from './root.ts';

/** m. Wheel height at which a round-out that has to be firmer than the aircraft's own becomes level: about a foot. */
const holdOffHeight = 0.3;

/** No aircraft of ours is pulled harder than this near the ground. */
const hardestPull = 3;

/**
 * The load factor with which the round-out is flown: the aircraft's own, or as much more as it takes to be level a
 * foot above the ground. Only the path through the air counts, so no wind comes into it.
 * Throws RequestError where the approach leaves no speed to hold off.
 */
export function roundOutPull(conditions: Conditions): number {
  const { aircraft, speeds } = conditions;
  const own = aircraft.roundOut.loadFactor;
  const withOwn = levelAfter(conditions, own);
  const pull = withOwn.height >= holdOffHeight ? own : firmer(conditions);
  const { eas } = pull === own ? withOwn : levelAfter(conditions, pull);
  if (eas <= speeds.touchdown) {
    throw new RequestError(
      'speeds.approach',
      'the round-out ends below the touchdown speed: a faster approach speed, or a slower touchdown speed, is needed',
    );
  }
  return pull;
}

function firmer(conditions: Conditions): number {
  const own = conditions.aircraft.roundOut.loadFactor;
  const miss = (pull: number) => levelAfter(conditions, pull).height - holdOffHeight;
  const pull = rootInBracket(miss, [own, hardestPull], 1e-6);
  if (pull === undefined) {
    throw new RequestError(
      'round-out.height',
      'from this round-out height no pull is level before the ground: begin the round-out higher',
    );
  }
  return pull;
}

const integrator = new Integrator(stateSize);

/** Height and speed at which a round-out from the aircraft's height becomes level. */
function levelAfter(conditions: Conditions, pull: number): { height: number; eas: number } {
  const { aircraft, speeds } = conditions;
  const state = new Float64Array(stateSize);
  state[HEIGHT] = aircraft.roundOut.height;
  state[EAS] = speeds.approach;
  state[PATH] = Math.asin(sinOfGlide(conditions.polar, speeds.approach, 1));
  const landing = { wingSpan: aircraft.wing.span, wingAboveWheels: aircraft.wing.aboveWheels };
  integrator.run(roundOut(conditions, landing, pull), state, false);
  return { height: state[HEIGHT]!, eas: state[EAS]! };
}
