import type { Circuit, Obstacle, Runway } from './airfield.ts';
import { angleBetween } from './angle.ts';
import type { Asked } from './approach-method.ts';
import { arrivalHeight, type Gateway } from './arrival.ts';
import { mostTailwind } from './cautions/wind-cautions.ts';
import type { Conditions } from './conditions.ts';
import { baseTrack, downwindTrack } from './pattern-legs.ts';
import type { Approach, Gate, KeyId, Plan, PlanRequest } from './plan.ts';
import { planApproach, workOut } from './planner.ts';
import type { Position } from './reach.ts';
import { cosine, sine } from './steady-math.ts';
import { type StraightIn, straightIn } from './straight-in.ts';
import { crosswind, headwind } from './wind.ts';

/**
 * A place to land out of the pattern. `along` and `across` give its spot, a quarter of its length in, in the frame of the
 * runway it is given for (m); its heading is true (rad); its obstacles stand in the frame of its own spot.
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

/** Why a place is no place to land. */
export type Rejection =
  | {
      /** Neither a pattern's key is reached at its gate, nor a final that could be flown straight in. */
      readonly why: 'out-of-reach' /** m of height lacking by the way that lacks least. */;
      readonly short: number;
    }
  | {
      readonly why: 'obstacle';
      readonly what: string /** m above it; negative below its top. */;
      readonly clearance: number;
    }
  | { readonly why: 'too-short' /** m lacking after the landing roll. */; readonly short: number }
  | {
      readonly why: 'tailwind' | 'crosswind' | 'wind' /** m/s. */;
      readonly value: number;
      readonly limit: number;
    };

/** A landing direction, and what becomes of gliding to it. */
export interface Place {
  readonly name: string;
  /** rad true. */
  readonly heading: number;
  /** m that can be landed on. */
  readonly length: number;
  /** m/s against the landing direction; negative for a tailwind. */
  readonly headwind: number;
  /** The approach that it is reached by, and the side of its pattern; undefined where no pattern is reached. */
  readonly approach?: { readonly kind: Approach; readonly circuit: Circuit } | undefined;
  /** The arrival that reaches it where no pattern does; undefined where one does, and where it is out of reach. */
  readonly straightIn?: StraightIn | undefined;
  /** Height over the gate's low edge at the first key flown to, and at those after it, m; of a straight-in, on final. */
  readonly margins: readonly { readonly at: KeyId; readonly height: number; readonly margin: number }[];
  /** Height to be lost before the first key, m: what is over its gate's high edge; of a straight-in, before final. */
  readonly excess: number;
  readonly rejections: readonly Rejection[];
}

/** The spot of a field lies this share of its length into it: room to be short, and most of it left to stop in. */
export const spotShare = 0.25;

/**
 * Where to land after an engine failure: each runway and field, in both directions, with the approach that reaches it,
 * or the straight-in arrival where no pattern can be joined, the margins and the reasons against it; the best first. `position` is in the frame of `request.runway`, its
 * heading from that runway's landing direction. A place without rejections comes before one with them; then the place
 * by whose approach more is still open, then the one with more height in hand.
 */
export function landingPlaces(position: Position, fields: readonly Field[], request: PlanRequest): Place[] {
  const places = candidates(request, fields).map((candidate) => judge(candidate, position, request));
  return places.sort(
    (a, b) => a.rejections.length - b.rejections.length || openness(b) - openness(a) || inHand(b) - inHand(a),
  );
}

function openness({ approach, straightIn }: Place): number {
  if (!approach) return straightIn ? 1 : 0;
  return approach.kind === '90' ? 2 : 3;
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

/** A field landed in its own direction or the other, its spot a quarter of its length in from that end. */
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

/** An obstacle given from the spot of one direction, from the spot of the other. */
function seenFromBehind(obstacle: Obstacle, length: number): Obstacle {
  return { ...obstacle, along: length * (1 - 2 * spotShare) - obstacle.along, across: -obstacle.across };
}

function judge(candidate: Candidate, position: Position, request: PlanRequest): Place {
  const { runway } = candidate;
  const local = inFrameOf(candidate, position, request.runway);
  const against = headwind(request.wind, runway.heading);
  const ways = (['left', 'right'] as const).flatMap((circuit) => waysIn(circuit, candidate, local, request));
  const best = chosen(ways);
  const { heading, length } = runway;
  const place = { name: candidate.name, heading, length, headwind: against };
  const inWind = windRejections(request, runway);
  if (best && inHand(best) >= 0) {
    const approach = { kind: best.approach, circuit: best.circuit };
    const { margins, excess, plan } = best;
    return { ...place, approach, margins, excess, rejections: [...inWind, ...groundRejections(plan)] };
  }
  return { ...place, ...judgeStraightIn(runway, local, best, inWind, request) };
}

/** A place of which no pattern can be joined: a final may be reached for all that. */
function judgeStraightIn(
  runway: Runway,
  local: Position,
  nearest: Way | undefined,
  inWind: readonly Rejection[],
  request: PlanRequest,
): Pick<Place, 'straightIn' | 'margins' | 'excess' | 'rejections'> {
  const asked: PlanRequest = { ...request, runway, approach: '90', height: undefined, detail: 'flight' };
  const direct = straightIn(local, runway, workOut(asked), request.minimums);
  const final = direct && { at: 'final' as const, height: direct.height, margin: direct.spare };
  if (final && direct.spare >= 0) {
    const rejections = [...inWind, ...groundRejections(direct)];
    return { straightIn: direct, margins: [final], excess: direct.excess, rejections };
  }
  const byPattern = nearest ? inHand(nearest) : Number.NEGATIVE_INFINITY;
  const isFinal = final !== undefined && final.margin >= byPattern;
  const outOfReach = { why: 'out-of-reach' as const, short: -(isFinal ? final.margin : byPattern) };
  return {
    margins: isFinal ? [final] : (nearest?.margins ?? []),
    excess: 0,
    rejections: [outOfReach, ...inWind, ...(nearest ? groundRejections(nearest.plan) : [])],
  };
}

/** The half circuit where the glide reaches its key: more is still open from there. Else the key nearest to being reached. */
function chosen(ways: readonly Way[]): Way | undefined {
  const byMargin = [...ways].sort((a, b) => inHand(b) - inHand(a));
  const reached = byMargin.filter((way) => inHand(way) >= 0);
  return reached.find((way) => way.approach !== '90') ?? reached[0] ?? byMargin[0];
}

interface Way {
  readonly approach: Approach;
  readonly circuit: Circuit;
  readonly plan: Plan;
  readonly margins: Place['margins'];
  readonly excess: number;
}

/** By the downwind key, or by the base key where that is too far: the planned approach and its gates say how high. */
function waysIn(circuit: Circuit, { runway }: Candidate, position: Position, request: PlanRequest): Way[] {
  const ways: Way[] = [];
  for (const approach of ['180', '90'] as const) {
    const asked: PlanRequest = { ...request, runway, circuit, approach, height: undefined, detail: 'whole' };
    const plan = planApproach(asked);
    if (!plan.made) continue;
    const { resolved, asked: resolvedAsk } = workOut({ ...asked, detail: 'flight' });
    const [first, ...later] = plan.gates;
    const height = first && arrivalAt(first, plan, position, resolvedAsk, resolved.conditions);
    if (!first || height === undefined) continue;
    const excess = height - (first.high ?? Number.POSITIVE_INFINITY);
    const margins = [{ at: first.at, height, margin: height - (first.low ?? first.plan) }];
    for (const { at, plan: planned, low } of later) {
      margins.push({ at, height: planned, margin: planned - (low ?? planned) });
    }
    // Higher over the downwind key than the 180 can lose: circles first.
    const kind = approach === '180' && excess > 0 ? 'spiral' : approach;
    ways.push({ approach: kind, circuit, plan, margins, excess: Math.max(0, excess) });
  }
  return ways;
}

function arrivalAt(
  gate: Gate,
  plan: Plan,
  position: Position,
  asked: Asked,
  conditions: Conditions,
): number | undefined {
  const key = plan.keys.find(({ id }) => id === gate.at);
  if (!key) return undefined;
  const track = gate.at === 'downwind-key' ? downwindTrack(asked.side) : baseTrack(asked.side);
  const gateway: Gateway = { along: key.along, across: key.across, track };
  return arrivalHeight(position, gateway, asked.bank, conditions);
}

/** The least margin on the way; the first key is the one that the glide must reach. */
function inHand({ margins }: Pick<Place, 'margins'>): number {
  return margins[0]?.margin ?? Number.NEGATIVE_INFINITY;
}

function windRejections({ wind, gust, aircraft, minimums }: PlanRequest, runway: Runway): Rejection[] {
  const speed = Math.max(wind.speed, gust ?? 0);
  const strongest = { ...wind, speed };
  const behind = -headwind(strongest, runway.heading);
  const across = Math.abs(crosswind(strongest, runway.heading));
  const checks = [
    { why: 'wind', value: speed, limit: aircraft.limits.wind },
    { why: 'tailwind', value: behind, limit: mostTailwind(aircraft.limits, minimums) },
    { why: 'crosswind', value: across, limit: aircraft.limits.crosswind },
  ] as const;
  return checks.filter(({ value, limit }) => value > limit + 1e-9);
}

function groundRejections({ cautions }: Pick<Plan, 'cautions'>): Rejection[] {
  return cautions.flatMap((caution): Rejection[] => {
    if (caution.code === 'obstacle-clearance') {
      return [{ why: 'obstacle', what: caution.message, clearance: caution.value }];
    }
    return caution.code === 'landing-distance'
      ? [{ why: 'too-short', short: caution.value - caution.limit }]
      : [];
  });
}

/** A position in the frame of a candidate: its spot the origin, its landing direction along. */
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
