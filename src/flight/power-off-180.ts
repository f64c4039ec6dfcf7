import type { Conditions } from './conditions.ts';
import { Flight } from './fly.ts';
import { ACROSS, ALONG, HEIGHT } from './motions.ts';
import type { LandingLeg, LineLeg, Procedure, Side, TurnLeg } from './procedure.ts';
import { bracketFrom, rootInBracket, rootNear } from './root.ts';
import { turnRadius } from './turns.ts';

/**
 * The half-circuit approach: the throttle closes abeam the spot on the downwind leg, the base turn starts some way
 * past abeam, and that distance is what the planner finds (FAA-H-8083-3, chapter 9, 180-degree power-off approach).
 */
export interface Request180 {
  readonly side: Side;
  /** m above the spot and to the side of its centreline, at the downwind key. */
  readonly height: number;
  readonly spacing: number;
  /** rad, of both turns. */
  readonly bank: number;
  /** Load factor of the round-out. */
  readonly pull: number;
}

/** The numbers a 180 is flown by. */
export interface Numbers180 {
  /** m past abeam the spot at which the base turn starts. */
  readonly pastAbeam: number;
  /**
   * How the turns meet: with a straight base leg, the turn to final starts `lead` m from the centreline; where the
   * spacing leaves no base leg, one continuous turn is flown at `bank`.
   */
  readonly turns:
    | { readonly kind: 'two'; readonly lead: number }
    | { readonly kind: 'one'; readonly bank: number };
}

/** Fixed speeds, lines and turns of a 180, given its numbers. */
export function procedure180(request: Request180, numbers: Numbers180, conditions: Conditions): Procedure {
  const legs = legs180(request, numbers, conditions);
  const { height, spacing, side } = request;
  return {
    start: { along: 0, across: side * spacing, height, eas: conditions.polar.speed },
    legs: [
      legs.downwind,
      legs.baseTurn,
      ...(legs.base ? [legs.base] : []),
      legs.finalTurn,
      legs.final,
      legs.landing,
    ],
  };
}

interface Legs180 {
  readonly downwind: LineLeg;
  readonly baseTurn: TurnLeg;
  readonly base?: LineLeg;
  readonly finalTurn: TurnLeg;
  readonly final: LineLeg;
  readonly landing: LandingLeg;
}

function legs180(request: Request180, numbers: Numbers180, conditions: Conditions): Legs180 {
  const { side, pull } = request;
  const { turns, pastAbeam } = numbers;
  const eas = conditions.polar.speed;
  const bank = turns.kind === 'two' ? request.bank : turns.bank;
  const continuous = turns.kind === 'one';
  // Headings fall through a left-hand pattern and grow through a right-hand one: downwind, base, final.
  const baseTrack = (-side * Math.PI) / 2;
  return {
    downwind: {
      kind: 'line',
      phase: 'downwind',
      track: -side * Math.PI,
      until: { reaches: 'along', value: -pastAbeam, growing: -1 },
      eas,
    },
    baseTurn: { kind: 'turn', phase: 'base-turn', track: baseTrack, side, bank, rollOut: !continuous },
    ...(turns.kind === 'two' && {
      base: {
        kind: 'line',
        phase: 'base',
        track: baseTrack,
        until: { reaches: 'across', value: side * turns.lead, growing: side === 1 ? -1 : 1 },
        eas,
      } satisfies LineLeg,
    }),
    finalTurn: { kind: 'turn', phase: 'final-turn', track: 0, side, bank, rollOut: true },
    final: {
      kind: 'line',
      phase: 'final',
      track: 0,
      until: { reaches: 'height', value: conditions.aircraft.roundOut.height, growing: -1 },
      eas: conditions.speeds.approach,
    },
    landing: { kind: 'landing', pull, touchdownEas: conditions.speeds.touchdown },
  };
}

/** What the solver made of a request. */
export interface Found180 {
  /** Those that touch down at the spot; where none do, those that come nearest. */
  readonly numbers: Numbers180;
  /** m by which the touchdown is off the spot, along the runway; 0 where it is made. */
  readonly miss: number;
}

/** m. The touchdown is brought this near to the spot. */
const spotTolerance = 1e-3;
/** m. The turn to final is brought this near to the centreline. */
const lineTolerance = 1e-5;
/** m. Farther past abeam than this nobody flies. */
const furthestPastAbeam = 30_000;

/** Finds how far past abeam the base turn of a 180 starts. */
export function find180(request: Request180, conditions: Conditions, runwayHeading: number): Found180 {
  const kinds = [
    trial180('two', request, conditions, runwayHeading),
    trial180('one', request, conditions, runwayHeading),
  ];
  let nearest: Found180 | undefined;
  for (const trial of kinds) {
    const found = search(trial);
    if (found && found.miss === 0) return found;
    if (found && (!nearest || Math.abs(found.miss) < Math.abs(nearest.miss))) nearest = found;
  }
  return nearest ?? { numbers: fallback(request, conditions), miss: Number.NaN };
}

/** Numbers for a flight that shows what happens where no answer exists. */
function fallback(request: Request180, conditions: Conditions): Numbers180 {
  return {
    pastAbeam: 0,
    turns: { kind: 'two', lead: Math.min(likelyLead(request, conditions), request.spacing / 2) },
  };
}

interface Trial {
  /** m past the spot at touchdown, for a distance past abeam; not a number where the trial cannot be flown. */
  readonly miss: (pastAbeam: number) => number;
  /** The numbers of the last trial. */
  readonly numbers: () => Numbers180;
  /** True where the last trial had a base leg of some length, or a turn within the aircraft's limit, and was
   * wings level on final above the round-out height. */
  readonly sound: () => boolean;
}

function search(trial: Trial): Found180 | undefined {
  const atOnce = trial.miss(0);
  if (!Number.isFinite(atOnce)) return undefined;
  if (atOnce < 0) return trial.sound() ? { numbers: trial.numbers(), miss: atOnce } : undefined;
  const bracket = bracketFrom(trial.miss, 0, atOnce, 200, furthestPastAbeam);
  const pastAbeam = bracket && rootInBracket(trial.miss, bracket, spotTolerance);
  if (pastAbeam === undefined) return undefined;
  trial.miss(pastAbeam);
  return trial.sound() ? { numbers: trial.numbers(), miss: 0 } : undefined;
}

function trial180(
  kind: 'two' | 'one',
  request: Request180,
  conditions: Conditions,
  runwayHeading: number,
): Trial {
  const { side } = request;
  let guess = kind === 'two' ? likelyLead(request, conditions) : request.bank;
  let numbers: Numbers180 = { pastAbeam: 0, turns: turnsOf(kind, guess) };
  let sound = false;
  const miss = (pastAbeam: number): number => {
    const flight = new Flight(conditions, runwayHeading, 'search');
    const legs = legs180(request, { pastAbeam, turns: turnsOf(kind, guess) }, conditions);
    flight.begin(
      { along: 0, across: side * request.spacing, height: request.height, eas: conditions.polar.speed },
      legs.downwind,
    );
    flight.leg(legs.downwind);
    if (kind === 'two') flight.leg(legs.baseTurn);
    const beforeTurns = Float64Array.from(flight.state);
    let baseLeg = 0;
    const offCentreline = (x: number): number => {
      flight.state.set(beforeTurns);
      const trying = legs180(request, { pastAbeam, turns: turnsOf(kind, x) }, conditions);
      if (trying.base) baseLeg = flight.leg(trying.base);
      else flight.leg(trying.baseTurn);
      flight.leg(trying.finalTurn);
      return flight.flyable ? side * flight.state[ACROSS]! : Number.NaN;
    };
    const met =
      kind === 'two'
        ? rootNear(offCentreline, guess, 1, lineTolerance)
        : bankThatMeets(offCentreline, conditions.aircraft.turns.limit);
    if (met === undefined) return Number.NaN;
    guess = met;
    numbers = { pastAbeam, turns: turnsOf(kind, met) };
    offCentreline(met);
    const finalHeight = flight.state[HEIGHT]!;
    flight.leg(legs.final);
    flight.leg(legs.landing);
    sound = finalHeight > conditions.aircraft.roundOut.height && baseLeg >= 0;
    return flight.flyable ? flight.state[ALONG]! : Number.NaN;
  };
  return { miss, numbers: () => numbers, sound: () => sound };
}

function turnsOf(kind: 'two' | 'one', unknown: number): Numbers180['turns'] {
  return kind === 'two' ? { kind, lead: unknown } : { kind, bank: unknown };
}

/** The lead of a turn in still air. */
function likelyLead(request: Request180, conditions: Conditions): number {
  return turnRadius(conditions.polar.speed * conditions.tasOverEas(request.height / 2), request.bank);
}

/** The bank of a single turn that ends on the centreline, between 5 degrees and the aircraft's limit. */
function bankThatMeets(offCentreline: (bank: number) => number, limit: number): number | undefined {
  const low = (5 * Math.PI) / 180;
  return rootInBracket(
    offCentreline,
    { low, high: limit, atLow: offCentreline(low), atHigh: offCentreline(limit) },
    lineTolerance,
  );
}

/** m past the spot (negative: short) of a 180 whose base turn starts abeam; not a number where it cannot be flown. */
export function missTurningAtOnce(
  request: Request180,
  conditions: Conditions,
  runwayHeading: number,
): number {
  for (const kind of ['two', 'one'] as const) {
    const trial = trial180(kind, request, conditions, runwayHeading);
    const miss = trial.miss(0);
    if (Number.isFinite(miss) && trial.sound()) return miss;
  }
  return Number.NaN;
}
