import { landingRunOf } from '../aircraft/landing-run.ts';
import type { ApproachTask } from '../approaches/approach-method.ts';
import { arrivalHeight } from '../flying/arrival.ts';
import type { Conditions } from '../flying/conditions.ts';
import { Flight } from '../flying/fly.ts';
import { flyPattern } from '../flying/fly-pattern.ts';
import { HEIGHT } from '../flying/motions.ts';
import { closeApproach } from '../flying/open-approach.ts';
import { finalLegs } from '../flying/pattern-legs.ts';
import type { Leg, Start } from '../flying/procedure.ts';
import type { Position } from '../flying/reach.ts';
import { seekRoot } from '../numerics/root.ts';
import { cautionsOf } from '../plan/cautions.ts';
import { finalBand, soundFinal } from '../plan/final-band.ts';
import type { WorkedOut } from '../plan/planner.ts';
import type { Runway } from '../terms/airfield.ts';
import type { Caution } from '../terms/caution.ts';
import type { Minimums, TrackSample } from '../terms/plan.ts';

/**
 * A glide to final by the shortest way, past every key of a pattern or across its corner, and down to any ground
 * beyond the near end that leaves room for the landing roll. All in m, in the frame of the place that it lands on.
 */
export interface StraightIn {
  /** Where final is joined, wings level; negative before the spot. */
  readonly along: number;
  /** The height there by the shortest way. */
  readonly height: number;
  /** How much of it is more than the least that is enough; negative where that much is lacking. */
  readonly spare: number;
  /**
   * How much of it is lost before that, by a longer way: from the lower height the wheels touch at the spot, or as
   * near beyond it as the least final allows.
   */
  readonly excess: number;
  /** Of the final flown from there: the height over the near end, where final is joined before that, and the touchdown. */
  readonly overNearEnd?: number | undefined;
  readonly touchdown: number;
  /** The same final as flown, and its cautions: what is under it, and what it lacks to stop in. */
  readonly track: readonly TrackSample[];
  readonly cautions: readonly Caution[];
}

/** m: places to join final are tried this far apart at first, and this near to each other in the end. */
const apart = { first: 160, last: 5 } as const;
/** m: the heights on final that are looked at, and how exactly. */
const heights = [1, 4000] as const;
const tolerance = 0.05;
/** m of ground kept beyond the roll, for what these searches leave open. */
const slack = 1;

/**
 * The straight-in arrival with the most height to spare: its turn to final is complete as high as a turn to final
 * must be (`soundFinal`, or the school's own minimum above it), and the final reaches the landable ground. Undefined
 * where the wind allows no final.
 */
export function straightIn(
  position: Position,
  runway: Runway,
  { asked, resolved: { conditions, flown } }: WorkedOut,
  minimums: Minimums | undefined,
): StraightIn | undefined {
  const leastFinal = Math.max(soundFinal, minimums?.finalTurn ?? 0);
  const toNearEnd = (before: number) => before - runway.spot;
  // A place that is too short for the roll is landed on at its spot: that it is too short is a reason of its own.
  const roll = landingRunOf({ ...conditions, flown, runway });
  const toFarthest = (before: number) => before + Math.max(0, runway.length - runway.spot - roll - slack);
  // The speed that goes farthest decides what is reached, the approach speed where the wheels then touch.
  const { farthest } = finalBand(asked, conditions);
  const touchdown: Covered = (from) => touchdownFrom(from, asked, conditions);
  const joinedAt = (before: number): JoinOfFinal | undefined => {
    const gateway = { along: -before, across: 0, track: 0 };
    const height = arrivalHeight(position, gateway, asked.bank, conditions);
    const low = heightFor(toNearEnd(before), farthest, conditions);
    if (height === undefined || low === undefined) return undefined;
    const most = heightFor(toFarthest(before), touchdown, conditions) ?? height;
    const toSpot = heightFor(before, touchdown, conditions) ?? most;
    const from = Math.min(height, Math.max(leastFinal, Math.min(toSpot, most)));
    return { before, height, from, spare: height - Math.max(leastFinal, low) };
  };
  // Nearer in, the least height for the turn is too much to come down from; farther out, all the height is too little.
  const nearest = touchdown(leastFinal) - toFarthest(0);
  const furthest = farthest(Math.max(position.height, leastFinal)) - toNearEnd(0);
  const best = chosen(joinedAt, nearest, Math.max(nearest, furthest));
  if (!best) return undefined;
  const { before, height, from, spare } = best;
  const start = startOf(before, from, conditions);
  const legs = finalLegs(conditions, asked.pull);
  const { track } = flyPattern({ start, legs }, conditions, runway.heading).flight;
  const { aircraft } = conditions;
  return {
    along: -before,
    height,
    spare,
    excess: height - from,
    overNearEnd: toNearEnd(before) > 0 ? heightOver(-runway.spot, start, conditions) : undefined,
    touchdown: track.at(-1)!.along,
    track,
    cautions: cautionsOf({ aircraft, runway, flown, track, keys: [], pull: asked.pull, minimums }),
  };
}

interface JoinOfFinal {
  readonly before: number;
  readonly height: number;
  /** How much of it is flown down final: from there the wheels touch at the spot, or beyond it with room to stop. */
  readonly from: number;
  readonly spare: number;
}

/**
 * Tries places all along final, then places nearer and nearer to the one with the most to spare. Of those with at
 * least half as much, it takes the one from which least has to be lost: with height in hand, final is joined farther
 * out and not on top of the place.
 */
function chosen(
  at: (before: number) => JoinOfFinal | undefined,
  nearest: number,
  furthest: number,
): JoinOfFinal | undefined {
  if (!Number.isFinite(nearest) || !Number.isFinite(furthest)) return undefined;
  const tried: JoinOfFinal[] = [];
  let best: JoinOfFinal | undefined;
  const look = (before: number) => {
    const joinValues = before >= nearest ? at(before) : undefined;
    if (!joinValues) return;
    tried.push(joinValues);
    if (!best || joinValues.spare > best.spare) best = joinValues;
  };
  for (let before = nearest; before <= furthest; before += apart.first) look(before);
  for (let step = apart.first / 2; best && step >= apart.last; step /= 2) {
    const { before } = best;
    look(before - step);
    look(before + step);
  }
  if (!best || best.spare <= 0) return best;
  const enough = best.spare / 2;
  const excess = ({ height, from }: JoinOfFinal) => height - from;
  return tried
    .filter(({ spare }) => spare >= enough)
    .reduce((a, b) => ((excess(b) - excess(a) || a.spare - b.spare) < 0 ? b : a));
}

/** How far before the touchdown final was joined at a height, m; NaN where it is not flown. */
type Covered = (height: number) => number;

/** The same at the approach speed. */
function touchdownFrom(height: number, { pull }: ApproachTask, conditions: Conditions): number {
  const start = startOf(0, height, conditions);
  const after = finalLegs(conditions, pull);
  return closeApproach({ start, stages: [{ before: [] }], after }, conditions)?.miss ?? Number.NaN;
}

/** The height from which final covers a distance; the least height looked at where even that covers more. */
function heightFor(distance: number, from: Covered, { polar: { ratio } }: Conditions): number | undefined {
  const off = (height: number) => from(height) - distance;
  const guess = Math.max(heights[0], distance / ratio);
  return seekRoot(off, { guess, slope: ratio, within: heights }, tolerance)?.x;
}

function startOf(before: number, height: number, { polar }: Conditions): Start {
  return { along: -before, across: 0, height, eas: polar.speed };
}

/** The height at which final passes over a place. */
function heightOver(along: number, start: Start, conditions: Conditions): number {
  const flight = new Flight(conditions, 0, 'search');
  const line: Leg = {
    kind: 'line',
    phase: 'final',
    track: 0,
    until: { reaches: 'along', value: along, growing: 1 },
    eas: conditions.speeds.approach,
  };
  flight.begin(start, line);
  flight.leg(line);
  return flight.state[HEIGHT]!;
}
