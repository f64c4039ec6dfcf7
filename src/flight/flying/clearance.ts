import { angleBetween } from '../numerics/angle.ts';
import { leastBetween } from '../numerics/golden-section.ts';
import { cosine, sine } from '../numerics/steady-math.ts';
import type { Aircraft } from '../terms/aircraft.ts';
import type { Obstacle } from '../terms/airfield.ts';
import type { Phase, TrackSample } from '../terms/plan.ts';

/*
 * How near a flight comes to an obstacle: the distance in space between any part of the flown track, with half a span
 * to each side, and any part of the obstacle. An obstacle is an upright wall without thickness, from the ground to
 * its top.
 *
 * The aircraft is taken as a level strip: the wing, brought down to the height of the wheels, square to the heading.
 * A bank makes the strip longer and lower: it reaches out as far as a wing above the wheels swings, and is as low as
 * the lower wing tip. So the strip is never farther from a wall than the wheels or any part of the wing. Between two
 * samples it moves straight, at the mean of their headings, and is widened by as much as its tips turn from there, so
 * that every position of it is covered.
 *
 * Not counted: the length of the fuselage, and that the path curves between samples 0.5 s apart (g tan(bank) t^2 / 8:
 * under 0.2 m at 30 degrees of bank, 0.6 m at 60).
 */

/** A flight as clearance sees it: the wing, the track, and the runway heading that its headings are measured from. */
export interface Swept {
  readonly wing: Aircraft['wing'];
  readonly track: readonly TrackSample[];
  /** rad true. */
  readonly runwayHeading: number;
}

/** m: the least distances, in space. `over`, where a part of the wing is over the obstacle, is not less than the others. */
export interface Required {
  readonly over: number;
  /** In every other direction: to its side, before and behind it. */
  readonly near: number;
  /** The same during the round-out and the hold-off. */
  readonly nearInLanding: number;
}

/** How a flight passes an obstacle, at the place where it lacks most of what is required. */
export interface Pass {
  /** `met`: the path goes through it. `above` and `beside`: where it is nearest, more of the distance is up or sideways. */
  readonly how: 'met' | 'above' | 'beside';
  /** m in space; where the obstacle is met, 0 or the negative distance below its top. */
  readonly distance: number;
  /** m: what is required there. */
  readonly limit: number;
  /** Where the track is then, m. */
  readonly at: Pick<TrackSample, 'along' | 'across' | 'height'>;
}

const landing: ReadonlySet<Phase> = new Set<Phase>(['round-out', 'hold-off']);

/** m: nearer over the ground than this is touching. Places on the track are found much more exactly. */
const touching = 1e-3;
/** A share of the way between two samples, which is some tens of metres at most: places on it are found this exactly. */
const shareTolerance = 1e-6;

/** The pass that has the smallest share of what is required; undefined where every part of the flight has all of it. */
export function closestPass(obstacle: Obstacle, swept: Swept, required: Required): Pass | undefined {
  let worst: Pass | undefined;
  for (const piece of piecesNear(obstacle, swept, required)) {
    const pass = passOn(piece, required.over);
    if (pass && (!worst || shareOf(pass) < shareOf(worst))) worst = pass;
  }
  return worst;
}

const shareOf = ({ distance, limit }: Pass) => distance / limit;

/**
 * m: a rise of the whole path that clears an obstacle as required: with it, every part that is too near over the
 * ground passes above the top by the most that is required anywhere. It may be somewhat more than the least that
 * would do.
 */
export function riseToClear(obstacle: Obstacle, swept: Swept, required: Required): number {
  const wanted = Math.max(required.over, required.near, required.nearInLanding);
  let rise = 0;
  for (const piece of piecesNear(obstacle, swept, required)) {
    const lowest = lowestWithin(piece, piece.near);
    if (lowest !== undefined) rise = Math.max(rise, wanted - piece.above(lowest));
  }
  return rise;
}

/** From one sample of a track to the next. */
interface Stretch {
  readonly from: TrackSample;
  readonly to: TrackSample;
}

/** A part of a flight between two samples. Places on it are shares of the way, 0 to 1. */
interface Piece extends Stretch {
  /**
   * m over the ground from the strip to the wall; negative where the strip is over it. Convex, like the distance of a
   * point that moves straight to a fixed convex shape: the wall, grown by the strip.
   */
  readonly gap: (share: number) => number;
  /** m from the top of the wall up to the strip. Linear. */
  readonly above: (share: number) => number;
  /** m: the distance in space that is required. */
  readonly near: number;
}

/** The parts of a flight that may be nearer than required; most are clear of the box around the obstacle. */
function piecesNear(obstacle: Obstacle, { track, wing, runwayHeading }: Swept, required: Required): Piece[] {
  const sideways = Math.max(required.near, required.nearInLanding);
  const clearHeight = obstacle.height + Math.max(required.over, sideways) + wing.span / 2;
  // The strip, widened, never reaches farther from the track than three times the half span and the wing's height.
  const away = sideways + 3 * (wing.span / 2 + wing.aboveWheels);
  const toEnd = obstacle.width / 2 + away;
  const pieces: Piece[] = [];
  for (let i = 1; i < track.length; i++) {
    const from = track[i - 1]!;
    const to = track[i]!;
    if (from.height > clearHeight && to.height > clearHeight) continue;
    if (areBeyond(from.along - obstacle.along, to.along - obstacle.along, away)) continue;
    if (areBeyond(from.across - obstacle.across, to.across - obstacle.across, toEnd)) continue;
    const piece = pieceOf({ from, to }, stripBetween(from, to, wing, runwayHeading), obstacle, required);
    // Half the way away from its middle it can be nearer by half its length, and no more.
    const length = Math.hypot(to.along - from.along, to.across - from.across);
    if (piece.gap(0.5) - length / 2 < piece.near) pieces.push(piece);
  }
  return pieces;
}

/** Both on the same side of zero, and farther from it than `limit`. */
function areBeyond(one: number, other: number, limit: number): boolean {
  return (one > limit && other > limit) || (one < -limit && other < -limit);
}

function pieceOf({ from, to }: Stretch, strip: Strip, obstacle: Obstacle, required: Required): Piece {
  const x = from.along - obstacle.along;
  const y = from.across - obstacle.across;
  const z = from.height - strip.dip - obstacle.height;
  const dx = to.along - from.along;
  const dy = to.across - from.across;
  const dz = to.height - from.height;
  return {
    gap: (share) => apart(x + share * dx, y + share * dy, strip, obstacle.width / 2),
    above: (share) => z + share * dz,
    near: landing.has(to.phase) ? required.nearInLanding : required.near,
    from,
    to,
  };
}

function passOn(piece: Piece, over: number): Pass | undefined {
  const { gap, above, near } = piece;
  const lowest = lowestWithin(piece, 0);
  if (lowest !== undefined && above(lowest) <= 0) {
    return { how: 'met', distance: above(lowest), limit: over, at: placeOn(piece, lowest) };
  }
  const inSpace = (share: number) => Math.hypot(Math.max(0, gap(share)), Math.max(0, above(share)));
  const nearest = leastBetween(inSpace, [0, 1], shareTolerance);
  const distance = inSpace(nearest);
  const overIt = lowest === undefined ? Number.POSITIVE_INFINITY : above(lowest);
  if (overIt / over < Math.min(1, distance / near)) {
    return { how: 'above', distance: overIt, limit: over, at: placeOn(piece, lowest!) };
  }
  const how = above(nearest) >= gap(nearest) ? 'above' : 'beside';
  return distance < near ? { how, distance, limit: near, at: placeOn(piece, nearest) } : undefined;
}

/** The lowest place that is no farther than this from the wall over the ground, m; undefined where there is none. */
function lowestWithin({ gap, from, to }: Piece, distance: number): number | undefined {
  let inside = leastBetween(gap, [0, 1], shareTolerance);
  if (gap(inside) > distance) return undefined;
  let outside = to.height > from.height ? 0 : 1;
  if (gap(outside) <= distance) return outside;
  while (Math.abs(outside - inside) > shareTolerance) {
    const middle = (inside + outside) / 2;
    if (gap(middle) <= distance) inside = middle;
    else outside = middle;
  }
  return inside;
}

function placeOn({ from, to }: Piece, share: number): Pass['at'] {
  const mix = (a: number, b: number) => a + share * (b - a);
  return {
    along: mix(from.along, to.along),
    across: mix(from.across, to.across),
    height: mix(from.height, to.height),
  };
}

/**
 * A level strip, square to the heading: its right half, m along and across, and how much wider and lower it is taken
 * to be.
 */
interface Strip {
  readonly along: number;
  readonly across: number;
  readonly wider: number;
  readonly dip: number;
}

function stripBetween(from: TrackSample, to: TrackSample, wing: Swept['wing'], runwayHeading: number): Strip {
  const halfSpan = wing.span / 2;
  const bank = Math.max(Math.abs(from.bank), Math.abs(to.bank));
  const half = halfSpan + wing.aboveWheels * sine(bank);
  const turned = angleBetween(from.heading, to.heading);
  const heading = from.heading + turned / 2 - runwayHeading;
  return {
    along: -half * sine(heading),
    across: half * cosine(heading),
    // A chord of the arc that a tip moves along, from the mean heading to either end.
    wider: 2 * half * sine(Math.abs(turned) / 4) + touching,
    dip: Math.max(0, halfSpan * sine(bank) - wing.aboveWheels * cosine(bank)),
  };
}

/**
 * m over the ground from a strip to a wall: the middle of the strip is x along and y across from the middle of the
 * wall. Negative within the strip.
 */
function apart(x: number, y: number, strip: Strip, halfWidth: number): number {
  const x1 = x - strip.along;
  const y1 = y - strip.across;
  const x2 = x + strip.along;
  const y2 = y + strip.across;
  if (x1 * x2 <= 0 && x1 !== x2) {
    const crossing = y1 + ((y2 - y1) * x1) / (x1 - x2);
    if (Math.abs(crossing) <= halfWidth) return -strip.wider;
  }
  const fromTips = Math.min(toWall(x1, y1, halfWidth), toWall(x2, y2, halfWidth));
  const fromEnds = Math.min(toStrip(halfWidth, x, y, strip), toStrip(-halfWidth, x, y, strip));
  return Math.min(fromTips, fromEnds) - strip.wider;
}

function toWall(x: number, y: number, halfWidth: number): number {
  return Math.hypot(x, Math.max(0, Math.abs(y) - halfWidth));
}

/** m from an end of the wall, which lies along no way and `end` across, to the strip as it is, no wider. */
function toStrip(end: number, x: number, y: number, strip: Strip): number {
  const x1 = x - strip.along;
  const y1 = y - strip.across;
  const dx = x + strip.along - x1;
  const dy = y + strip.across - y1;
  const share = Math.min(1, Math.max(0, ((end - y1) * dy - x1 * dx) / (dx * dx + dy * dy)));
  return Math.hypot(x1 + share * dx, y1 + share * dy - end);
}
