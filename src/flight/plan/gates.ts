import { approaching180, type Turns } from '../approaches/approach-180.ts';
import type { ApproachTask } from '../approaches/approach-method.ts';
import type { Conditions } from '../flying/conditions.ts';
import { type ClosedApproach, closeApproach, type OpenApproach } from '../flying/open-approach.ts';
import { baseLeg, baseTrack, joinFromBase } from '../flying/pattern-legs.ts';
import type { LineLeg, Side, TurnLeg } from '../flying/procedure.ts';
import { seekRoot } from '../numerics/root.ts';
import type { KeyId } from '../terms/key.ts';
import type { Gate, KeyPosition } from '../terms/plan.ts';
import { eighth, type FinalBand, finalBand } from './final-band.ts';

/**
 * The band of heights at a key from which the spot is still made: from its place, on its track, wings level at the
 * glide speed. Each edge is the extreme over every path that is allowed there:
 * at the downwind key the base turn at once, or moved out up to twice the spacing past abeam, and the base leg turned
 * out by up to 45 degrees or in by up to 75; at the base key the base leg turned at once, by as much; the turn to
 * final complete at 300 ft, or at the school's own minimum, or higher; on final the best speed for this wind, or an
 * S-turn of up to 45 degrees that is complete by the same height, and the steep approach. Where two turns have no
 * room, one turn at 45 degrees of bank at most. A band depends on the place of its key and on nothing else in the
 * plan. Null where there is no such path.
 */
export function gatesOf(keys: readonly KeyPosition[], asked: ApproachTask, conditions: Conditions): Gate[] {
  const onFinal = finalBand(asked, conditions);
  const search = (key: KeyPosition): Search => ({ asked, conditions, onFinal, guess: key.height });
  const edges: Partial<Record<KeyId, (key: KeyPosition) => Band>> = {
    'downwind-key': (key) => bandOf(fromDownwind(key, asked, conditions), search(key)),
    'base-key': (key) => bandOf(fromBaseKey(key, asked, conditions), search(key)),
    final: (key) => bandOnFinal(key, onFinal, conditions),
  };
  return keys.flatMap((key) => {
    const found = edges[key.id]?.(key);
    return found ? [{ at: key.id, low: found.low, plan: key.height, high: found.high }] : [];
  });
}

/** rad: the most that a base leg is turned in. */
export const mostTurnedIn = (75 * Math.PI) / 180;
/** How far past abeam a base turn is moved out, in spacings. */
export const farthestBaseTurn = 2;
/** rad. One turn from downwind on to final is banked no more than this, a medium turn's bank (FAA-H-8083-3, chapter 3). */
const mostInOneTurn = Math.PI / 4;
/** m: the heights looked at, and how exactly an edge is found. */
const heights = [15, 4000] as const;
const tolerance = 0.1;

interface Band {
  readonly low: number | null;
  readonly high: number | null;
}

/** The paths that are allowed from a place. */
export interface Paths {
  /** How far past abeam the base turn may begin, m: from and to. A single place where there is no choice. */
  readonly places: readonly [from: number, to: number];
  /** By the turn of the base leg (rad, in positive), or in one turn on to final: up to wings level on final. */
  readonly path: (place: number, turned: number | 'one', height: number) => OpenApproach;
  readonly turns: readonly (number | 'one')[];
}

const degrees = (angle: number) => (angle * Math.PI) / 180;
/** rad: the base legs looked at first, from turned out to turned in, and then about the best of them in these steps. */
const looked: readonly number[] = [...[-45, -15, 15, 45].map(degrees), mostTurnedIn];
const lookedBetween: readonly number[] = [-30, 0, 30, 60].map(degrees);
const firstStep = degrees(15);
const lastStep = degrees(1);

export function fromDownwind(key: KeyPosition, asked: ApproachTask, conditions: Conditions): Paths {
  const spacing = Math.abs(key.across);
  const limited: Conditions = limitedTo(mostInOneTurn, conditions);
  return {
    places: [-key.along, -key.along + farthestBaseTurn * spacing],
    turns: [...looked, 'one'],
    path: (place, turned, height) => {
      const start = { along: key.along, across: key.across, height, eas: conditions.polar.speed };
      const turns: Turns = turned === 'one' ? 'one' : 'two';
      const circuit = { lead: { start, before: [] }, turns, pastAbeam: place };
      const path = approaching180(circuit, asked, turned === 'one' ? limited : conditions);
      if (turned === 'one') return { ...path, after: [] };
      return {
        start,
        stages: [
          {
            before: [...path.stages[0]!.before.slice(0, -1), baseTurnTo(turned, asked)],
            join: joinFromBase(asked.side, asked.bank, conditions, turned),
          },
        ],
        after: [],
      };
    },
  };
}

/** The same aircraft, banked no more than this. */
function limitedTo(bank: number, conditions: Conditions): Conditions {
  const { aircraft } = conditions;
  const limit = Math.min(bank, aircraft.turns.limit);
  return { ...conditions, aircraft: { ...aircraft, turns: { ...aircraft.turns, limit } } };
}

/** From downwind on to a base leg turned in by an angle. */
function baseTurnTo(turned: number, { side, bank }: ApproachTask): TurnLeg {
  return {
    kind: 'turn',
    phase: 'base-turn',
    track: baseTrack(side) + side * turned,
    side,
    bank,
    rollOut: true,
  };
}

export function fromBaseKey(
  key: Pick<KeyPosition, 'along' | 'across' | 'height'>,
  asked: ApproachTask,
  conditions: Conditions,
): Paths {
  return {
    places: [0, 0],
    // Straight on needs no turn: where base leg is short, there is room for nothing else.
    turns: [...looked, 0],
    path: (_place, turned, height) => fromBase({ ...key, height }, turned as number, asked, conditions),
  };
}

/** From a place on base leg, turned in (or out) at once, up to wings level on final. */
function fromBase(
  { along, across, height }: Pick<KeyPosition, 'along' | 'across' | 'height'>,
  turned: number,
  { side, bank }: ApproachTask,
  conditions: Conditions,
): OpenApproach {
  const level = levelOnBase(side, conditions);
  return {
    start: { along, across, height, eas: conditions.polar.speed },
    stages: [
      {
        before: turned === 0 ? [level] : [level, turnOnBase(turned, side, bank)],
        join: joinFromBase(side, bank, conditions, turned),
      },
    ],
    after: [],
  };
}

/** No time on base leg itself, only the heading that holds it. */
function levelOnBase(side: Side, conditions: Conditions): LineLeg {
  return { ...baseLeg(side, 0, conditions), until: { lasts: 0 } };
}

function turnOnBase(turned: number, side: Side, bank: number): TurnLeg {
  return {
    kind: 'turn',
    phase: 'base',
    track: baseTrack(side) + side * turned,
    side: turned > 0 ? side : side === 1 ? -1 : 1,
    bank,
    rollOut: true,
  };
}

/** What is known about final, and where a search begins. */
export interface Search {
  readonly asked: ApproachTask;
  readonly conditions: Conditions;
  readonly onFinal: FinalBand;
  /** m. */
  readonly guess: number;
}

/** A path from its height at the key: where it joins final. m. */
interface OnFinal {
  readonly before: number;
  readonly height: number;
}

/** One path, by its height at the key; each search begins where the last one ended. */
class Path {
  readonly #search: Search;
  readonly #paths: Paths;
  readonly #turned: number | 'one';
  #last: ClosedApproach | undefined;
  #height: number;

  constructor(paths: Paths, turned: number | 'one', search: Search) {
    this.#paths = paths;
    this.#turned = turned;
    this.#search = search;
    this.#height = search.guess;
  }

  /** Undefined where the path is not sound from that height. */
  at(place: number, height: number): OnFinal | undefined {
    const path = this.#paths.path(place, this.#turned, height);
    const found = closeApproach(path, this.#search.conditions, this.#last?.joinValues);
    if (!found?.sound) return undefined;
    this.#last = found;
    return { before: -found.miss, height: found.finalHeight };
  }

  /** One turn is allowed only where two, with base leg square to the runway, have no room. */
  isAllowed(place: number, height: number): boolean {
    if (this.#turned !== 'one') return true;
    const square = this.#paths.path(place, 0, height);
    return !closeApproach(square, this.#search.conditions)?.sound;
  }

  /** The height over the least that is enough: the turn to final high enough, and final within reach. */
  enough({ before, height }: OnFinal): number {
    const { asked, onFinal, conditions } = this.#search;
    const reach = (onFinal.farthest(height) - before) / conditions.polar.ratio;
    return Math.min(height - asked.leastFinal, reach);
  }

  /** The height by which the shortest final comes down before the spot; negative where it is still too long. */
  lost({ before, height }: OnFinal): number {
    const { onFinal, conditions } = this.#search;
    return (before - onFinal.nearest(height)) / conditions.polar.ratio;
  }

  /** The height at the key at which a margin is 0, and how final is joined from it. */
  where(place: number, margin: (onFinal: OnFinal) => number, slope: 1 | -1) {
    let onFinal: OnFinal | undefined;
    const value = (height: number) => {
      onFinal = this.at(place, height);
      return onFinal ? margin(onFinal) : Number.NaN;
    };
    // From higher up, where it is not sound from the first height looked at.
    for (const higher of [0, 150, 400, 900]) {
      const sought = seekRoot(value, { guess: this.#height + higher, slope, within: heights }, tolerance);
      if (!sought || !onFinal) continue;
      if (!sought.found || !this.isAllowed(place, sought.x)) return undefined;
      this.#height = sought.x;
      return { height: sought.x, onFinal };
    }
    return undefined;
  }
}

/** The least height from which a path makes the spot, with its base turn as soon as possible; NaN where none does. */
function lowestOf(path: Path, { places: [from, to] }: Paths, { asked, onFinal }: Search): number {
  let place = from;
  let found = path.where(place, (onFinal) => path.enough(onFinal), 1);
  if (!found) return Number.NaN;
  if (path.lost(found.onFinal) >= -tolerance) return found.height;
  // Too near to come down from where the turn to final must be complete: the base turn is moved out to where it no
  // longer is.
  const before = onFinal.nearest(asked.leastFinal);
  for (let tries = 0; tries < 12 && found; tries++) {
    const short = before - found.onFinal.before;
    if (Math.abs(short) < 0.5) return found.height;
    if (place === to && short > 0) return Number.NaN;
    place = Math.min(to, Math.max(from, place + short));
    found = path.where(place, (onFinal) => onFinal.height - asked.leastFinal, 1);
  }
  return Number.NaN;
}

/** The greatest height from which a path comes down to the spot, with its base turn as late as possible. */
function highestOf(path: Path, { places: [from, to] }: Paths): number {
  for (const share of from === to ? [1] : [1, 0.75, 0.5, 0.25, 0]) {
    const found = path.where(from + share * (to - from), (onFinal) => path.lost(onFinal), -1);
    if (found && path.enough(found.onFinal) >= -tolerance) return found.height;
  }
  return Number.NaN;
}

/** The lowest and the highest of all paths from a place. */
export function bandOf(paths: Paths, search: Search): Band {
  return { low: lowOf(paths, search), high: highOf(paths, search) };
}

/** The lowest of all paths from a place, m; null where none makes the spot. */
export function lowOf(paths: Paths, search: Search): number | null {
  const lowest = (turned: number | 'one') => -lowestOf(new Path(paths, turned, search), paths, search);
  const low = best(paths.turns, lowest);
  return low === null ? null : -low;
}

/** The highest of all paths from a place, m; null where none comes down to the spot. */
export function highOf(paths: Paths, search: Search): number | null {
  const highest = (turned: number | 'one') => highestOf(new Path(paths, turned, search), paths);
  return best(paths.turns, highest);
}

/**
 * m of height that the best path has in hand from the height where a search begins: negative where none makes the
 * spot from there. Any path with height in hand will do; null where none is sound.
 */
export function inHand(paths: Paths, search: Search): number | null {
  const most = (turned: number | 'one') => mostInHand(new Path(paths, turned, search), paths, search.guess);
  return best(paths.turns, most, 0);
}

/** m: how exactly the place of a base turn is found. */
const placeTolerance = 3;

/**
 * A base turn farther out loses more height, and leaves less to reach the spot with: some place between does both, or
 * none does.
 */
function mostInHand(path: Path, { places: [from, to] }: Paths, height: number): number {
  let most = Number.NEGATIVE_INFINITY;
  /** Whether the spot can be reached from a base turn there. */
  const reaches = (place: number): boolean => {
    const onFinal = path.at(place, height);
    if (!onFinal || !path.isAllowed(place, height)) return false;
    const enough = path.enough(onFinal);
    most = Math.max(most, Math.min(enough, path.lost(onFinal)) + tolerance);
    return enough >= 0;
  };
  if (reaches(to) || from === to || !reaches(from)) return most;
  for (let [near, far] = [from, to]; most < 0 && far - near > placeTolerance; ) {
    const middle = (near + far) / 2;
    if (reaches(middle)) near = middle;
    else far = middle;
  }
  return most;
}

/**
 * The greatest value over the turns of a base leg: the best of those looked at, refined, or the first that is
 * `enough`; null where there is none.
 */
function best(
  turns: readonly (number | 'one')[],
  value: (turned: number | 'one') => number,
  enough = Number.POSITIVE_INFINITY,
): number | null {
  let top: { turned: number | 'one'; value: number } | undefined;
  const look = (turned: number | 'one') => {
    if (top && top.value >= enough) return;
    const found = value(turned);
    if (found > (top?.value ?? Number.NEGATIVE_INFINITY)) top = { turned, value: found };
  };
  turns.forEach(look);
  // A band may be so narrow that only base legs between those looked at have it.
  if (!top) lookedBetween.forEach(look);
  for (let step = firstStep; step >= lastStep; step /= 2) {
    const turned = top?.turned;
    if (typeof turned !== 'number') break;
    for (const next of [turned - step, turned + step]) {
      if (next > -eighth - 1e-9 && next < mostTurnedIn + 1e-9) look(next);
    }
  }
  return top?.value ?? null;
}

function bandOnFinal(key: KeyPosition, { farthest, nearest }: FinalBand, { polar }: Conditions): Band {
  const x = -key.along;
  const root = (f: (height: number) => number) => {
    const sought = seekRoot(f, { guess: key.height, slope: polar.ratio, within: [20, heights[1]] }, 0.1);
    return sought?.found ? sought.x : null;
  };
  return { low: root((height) => farthest(height) - x), high: root((height) => nearest(height) - x) };
}
