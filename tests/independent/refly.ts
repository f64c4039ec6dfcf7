import type { KeyId } from '../../src/flight/terms/key.ts';
import type { Plan, PlanRequest } from '../../src/flight/terms/plan.ts';
import { Flight, untilAcross, untilAlong, untilHeight, type Watch } from './flight.ts';
import { EAS, PSI } from './rates.ts';
import { worldOf } from './world.ts';

/** A plan's procedure flown again by these equations, with the numbers that the plan found. */
export interface Reflown {
  readonly flight: Flight;
  /** m/s EAS at which the round-out begins. */
  readonly roundOutSpeed: number;
}

/** s, of every step. */
const step = 0.02;

/**
 * Flies a plan again. It reads from the plan its solved number, the places where its turns begin, the bank of a
 * single continuous turn and the load factor of its pull. The rest comes from the request.
 */
export function refly(request: PlanRequest, plan: Plan, watch?: Watch): Reflown {
  const world = worldOf(request);
  const flight = new Flight(world, step, watch);
  const { side, spacing } = world;
  const downwind = -side * Math.PI;
  switch (request.approach) {
    case '90':
      beginOnBase(flight, plan);
      fromBase(flight, plan);
      break;
    case '180':
      flight.begin(0, side * spacing, plan.flown.keyHeight, downwind);
      fromDownwind(flight, plan);
      break;
    case '360':
      fromOverhead(flight, plan);
      break;
    case 'spiral':
      downInCircles(flight, plan);
      fromDownwind(flight, plan);
      break;
  }
  flight.line('final', 0, untilHeight(world.roundOutHeight), world.approach);
  const roundOutSpeed = flight.state[EAS]!;
  flight.land(plan.roundOut.loadFactor);
  return { flight, roundOutSpeed };
}

function keyOf(plan: Plan, id: KeyId) {
  const key = plan.keys.find((each) => each.id === id);
  if (!key) throw new Error(`the plan has no key ${id}`);
  return key;
}

function beginOnBase(flight: Flight, plan: Plan): void {
  const { side } = flight.world;
  const { name, value } = plan.solved;
  const [start] = plan.track;
  const distance = name === 'base-distance' ? value : -start!.along;
  const height = name === 'throttle-height' ? value : start!.height;
  flight.begin(-distance, side * distance, height, (-side * Math.PI) / 2);
}

function fromBase(flight: Flight, plan: Plan): void {
  const { side, bank } = flight.world;
  const begins = keyOf(plan, 'final-turn').across;
  flight.line('base', (-side * Math.PI) / 2, untilAcross(begins, side === 1 ? -1 : 1));
  flight.turn('final-turn', 0, side, bank);
}

function fromDownwind(flight: Flight, plan: Plan): void {
  const { side, bank } = flight.world;
  const { name, value } = plan.solved;
  const begins = name === 'past-abeam' ? -value : keyOf(plan, 'base-turn').along;
  flight.line('downwind', -side * Math.PI, untilAlong(begins, -1));
  if (plan.track.some(({ phase }) => phase === 'base')) {
    flight.turn('base-turn', (-side * Math.PI) / 2, side, bank);
    fromBase(flight, plan);
    return;
  }
  const inOneTurn = plan.track.filter(({ phase }) => phase === 'base-turn' || phase === 'final-turn');
  const steepest = inOneTurn.reduce((most, sample) => Math.max(most, Math.abs(sample.bank)), 0);
  flight.turn('base-turn', (-side * Math.PI) / 2, side, steepest, false);
  flight.turn('final-turn', 0, side, steepest);
}

function fromOverhead(flight: Flight, plan: Plan): void {
  const { side } = flight.world;
  const { name, value } = plan.solved;
  const half = side * Math.PI;
  const radius = name === 'circle-radius' ? value : Math.abs(keyOf(plan, 'downwind-key').across) / 2;
  flight.begin(0, 0, name === 'start-height' ? value : plan.track[0]!.height, 0);
  flight.circle('circle', radius, side, 0, half);
  flight.line('downwind', half, untilAlong(keyOf(plan, 'base-turn').along, -1));
  flight.circle('base-turn', radius, side, half, 1.5 * half);
  flight.circle('final-turn', radius, side, 1.5 * half, 2 * half);
}

/** Down to the downwind key by whole circles, held on the ground or drifting at one bank. */
function downInCircles(flight: Flight, plan: Plan): void {
  const { side } = flight.world;
  const [start] = plan.track;
  const { name, value } = plan.solved;
  const from = -side * Math.PI;
  const to = from + side * 2 * Math.PI * plan.circles!.flown;
  flight.begin(start!.along, start!.across, plan.flown.height, from);
  if (name === 'circle-radius') flight.circle('circle', value, side, from, to);
  else {
    // A drifting circle begins on the heading of downwind itself, with the drift not yet allowed for.
    flight.state[PSI] = from;
    flight.turn('circle', to, side, value);
  }
}
