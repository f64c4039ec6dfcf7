import type { Plan, PlanRequest } from '../../src/flight/terms/plan.ts';
import { type Contradiction, metres } from './contradiction.ts';
import { X, Y } from './rates.ts';
import { refly } from './refly.ts';
import { worstDefect } from './track-defect.ts';
import { worldOf } from './world.ts';

/** m: what a plan claims about its own touchdown, and how nearly this simulator comes to it. */
const ownTolerance = 0.1;
const tolerance = 2;
/** m: this near to the spot, a landing only needs its number changed. */
const beside = 5;
/** m: between two samples of a track. */
const defectTolerance = 0.15;

type Said = [says: string, metres: number];

const asContradictions =
  (kind: Contradiction['kind'], request: PlanRequest) =>
  ([says, by]: Said): Contradiction => ({ kind, says, metres: by, request });

/** What a plan that calls itself made does not fulfil. Nothing is asked of one that does not. */
export function madeContradictions(request: PlanRequest, plan: Plan): Contradiction[] {
  if (!plan.made) return [];
  const says: Said[] = [];
  const last = plan.track.at(-1)!;
  const off = Math.hypot(last.along, last.across);
  if (off > ownTolerance) says.push([`its own track ends ${metres(off)} from the spot`, off]);
  if (Math.abs(last.height) > 0.01 || last.phase !== 'hold-off') {
    says.push([`its own track ends in ${last.phase}, ${metres(last.height)} high`, last.height]);
  }
  const { flight, roundOutSpeed } = refly(request, plan);
  const again = Math.hypot(flight.state[X]!, flight.state[Y]!);
  if (flight.failed) says.push([`flown again: ${flight.failed}`, Number.NaN]);
  else if (!(again <= tolerance))
    says.push([`flown again, the wheels touch ${metres(again)} from it`, again]);
  const given = (roundOutSpeed / worldOf(request).stall) ** 2;
  const { loadFactor } = plan.roundOut;
  if (!(loadFactor <= given + 0.005)) {
    const figures = `${loadFactor.toFixed(3)} g where the wing gives ${given.toFixed(3)}`;
    says.push([`the round-out needs ${figures}`, Number.NaN]);
  }
  return says.map(asContradictions('made', request));
}

/**
 * A plan that says the spot cannot be made although its own landing ends beside it: with its number changed a little
 * it would end on the spot, so the search has missed it.
 */
export function notMadeContradictions(request: PlanRequest, plan: Plan): Contradiction[] {
  const { along, across, phase } = plan.track.at(-1)!;
  const off = Math.hypot(along, across);
  if (plan.made || phase !== 'hold-off' || off <= ownTolerance || off > beside) return [];
  // A turn to final that ends below the round-out makes nothing, wherever the wheels touch.
  const turned = plan.track.findLast((sample) => sample.phase === 'final-turn');
  if (turned && turned.height < worldOf(request).roundOutHeight) return [];
  const said: Said = [`it says that the spot cannot be made, and lands ${metres(off)} from it`, off];
  return [asContradictions('not-made', request)(said)];
}

/** A track that does not satisfy the equations from one sample to the next. */
export function equationContradictions(request: PlanRequest, plan: Plan): Contradiction[] {
  if (!plan.made) return [];
  const defect = worstDefect(request, plan);
  if (defect.metres <= defectTolerance) return [];
  const where = `in ${defect.phase} at ${defect.time.toFixed(1)} s`;
  const said: Said = [`the track leaves the equations by ${metres(defect.metres)} ${where}`, defect.metres];
  return [asContradictions('equations', request)(said)];
}
