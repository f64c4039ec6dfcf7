import { headwind } from '../air/wind.ts';
import { landingRunOf } from '../aircraft/landing-run.ts';
import { approaches } from '../approaches/approaches.ts';
import { arrivalHeight, type Gateway } from '../flying/arrival.ts';
import { baseTrack, downwindTrack } from '../flying/pattern-legs.ts';
import type { Position } from '../flying/reach.ts';
import { angleBetween } from '../numerics/angle.ts';
import { cosine, sine } from '../numerics/steady-math.ts';
import { finalBand } from '../plan/final-band.ts';
import { fromBaseKey, fromDownwind, gatesOf, highOf, lowOf, type Paths, type Search } from '../plan/gates.ts';
import { planApproach, type WorkedOut, workOut } from '../plan/planner.ts';
import type { Circuit, Obstacle, Runway } from '../terms/airfield.ts';
import type { Approach } from '../terms/approach.ts';
import type { CautionCode } from '../terms/caution.ts';
import type { KeyId } from '../terms/key.ts';
import type { KeyPosition, Plan, PlanRequest } from '../terms/plan.ts';
import {
  graverFirst,
  groundRejections,
  lessAgainstFirst,
  meetsObstacle,
  type Rejection,
  windRejections,
} from './against-a-place.ts';
import { type StraightIn, straightIn } from './straight-in.ts';

/**
 * A place to land outside the pattern. `along` and `across` give its spot, a quarter of its length in, in the frame
 * of the runway it is given for (m); its heading is true (rad); its obstacles are in the frame of its own spot.
 */
export interface Field {
  readonly name: string;
  readonly along: number;
  readonly across: number;
  readonly heading: number;
  readonly length: number;
  readonly width: number;
  readonly surface: string;
  readonly obstacles: readonly Obstacle[];
}

/** A landing direction, and what comes of gliding to it. */
export interface Place {
  readonly name: string;
  /** rad true. */
  readonly heading: number;
  /** m that can be landed on. */
  readonly length: number;
  /** m/s against the landing direction; negative for a tailwind. */
  readonly headwind: number;
  /** The approach that reaches it, and the side of its pattern; undefined where no pattern is reached. */
  readonly approach?: { readonly kind: Approach; readonly circuit: Circuit } | undefined;
  /** The arrival that reaches it where no pattern does; undefined where one does, and where it is out of reach. */
  readonly straightIn?: StraightIn | undefined;
  /**
   * Height over the gate's low edge at the first key flown to and, if that is reached, at the keys after it as
   * planned, m; for a straight-in, on final.
   */
  readonly margins: readonly { readonly at: KeyId; readonly height: number; readonly margin: number }[];
  /**
   * Height to be lost before the first key, m: what is above the high edge of its gate; for a straight-in, before
   * final.
   */
  readonly excess: number;
  /** The gravest first. */
  readonly rejections: readonly Rejection[];
}

/** The spot of a field is this share of its length into it: room to be short, with most of it left to stop in. */
export const spotShare = 0.25;

/**
 * Where to land after an engine failure: each runway and field, in both directions, with the approach that reaches
 * it, or the straight-in arrival where no pattern can be joined, the margins and the reasons against it; the best
 * first. `position` is in the frame of `request.runway`, its heading from that runway's landing direction.
 *
 * The order is that of the gravest reason against each: a place without any; then one that is past a limit of
 * practice only (an obstacle passed too near, more tailwind than the usual or the school's limit); then one that
 * cannot be landed on (an obstacle met, too short for the roll, a wind past the aircraft's limits); last what is out
 * of reach. Within a class, less lacking comes first: see `lessAgainstFirst`. So a place that is a little short comes
 * above one out of reach, however many reasons there are against either. Among places that are alike in that, the one
 * whose approach leaves more open comes first, then the one with more height in hand.
 */
export function landingPlaces(position: Position, fields: readonly Field[], request: PlanRequest): Place[] {
  const places = candidates(request, fields).map((candidate) => judge(candidate, position, request));
  return places.sort(
    (a, b) =>
      lessAgainstFirst(a.rejections, b.rejections) || openness(b) - openness(a) || inHand(b) - inHand(a),
  );
}

function openness({ approach, straightIn }: Place): number {
  if (!approach) return straightIn ? 1 : 0;
  return approaches[approach.kind].startsAt === 'base-key' ? 2 : 3;
}

interface Candidate {
  readonly name: string;
  readonly runway: Runway;
  /** Its spot in the frame of the runway asked for. */
  readonly along: number;
  readonly across: number;
}

function candidates({ runway, airfield }: PlanRequest, fields: readonly Field[]): Candidate[] {
  const own = { name: `runway ${runway.name}`, runway, along: 0, across: 0 };
  const other = airfield.runways.find((each) => isOtherEnd(each, runway));
  const back = other && {
    name: `runway ${other.name}`,
    runway: other,
    along: runway.length - runway.spot - other.spot,
    across: 0,
  };
  const places = fields.flatMap((field) => [landingIn(field, 0, runway), landingIn(field, Math.PI, runway)]);
  return [own, ...(back ? [back] : []), ...places];
}

/** The same strip from its other end. */
function isOtherEnd(a: Runway, b: Runway): boolean {
  return (
    Math.abs(Math.abs(angleBetween(a.heading, b.heading)) - Math.PI) < 0.05 &&
    Math.abs(a.length - b.length) < 1
  );
}

/** A field landed on in its own direction or the other, its spot a quarter of its length in from that end. */
function landingIn(field: Field, turned: number, from: Runway): Candidate {
  const heading = field.heading + turned;
  const offRunway = field.heading - from.heading;
  const toSpot = turned === 0 ? 0 : field.length * (1 - 2 * spotShare);
  return {
    name: field.name,
    runway: {
      name: field.name,
      heading: ((heading % (2 * Math.PI)) + 2 * Math.PI) % (2 * Math.PI),
      length: field.length,
      width: field.width,
      surface: field.surface,
      circuit: 'left',
      spot: field.length * spotShare,
      obstacles: field.obstacles.map((each) => (turned === 0 ? each : seenFromBehind(each, field.length))),
    },
    along: field.along + toSpot * cosine(offRunway),
    across: field.across + toSpot * sine(offRunway),
  };
}

/** An obstacle given from the spot of one direction, seen from the spot of the other. */
function seenFromBehind(obstacle: Obstacle, length: number): Obstacle {
  return { ...obstacle, along: length * (1 - 2 * spotShare) - obstacle.along, across: -obstacle.across };
}

function judge(candidate: Candidate, position: Position, request: PlanRequest): Place {
  const { name, runway } = candidate;
  const local = inFrameOf(candidate, position, request.runway);
  const { heading, length } = runway;
  return {
    name,
    heading,
    length,
    headwind: headwind(request.wind, heading),
    ...reached(runway, local, request),
  };
}

type Reached = Pick<Place, 'approach' | 'straightIn' | 'margins' | 'excess' | 'rejections'>;

/** By the half circuit where its key is reached, because that leaves more open. Else by the base key, else straight in. */
function reached(runway: Runway, local: Position, request: PlanRequest): Reached {
  const found: Way[] = [];
  const patterns = circuits.flatMap((circuit) => patternIn(circuit, runway, request) ?? []);
  for (const approach of ['180', '90'] as const) {
    for (const pattern of patterns) {
      const way = wayIn(approach, pattern, local, request);
      if (way) found.push(way);
    }
    const best = mostInHand(found.filter((way) => way.margin >= 0 && !meetsObstacle(way.rejections)));
    if (best) return byPattern(best, runway, request);
  }
  const worked = workOut({ ...request, runway, approach: '90', height: undefined, detail: 'flight' });
  const inWind = windRejections(examinedBy(worked, runway, request));
  const direct = straightIn(local, runway, worked, request.minimums);
  const inDirect =
    direct && groundRejections({ ...examinedBy(worked, runway, request), track: direct.track, keys: [] });
  const nearest = mostInHand(found);
  if (
    direct &&
    inDirect &&
    direct.spare >= 0 &&
    !(meetsObstacle(inDirect) && nearest && nearest.margin >= 0)
  ) {
    const final = { at: 'final' as const, height: direct.height, margin: direct.spare };
    const rejections = [...inWind, ...inDirect].sort(graverFirst);
    return { straightIn: direct, margins: [final], excess: direct.excess, rejections };
  }
  // Reached, but only through an obstacle, whichever way is flown.
  if (nearest && nearest.margin >= 0) return byPattern(nearest, runway, request);
  const onGround = nearest?.rejections ?? shortAtSpot(worked, runway);
  return outOfReach(nearest, direct, [...inWind, ...onGround]);
}

/** Where no pattern is sound: what the place lacks for the roll from its spot. */
function shortAtSpot({ resolved: { conditions, flown } }: WorkedOut, runway: Runway): Rejection[] {
  const roll = landingRunOf({ ...conditions, flown, runway });
  const short = roll - (runway.length - runway.spot);
  return short > 0 ? [{ why: 'too-short', short, roll }] : [];
}

function outOfReach(
  nearest: Way | undefined,
  direct: StraightIn | undefined,
  others: readonly Rejection[],
): Reached {
  const [pattern, straight] = [nearest?.margin ?? Number.NEGATIVE_INFINITY, direct?.spare];
  const isFinal = straight !== undefined && straight >= pattern;
  const margins = isFinal
    ? [{ at: 'final' as const, height: direct!.height, margin: straight }]
    : nearest
      ? [{ at: nearest.key.id, height: nearest.height, margin: nearest.margin }]
      : [];
  const short = { why: 'out-of-reach' as const, short: -(isFinal ? straight : pattern) };
  return { margins, excess: 0, rejections: [short, ...others].sort(graverFirst) };
}

function mostInHand(ways: readonly Way[]): Way | undefined {
  return ways.reduce<Way | undefined>(
    (best, way) => (best && best.margin >= way.margin ? best : way),
    undefined,
  );
}

/** A pattern whose first key can be flown to. */
interface Way {
  readonly approach: '180' | '90';
  readonly circuit: Circuit;
  readonly plan: Plan;
  readonly worked: WorkedOut;
  readonly key: KeyPosition;
  readonly paths: Paths;
  readonly search: Search;
  /** m: the height at the key after the glide there, and how much of it is above the low edge. */
  readonly height: number;
  readonly margin: number;
  /** Reasons on the ground: what its plan meets. */
  readonly rejections: readonly Rejection[];
}

/** Cautions about a plan that is not to be flown because of what it is, whatever the place: see `patternIn`. */
const badPattern: ReadonlySet<CautionCode> = new Set<CautionCode>([
  'beyond-reach',
  'wind-over-glide',
  'stall-margin',
  'slow',
  'bank-over-limit',
  'final-turn-low',
  'off-runway',
]);

const circuits = ['left', 'right'] as const;

/** The whole pattern to one side. */
type FlownPattern = Pick<Way, 'circuit' | 'plan' | 'worked'>;

/** Its base key is the one in every table and drawing. A plan that is not to be flown is no way in. */
function patternIn(circuit: Circuit, runway: Runway, request: PlanRequest): FlownPattern | undefined {
  const like: PlanRequest = {
    ...request,
    runway,
    circuit,
    approach: '180',
    height: undefined,
    detail: 'flight',
  };
  const plan = planApproach(like);
  const isBad = plan.cautions.some(({ code, grade }) => grade === 'not-to-be-flown' && badPattern.has(code));
  return plan.made && !isBad ? { circuit, plan, worked: workOut(like) } : undefined;
}

/**
 * By the downwind key, or by the base key where that is too far: the planned pattern says where the key is, and its
 * gate how high. What it meets on the ground, and the wind there, are reasons against the place; the mass is the same
 * wherever it lands.
 */
function wayIn(
  approach: '180' | '90',
  pattern: FlownPattern,
  position: Position,
  request: PlanRequest,
): Way | undefined {
  const { plan, worked } = pattern;
  const isDownwind = approach === '180';
  const key = plan.keys.find(({ id }) => id === (isDownwind ? 'downwind-key' : 'base-key'));
  if (!key) return undefined;
  const { asked, resolved } = worked;
  const { conditions } = resolved;
  const track = isDownwind ? downwindTrack(asked.side) : baseTrack(asked.side);
  const gateway: Gateway = { along: key.along, across: key.across, track };
  const height = arrivalHeight(position, gateway, asked.bank, conditions);
  if (height === undefined) return undefined;
  const paths = (isDownwind ? fromDownwind : fromBaseKey)(key, asked, conditions);
  const search: Search = { asked, conditions, onFinal: finalBand(asked, conditions), guess: key.height };
  const low = lowOf(paths, search);
  if (low === null) return undefined;
  const { runway, track: flown, keys } = plan;
  const rejections = groundRejections({ ...examinedBy(worked, runway, request), track: flown, keys });
  return { approach, ...pattern, key, paths, search, height, margin: height - low, rejections };
}

function examinedBy(
  { resolved: { conditions, flown }, asked: { pull } }: WorkedOut,
  runway: Runway,
  { minimums }: PlanRequest,
) {
  return { aircraft: conditions.aircraft, runway, flown, pull, minimums };
}

/** What is needed only for the way that is taken: how much is too high, and the keys after the first. */
function byPattern(way: Way, runway: Runway, request: PlanRequest): Reached {
  const { approach, circuit, plan, worked, key, paths, search, height, margin } = way;
  const { asked, resolved } = worked;
  const excess = Math.max(0, height - (highOf(paths, search) ?? Number.POSITIVE_INFINITY));
  const after = plan.keys.filter(({ id }) => id !== key.id);
  const later = gatesOf(after, asked, resolved.conditions).flatMap(({ at, plan: planned, low }) =>
    low === null ? [] : [{ at, height: planned, margin: planned - low }],
  );
  const inWind = windRejections(examinedBy(worked, runway, request));
  return {
    // Higher over the downwind key than the 180 can lose: circles first.
    approach: { kind: approach === '180' && excess > 0 ? 'spiral' : approach, circuit },
    margins: [{ at: key.id, height, margin }, ...later],
    excess,
    rejections: [...inWind, ...way.rejections].sort(graverFirst),
  };
}

/** At the first key, the one that the glide must reach. */
function inHand({ margins }: Pick<Place, 'margins'>): number {
  return margins[0]?.margin ?? Number.NEGATIVE_INFINITY;
}

/** A position in the frame of a candidate: its spot is the origin, its landing direction is along. */
function inFrameOf(candidate: Candidate, position: Position, from: Runway): Position {
  const turn = candidate.runway.heading - from.heading;
  const [dx, dy] = [position.along - candidate.along, position.across - candidate.across];
  return {
    along: dx * cosine(turn) + dy * sine(turn),
    across: -dx * sine(turn) + dy * cosine(turn),
    height: position.height,
    heading: angleBetween(turn, position.heading),
  };
}
