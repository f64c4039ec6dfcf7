import { metresPerFoot } from '../units/factors.ts';
import { answerFrom, approaching180 } from './approach-180.ts';
import type { Asked } from './approach-method.ts';
import { type Approached, type Approaching, approach, type Stage } from './approaching.ts';
import type { Conditions } from './conditions.ts';
import { headwindAt } from './headwind-at.ts';
import { baseLeg, baseTrack, finalLegs, joinFromBase, stillAirLead } from './pattern-legs.ts';
import type { Gate, KeyId, KeyPosition } from './plan.ts';
import type { Leg, LineLeg, Side, Start, TurnLeg } from './procedure.ts';
import { seekRoot } from './root.ts';
import { speedToFly } from './speed-to-fly.ts';

/**
 * The band of heights at a key, at its planned place, from which the spot is still made. Below `low` even the shortest
 * sound path falls short: the base turn at once, the corner cut, the best speed into the wind, the turn to final complete
 * at 300 ft. Above `high` not even the longest loses the height: the base turn moved out, and what the later keys have,
 * the base leg turned out, one S-turn, the steep approach. So a height that is carried on into the band of a later key is
 * in the band of its own. Every edge is found by flying; null where no height is one.
 */
export function gatesOf(keys: readonly KeyPosition[], asked: Asked, conditions: Conditions): Gate[] {
  const edges: Partial<Record<KeyId, (key: KeyPosition) => Omit<Gate, 'at' | 'plan'>>> = {
    'downwind-key': (key) => atDownwindKey(key, keys, asked, conditions),
    'base-key': (key) => atBaseKey(key, asked, conditions),
    final: (key) => onFinal(key, asked, conditions),
  };
  return keys.flatMap((key) => {
    const found = edges[key.id]?.(key);
    return found ? [{ at: key.id, low: found.low, plan: key.height, high: found.high }] : [];
  });
}

/** m. The turn to final is complete at least this high (FAA-H-8083-3, chapter 9). */
export const soundFinal = 300 * metresPerFoot;
/** m: heights looked at, and how nearly the spot is met. */
const heights = [15, 4000] as const;
const tolerance = 0.01;
/** rad: by how much a base leg is turned in or out, and an S-turn leaves final. */
export const eighth = Math.PI / 4;
/** m. The steep approach ends here, to come back to the approach speed before the round-out (common practice, no source). */
export const steepUntil = 150 * metresPerFoot;

function atDownwindKey(key: KeyPosition, keys: readonly KeyPosition[], asked: Asked, conditions: Conditions) {
  const spacing = Math.abs(key.across);
  const from = (height: number) => ({
    start: { along: key.along, across: key.across, height, eas: conditions.polar.speed },
    before: [],
  });
  const at = (height: number): Asked => ({ ...asked, keyHeight: height, spacing });
  const toBase = (pastAbeam: number, height: number) =>
    approaching180(from(height), 'two', pastAbeam, at(height), conditions);
  const atOnce = lowest(key.height, conditions, (height) => toBase(0, height));
  const low =
    atOnce && (atOnce.path.finalHeight >= soundFinal || !atOnce.path.sound)
      ? atOnce
      : lowestWithSoundFinal(key.height, (height) => answerFrom(from(height), at(height), conditions));
  // The base turn where it is planned, or moved out to where the spot lies 45 degrees behind the wing; then as from the base key.
  const planned = plannedBaseTurn(keys, asked, conditions);
  const places = planned < spacing ? [spacing, planned] : [planned];
  const across = Math.abs(keys.find(({ id }) => id === 'base-key')?.across ?? 0);
  const found = places
    .flatMap((place) =>
      turnsOut.map((turn) => {
        const turned = (first: Leg) =>
          highest(key.height, asked, conditions, (height) =>
            turnedOnBase(toBase(place, height), first, turn, asked, conditions),
          );
        // Where the base key is the beginning of base leg, there may be nothing left to fly to it.
        return turned(baseLeg(asked.side, across, conditions)) ?? turned(levelOnBase(asked.side, conditions));
      }),
    )
    .filter((height) => height !== null);
  return { low: low?.height ?? null, high: found.length > 0 ? Math.max(...found) : null };
}

function atBaseKey(key: KeyPosition, asked: Asked, conditions: Conditions) {
  // A base leg turned in towards the spot by `turn` rad, or out where it is negative.
  const turned = (turn: number) => (height: number) => fromBase(key, height, turn, asked, conditions);
  let last: Edge | undefined;
  // Turned in as far as there is room to line up.
  const cut = turnsIn.find((turn) => {
    last = lowest(key.height, conditions, turned(turn));
    return last;
  });
  let low = last;
  if (cut !== undefined && low && low.path.finalHeight < soundFinal) {
    const spare = (turn: number) => {
      last = lowest(last?.height ?? key.height, conditions, turned(turn));
      return last ? last.path.finalHeight - soundFinal : Number.NaN;
    };
    const sought = seekRoot(spare, 0, -100, [-eighth, cut], 0.05);
    low = sought?.found ? last : undefined;
  }
  // Turned out as far as there is room to come back.
  const widened = turnsOut
    .map((turn) => highest(key.height, asked, conditions, turned(turn)))
    .filter((height) => height !== null);
  const high = widened.length > 0 ? Math.max(...widened) : null;
  return { low: low?.height ?? null, high };
}

function onFinal(key: KeyPosition, asked: Asked, conditions: Conditions) {
  const start = (height: number): Start => ({
    along: key.along,
    across: 0,
    height,
    eas: conditions.polar.speed,
  });
  const headwind = headwindAt(conditions, key.height / 2);
  const best = Math.max(
    speedToFly(conditions.polar, headwind, conditions.tasOverEas(key.height / 2)),
    1.3 * conditions.speeds.stall,
  );
  const straight = (eas: number) =>
    lowest(key.height, conditions, (height) => ({
      start: start(height),
      stages: [{ before: [] }],
      after: [finalLine(steepUntil, eas), ...finalLegs(conditions, asked.pull)],
    }));
  const [atBest, atApproach] = [straight(best), straight(conditions.speeds.approach)];
  const lows = [atBest?.height, atApproach?.height].filter((height) => height !== undefined);
  const high = highest(key.height, asked, conditions, (height) => ({
    start: start(height),
    stages: [{ before: [] }],
    after: [],
  }));
  return { low: lows.length > 0 ? Math.min(...lows) : null, high };
}

/** rad: a base leg turned in, or out, and as planned: the most first. */
const turnsIn = [eighth, eighth / 2, eighth / 4, 0] as const;
const turnsOut = [-eighth, -eighth / 2, 0] as const;

/** A path that has its base leg turned by `turn` rad after a first part of it, as from the base key. */
function turnedOnBase(
  path: Approaching,
  first: Leg,
  turn: number,
  { side, bank }: Asked,
  conditions: Conditions,
): Approaching {
  const [onToFinal, ...later] = path.stages;
  if (turn === 0 || !onToFinal) return path;
  const before = [...onToFinal.before, first, turnOnBase(turn, side, bank)];
  return { ...path, stages: [{ before, join: joinFromBase(side, bank, conditions, turn) }, ...later] };
}

/** m past abeam: where a base turn at the planned bank leads to the planned base leg, or to where a circle has its like. */
function plannedBaseTurn(keys: readonly KeyPosition[], { bank }: Asked, conditions: Conditions): number {
  const key = (id: KeyId) => keys.find((each) => each.id === id);
  const [baseTurn, baseKey, finalTurn] = [key('base-turn'), key('base-key'), key('final-turn')];
  const noBaseLeg = baseKey && finalTurn?.time === baseKey.time;
  return noBaseLeg ? -baseKey.along - stillAirLead(conditions, bank) : -(baseTurn?.along ?? 0);
}

/** No time on base leg itself, but the heading that holds it. */
function levelOnBase(side: Side, conditions: Conditions): LineLeg {
  return {
    kind: 'line',
    phase: 'base',
    track: baseTrack(side),
    until: { lasts: 0 },
    eas: conditions.polar.speed,
  };
}

function turnOnBase(turn: number, side: Side, bank: number): TurnLeg {
  return {
    kind: 'turn',
    phase: 'base',
    track: baseTrack(side) + side * turn,
    side: turn > 0 ? side : opposite(side),
    bank,
    rollOut: true,
  };
}

interface Edge {
  readonly height: number;
  readonly path: Approached;
}

/** The height from which a path ends at the spot: a lower one ends short. */
function lowest(
  guess: number,
  conditions: Conditions,
  path: (height: number) => Approaching,
): Edge | undefined {
  let last: Approached | undefined;
  const miss = (height: number) => {
    last = approach(path(height), conditions, last?.joined);
    return last?.miss ?? Number.NaN;
  };
  const sought = seekRoot(miss, guess, conditions.polar.ratio, heights, tolerance);
  return sought?.found && last?.sound ? { height: sought.x, path: last } : undefined;
}

function lowestWithSoundFinal(
  guess: number,
  answer: (height: number) => ReturnType<typeof answerFrom>,
): Edge | undefined {
  let last: Approached | undefined;
  const spare = (height: number) => {
    const found = answer(height);
    last = found?.made ? found.approached : undefined;
    return last ? last.finalHeight - soundFinal : Number.NaN;
  };
  const sought = seekRoot(spare, guess, 0.5, heights, 0.05);
  return sought?.found && last ? { height: sought.x, path: last } : undefined;
}

export function fromBase(
  key: KeyPosition,
  height: number,
  turn: number,
  asked: Asked,
  conditions: Conditions,
): Approaching {
  const { side, bank, pull } = asked;
  const level = levelOnBase(side, conditions);
  return {
    start: { along: key.along, across: key.across, height, eas: conditions.polar.speed },
    stages: [
      {
        before: turn === 0 ? [level] : [level, turnOnBase(turn, side, bank)],
        join: joinFromBase(side, bank, conditions, turn),
      },
    ],
    after: finalLegs(conditions, pull),
  };
}

/**
 * The height above which a path does not come down to the spot, whatever is lost on final: an S-turn to either side and
 * the steep approach, or the steep approach alone where there is no room to weave.
 */
function highest(
  guess: number,
  asked: Asked,
  conditions: Conditions,
  path: (height: number) => Approaching,
): number | null {
  const ways = [asked.side, opposite(asked.side), undefined].map((weave) =>
    lowest(guess, conditions, (height) => losingHeight(path(height), weave, asked, conditions)),
  );
  const found = ways.filter((edge) => edge !== undefined).map((edge) => edge.height);
  return found.length > 0 ? Math.max(guess, ...found) : null;
}

/** A path with the steep approach on final, after an S-turn that begins to the side of `weave`. */
export function losingHeight(
  path: Approaching,
  weave: Side | undefined,
  asked: Asked,
  conditions: Conditions,
): Approaching {
  const { steep } = conditions;
  const descent: Leg[] = steep ? [{ ...finalLine(steepUntil, steep.speed), steep: true }] : [];
  return {
    ...path,
    stages: weave === undefined ? path.stages : [...path.stages, sTurn(weave, asked.bank, conditions)],
    after: [...descent, ...finalLegs(conditions, asked.pull)],
  };
}

/** Off final by 45 degrees, across it by 45 degrees the other way, and back on to it. */
function sTurn(side: Side, bank: number, conditions: Conditions): Stage {
  const out: TurnLeg = { kind: 'turn', phase: 'final', track: side * eighth, side, bank, rollOut: false };
  const back: TurnLeg = { ...out, track: -side * eighth, side: opposite(side), rollOut: true };
  return {
    before: [out, back],
    join: {
      legs: (lead) => [
        { ...baseLeg(side, lead, conditions, -side * eighth), phase: 'final' },
        { ...out, track: 0, rollOut: true },
      ],
      guess: stillAirLead(conditions, bank) * (1 - Math.SQRT1_2),
      slope: side,
    },
  };
}

export function finalLine(until: number, eas: number): LineLeg {
  return {
    kind: 'line',
    phase: 'final',
    track: 0,
    until: { reaches: 'height', value: until, growing: -1 },
    eas,
  };
}

const opposite = (side: Side): Side => (side === 1 ? -1 : 1);
