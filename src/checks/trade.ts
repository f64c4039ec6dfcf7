import { planApproach } from '../flight/plan/planner.ts';
import { RequestError } from '../flight/terms/errors.ts';
import type { KeyId } from '../flight/terms/key.ts';
import type { Plan, PlanRequest, SurfaceWind } from '../flight/terms/plan.ts';
import { radiansPerDegree as degree, metresPerFoot, metresPerStatuteMile } from '../units/factors.ts';
import { allowance, numbersOf, type Published, published } from './published.ts';

/** What a figure of the trade comes to for one aircraft in one wind: information, never a failure. */
export interface TradeResult {
  readonly row: Published;
  readonly aircraft: string;
  /** Undefined where the wind makes no difference. */
  readonly wind: SurfaceWind | undefined;
  /** In the row's unit; undefined where this aircraft does not reach the spot that way. */
  readonly ours: number | undefined;
  readonly fits: boolean;
}

/** The flights of one aircraft in one wind; undefined where the spot is not reached. */
interface Flights {
  readonly half: Plan | undefined;
  /** From 2,000 ft. */
  readonly full: Plan | undefined;
  /** At the planned bank, from the height that it needs. */
  readonly fullAtBank: Plan | undefined;
}

const feet = (metres: number | undefined) => metres && metres / metresPerFoot;
const key = (plan: Plan | undefined, id: KeyId) => plan?.keys.find((one) => one.id === id);

/** m from the landing end of the runway, measured back along the approach. */
const beforeRunway = (along: number, plan: Plan) => -along - plan.runway.spot;

const figures: Readonly<Record<string, (flights: Flights) => number | undefined>> = {
  pp_180: ({ half }) => feet(half?.gates.find(({ at }) => at === 'downwind-key')?.low ?? undefined),
  pp_360_hi: ({ fullAtBank }) => feet(fullAtBank?.flown.height),
  pp_360_dw: ({ full }) => feet(key(full, 'downwind-key')?.height),
  pp_360_base: ({ full }) => feet(key(full, 'base-key')?.height),
  pp_360_final: ({ full }) => feet(key(full, 'final')?.height),
  pp_final_quarter: ({ half }) => {
    const final = key(half, 'final');
    return half && final && beforeRunway(final.along, half) / metresPerStatuteMile;
  },
  pp_base45: ({ half }) => {
    const turn = key(half, 'base-turn');
    return half && turn && Math.atan2(beforeRunway(turn.along, half), Math.abs(turn.across)) / degree;
  },
};

/** Figures of the aircraft itself, whatever the wind. */
const ofTheAircraft: Readonly<Record<string, (plan: Plan) => number>> = {
  pp_14: ({ flown }) => flown.glideSpeed / flown.stallSpeed,
  pp_13: ({ flown }) => flown.approachSpeed / flown.stallSpeed,
  fl_roundout: ({ aircraft }) => aircraft.roundOut.height / metresPerFoot,
};

/** True for a row that `tradeChecks` computes. */
function isTraded(row: Published): boolean {
  return row.trade !== undefined && (row.id in figures || row.id in ofTheAircraft);
}

/** Every figure of the trade for each aircraft, in calm air and in that aircraft's wind. */
export function tradeChecks(flyers: readonly PlanRequest[]): TradeResult[] {
  const flown = flyers.map((flyer) => ({
    name: flyer.aircraft.name,
    plan: planApproach({ ...flyer, detail: 'flight' }),
    winds: [{ from: 0, speed: 0 }, flyer.wind].map((wind) => ({
      wind,
      flights: flightsOf({ ...flyer, wind }),
    })),
  }));
  return published.filter(isTraded).flatMap((row) =>
    flown.flatMap(({ name, plan, winds }) => {
      const own = ofTheAircraft[row.id];
      if (own) return [judged(row, name, undefined, own(plan))];
      return winds.map(({ wind, flights }) => judged(row, name, wind, figures[row.id]!(flights)));
    }),
  );
}

function judged(
  row: Published,
  aircraft: string,
  wind: SurfaceWind | undefined,
  ours: number | undefined,
): TradeResult {
  return { row, aircraft, wind, ours, fits: ours !== undefined && fits(row, ours) };
}

function fits(row: Published, ours: number): boolean {
  const values = numbersOf(row);
  const [low, high] = [Math.min(...values), Math.max(...values)];
  const slack = allowance(row, high);
  const aboveLow = row.trade === 'at most' || ours >= low - slack;
  const belowHigh = row.trade === 'at least' || ours <= high + slack;
  return aboveLow && belowHigh;
}

function flightsOf(flyer: PlanRequest): Flights {
  const { height: _height, bank: _bank, ...rest } = flyer;
  return {
    half: reached({ ...flyer, detail: 'whole' }),
    full: reached({ ...rest, approach: '360', height: 2000 * metresPerFoot, detail: 'flight' }),
    fullAtBank: reached({
      ...rest,
      approach: '360',
      bank: planApproach({ ...flyer, detail: 'flight' }).flown.bank,
      detail: 'flight',
    }),
  };
}

function reached(request: PlanRequest): Plan | undefined {
  try {
    const plan = planApproach(request);
    return plan.made ? plan : undefined;
  } catch (error) {
    if (error instanceof RequestError) return undefined;
    throw error;
  }
}
