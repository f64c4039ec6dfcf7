import { crab, stillAir } from '../air/wind.ts';
import { turnRadius, turnRate } from '../aircraft/turns.ts';
import type { Gateway } from '../flying/arrival.ts';
import type { Conditions } from '../flying/conditions.ts';
import { Flight } from '../flying/fly.ts';
import { ACROSS, ALONG, EAS, HEADING, HEIGHT } from '../flying/motions.ts';
import type { LineLeg, Side } from '../flying/procedure.ts';
import { type Position, takeUp } from '../flying/reach.ts';
import { round, turnOnTo } from '../flying/turn-on-to.ts';
import { angleBetween } from '../numerics/angle.ts';
import { cosine, sine } from '../numerics/steady-math.ts';

/** m over the ground. */
type Vector = readonly [along: number, across: number];

/** A turn on to the straight way and one off it. */
type Turning = readonly [first: Side, last: Side];

const turnings: readonly Turning[] = [
  [1, 1],
  [-1, -1],
  [1, -1],
  [-1, 1],
];
/** Tries are bounded; a way that has not settled by then does not exist. */
const mostTries = 25;
/** m: how nearly the gateway is met. */
const tolerance = 0.05;
/** Of the time that a way likely takes: no way takes less. */
const shorterThanLikely = 0.7;
/** Tries at what the wind drifts on the way. */
const drifts = 8;

/** A gateway, and the height, m, that is enough there. */
export interface AskedGateway extends Gateway {
  readonly enough: number;
}

/**
 * Height, m, at which the glide straight for a gateway passes it on its track: `arrivalHeight` for one who asks at many
 * points of a flight whether it is at least `enough`. The first turns that do are taken, the best of all only where
 * none does: what is returned is on the right side of `enough`, and where it is over it, no more than the best would be.
 * Minus infinity where no way leads there.
 */
export function passesGateway(
  position: Position,
  gateway: AskedGateway,
  bank: number,
  conditions: Conditions,
): number {
  const { enough } = gateway;
  const way: Way = {
    flight: new Flight(conditions, 0, 'search'),
    before: takeUp(position, conditions).state,
    gateway,
    bank,
  };
  const { speed, ratio } = conditions.polar;
  const [had, lost] = [position.height - enough, (speed / ratio) * conditions.tasOverEas(position.height)];
  let best = Number.NEGATIVE_INFINITY;
  for (const likely of turnings
    .flatMap((turning) => betweenCircles(turning, way) ?? [])
    .sort((a, b) => a.seconds - b.seconds)) {
    // Too long by far, be the wind on the way as it may.
    if (best > Number.NEGATIVE_INFINITY && shorterThanLikely * likely.seconds * lost > had) break;
    best = Math.max(best, passing(likely, way) ?? Number.NEGATIVE_INFINITY);
    if (best >= enough) break;
  }
  return best;
}

interface Way {
  readonly flight: Flight;
  /** The state at the position. */
  readonly before: Float64Array;
  readonly gateway: Gateway;
  readonly bank: number;
}

/** Turns to be tried, and what they likely come to. */
interface Likely {
  readonly turning: Turning;
  /** The straight way between them. */
  readonly straight: Vector;
  /** s, turns and straight way. */
  readonly seconds: number;
}

/**
 * The way from the end of the first turn to the begin of the last is what is sought, as a vector over the ground: what
 * the last try missed is added to it. How the turns move with its direction is learnt from try to try (Broyden, Mathematics
 * of Computation 19, 1965: the update of the inverse).
 */
function passing({ turning, straight }: Likely, asked: Way): number | undefined {
  const { flight } = asked;
  let way = straight;
  let { miss, forward } = flown(way, turning, asked);
  let learnt: Learnt = [
    [1, 0],
    [0, 1],
  ];
  for (let tries = 0; tries < mostTries && flight.flyable; tries++) {
    if (Math.hypot(...miss) < tolerance) return forward ? flight.state[HEIGHT]! : undefined;
    const step: Vector = [dot(learnt[0], miss), dot(learnt[1], miss)];
    way = plus(way, step);
    const next = flown(way, turning, asked);
    learnt = taught(learnt, step, [miss[0] - next.miss[0], miss[1] - next.miss[1]]);
    ({ miss, forward } = next);
  }
  return undefined;
}

/** Flies a way, and says what it missed. */
function flown(
  way: Vector,
  [first, last]: Turning,
  { flight, before, gateway, bank }: Way,
): { miss: Vector; forward: boolean } {
  const { state } = flight;
  state.set(before);
  flight.flyable = true;
  const track = Math.atan2(way[1], way[0]);
  flight.leg(turnOnTo(track, first, bank, flight));
  const forward = flight.leg(straight(way, track, flight)) >= 0;
  flight.leg(turnOnTo(gateway.track, last, bank, flight));
  return { miss: [gateway.along - state[ALONG]!, gateway.across - state[ACROSS]!], forward };
}

/** Straight on by a vector over the ground, measured along whichever axis it runs more nearly. */
function straight(way: Vector, track: number, { state, conditions }: Flight): LineLeg {
  const byAlong = Math.abs(cosine(track)) > Math.abs(sine(track));
  const growing = way[byAlong ? 0 : 1] >= 0 ? 1 : -1;
  return {
    kind: 'line',
    phase: 'base',
    track: state[HEADING]! + angleBetween(state[HEADING]!, track),
    until: byAlong
      ? { reaches: 'along', value: state[ALONG]! + way[0], growing }
      : { reaches: 'across', value: state[ACROSS]! + way[1], growing },
    eas: conditions.polar.speed,
  };
}

/**
 * Where the search begins: the tangent from the circle of the first turn to the circle of the last, in air that moves as
 * one, with the wind half way down. Undefined where the circles leave no tangent.
 */
function betweenCircles(turning: Turning, { flight, before, gateway, bank }: Way): Likely | undefined {
  const [first, last] = turning;
  const { conditions } = flight;
  const height = before[HEIGHT]!;
  const tas = before[EAS]! * conditions.tasOverEas(height);
  const [radius, rate] = [turnRadius(tas, bank), turnRate(tas, bank)];
  const wind = stillAir();
  conditions.wind(height / 2, wind);
  const heading = before[HEADING]!;
  const lastHeading = gateway.track + crab(gateway.track, tas, wind);
  // A circle's centre lies a radius to the side of the nose.
  const centre = (side: Side, nose: number): Vector => [
    -side * radius * sine(nose),
    side * radius * cosine(nose),
  ];
  const apart = plus(
    [gateway.along - before[ALONG]!, gateway.across - before[ACROSS]!],
    plus(centre(last, lastHeading), times(-1, centre(first, heading))),
  );
  const crossed = first === last ? 0 : 2 * radius * first;
  const drifted = (seconds: number): Vector => [seconds * wind.along, seconds * wind.across];
  let air = tangent(apart, crossed);
  let [straightOn, turned] = [0, 0];
  for (let tries = 0; tries < drifts && air; tries++) {
    const nose = Math.atan2(air[1], air[0]);
    turned = (round(first, heading, nose) + round(last, nose, lastHeading)) / rate;
    straightOn = Math.hypot(...air) / tas;
    air = tangent(plus(apart, drifted(-turned - straightOn)), crossed);
  }
  return air && { turning, straight: plus(air, drifted(straightOn)), seconds: turned + straightOn };
}

/** The straight between two circles whose centres lie a vector apart, `crossed` m being what it crosses over from one to the other. */
function tangent(apart: Vector, crossed: number): Vector | undefined {
  const square = apart[0] * apart[0] + apart[1] * apart[1];
  const length = Math.sqrt(square - crossed * crossed);
  if (!(length > 0)) return undefined;
  const [ahead, off] = [length / square, crossed / square];
  return [length * (apart[0] * ahead - apart[1] * off), length * (apart[1] * ahead + apart[0] * off)];
}

/** What to do about a miss. */
type Learnt = readonly [Vector, Vector];

/** The same, taught by a step and how much less was missed after it. */
function taught(learnt: Learnt, step: Vector, less: Vector): Learnt {
  const made: Vector = [dot(learnt[0], less), dot(learnt[1], less)];
  const share = dot(step, made);
  if (share === 0) return learnt;
  const back: Vector = [
    (step[0] * learnt[0][0] + step[1] * learnt[1][0]) / share,
    (step[0] * learnt[0][1] + step[1] * learnt[1][1]) / share,
  ];
  const off: Vector = [step[0] - made[0], step[1] - made[1]];
  return [
    [learnt[0][0] + off[0] * back[0], learnt[0][1] + off[0] * back[1]],
    [learnt[1][0] + off[1] * back[0], learnt[1][1] + off[1] * back[1]],
  ];
}

const plus = (a: Vector, b: Vector): Vector => [a[0] + b[0], a[1] + b[1]];
const times = (share: number, a: Vector): Vector => [share * a[0], share * a[1]];
const dot = (a: Vector, b: Vector) => a[0] * b[0] + a[1] * b[1];
