import {
  crosswind as acrossRunway,
  headwind as alongRunway,
  positiveAngle,
} from '../../src/flight/air/wind.ts';
import { planApproach } from '../../src/flight/plan/planner.ts';
import { type WindRow, windTable } from '../../src/flight/questions/wind-table.ts';
import { metresPerSecondPerKnot } from '../../src/units/factors.ts';
import { drawSpeed } from './draw-figures.ts';
import type { QuestionSetting } from './question-setting.ts';

/** The packet's approach in another wind, and the flights that a student who gets the wind wrong arrives at. */
export interface WindFlights {
  /** m/s, straight down the runway. */
  readonly headwind: number;
  readonly right: WindRow;
  readonly still: WindRow;
  readonly faulty: readonly { readonly row: WindRow; readonly fault: string }[];
}

/** m/s. In less wind than this the right figure is too near to that of still air. */
const least = 6 * metresPerSecondPerKnot;
/** m/s. No packet asks about more than this, whatever the aircraft can take. */
const most = 18 * metresPerSecondPerKnot;

/**
 * Undefined where the approach is not made in the wind that was drawn, or only with a caution that the packet's own
 * flight does not have: no question teaches a flight that is not to be flown. Winds given by layers cannot be changed
 * to another wind.
 */
export function drawWindFlights(
  { plan, request, units }: QuestionSetting,
  random: () => number,
): WindFlights | undefined {
  if (plan.flown.windProfile === 'layers') return undefined;
  const headwind = drawSpeed(least, Math.min(most, plan.aircraft.limits.wind), units, random);
  // Tables and cards by wind have every 5 kt: their answers are printed.
  if (headwind === undefined || isEvery5kt(headwind)) return undefined;
  const { heading } = request.runway;
  const wind = { from: positiveAngle(heading), speed: headwind };
  const flown = planApproach({ ...request, wind, gust: undefined, detail: 'flight' });
  const known = new Set(plan.cautions.map(({ code }) => code));
  if (!flown.made || flown.cautions.some(({ code }) => !known.has(code))) return undefined;

  const today = plan.flown.surfaceWind;
  const [right, still, behind, own] = windTable(request, [
    { headwind, crosswind: 0 },
    { headwind: 0, crosswind: 0 },
    { headwind: -headwind, crosswind: 0 },
    { headwind: alongRunway(today, heading), crosswind: acrossRunway(today, heading) },
  ]);
  const [even] = windTable({ ...request, windProfile: 'uniform' }, [{ headwind, crosswind: 0 }]);
  const faulty = [
    { row: still!, fault: 'the wind forgotten: the figure of still air' },
    { row: behind!, fault: 'the wind taken from behind' },
    { row: own!, fault: 'the figure of the wind of these pages' },
    ...(plan.flown.windProfile === 'power'
      ? [{ row: even!, fault: 'the wind at 10 m taken for the wind higher up' }]
      : []),
    ...otherPower(plan, request, headwind),
  ];
  if (!still!.made) return undefined;
  return { headwind, right: right!, still: still!, faulty: faulty.filter(({ row }) => row.made) };
}

function isEvery5kt(speed: number): boolean {
  const steps = speed / (5 * metresPerSecondPerKnot);
  return Math.abs(steps - Math.round(steps)) < 1e-6;
}

function otherPower(
  { aircraft }: QuestionSetting['plan'],
  request: QuestionSetting['request'],
  headwind: number,
) {
  const power = request.power === 'idle' ? 'stopped' : 'idle';
  if (!aircraft.glide[power]) return [];
  const words = power === 'idle' ? 'idling' : 'stopped';
  return windTable({ ...request, power }, [{ headwind, crosswind: 0 }]).map((row) => ({
    row,
    fault: `the figure with the engine ${words}`,
  }));
}
