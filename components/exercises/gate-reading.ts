import { metresPerFoot } from '../../src/units/factors.ts';
import { formatHeight } from '../../src/units/format.ts';
import { formatGateEdge } from '../safe-rounding.ts';
import { drawHeight, oneOf } from './draw-figures.ts';
import { shuffledChoices } from './exercise.ts';
import { type Band, bandAt, gateTable } from './gate-table.ts';
import type { Draw, QuestionSetting } from './question-setting.ts';

/** m: so far from every edge, and from the plan, that nobody has to wonder which side is meant. */
const clear = 25 * metresPerFoot;
/** m. */
const furthest = 150 * metresPerFoot;

type Reading = 'below' | 'lower' | 'higher' | 'above';

/** A height at the base key, to be read from the gate table. */
export const gateReading: Draw = ({ plan, units }, random) => {
  const band = bandAt(plan.gates, 'base-key');
  if (!band) return undefined;
  const ranges = rangesOf(band, plan.keys.find(({ id }) => id === 'downwind-key')?.height);
  const readings = (Object.keys(ranges) as Reading[]).filter((each) => ranges[each][0] <= ranges[each][1]);
  if (readings.length === 0) return undefined;
  const reading = oneOf(readings, random);
  const height = drawHeight(...ranges[reading], units, random);
  if (height === undefined) return undefined;
  const words = actions(plan);
  const shown = (metres: number) => formatHeight(metres, units);
  const others = (Object.keys(words) as Reading[]).filter((each) => each !== reading);
  return shuffledChoices(
    {
      question:
        `Read the table of gates (heights above the spot). You pass the base key at ${shown(height)}. ` +
        'Where are you in its band, and what do you do?',
      table: gateTable(plan.gates, units),
      right: words[reading],
      wrong: others.map((other) => ({ text: words[other], fault: faults[other] })),
      working: [
        `At the base key the band runs from ${formatGateEdge(band, 'low', units)} to ${formatGateEdge(band, 'high', units)}; ` +
          `the plan passes it at ${shown(band.plan)}.`,
        comparisons[reading](shown(height), band, units),
      ],
    },
    random,
  );
};

/** No height at the base key is drawn from which a glide would have to climb: `before` is that of the key before it. */
function rangesOf(
  { low, plan, high }: Band,
  before = Number.POSITIVE_INFINITY,
): Record<Reading, readonly [number, number]> {
  const most = before - clear;
  return {
    below: [Math.max(low - furthest, low / 2), low - clear],
    lower: [low + clear, plan - clear],
    higher: [Math.max(plan, low) + clear, Math.min(high - clear, most)],
    above: [high + clear, Math.min(high + furthest, most)],
  };
}

/** What the packet's gates ask for, in the words of its own table where that has one line for it. */
function actions({ power, aircraft }: QuestionSetting['plan']): Record<Reading, string> {
  const drag = aircraft.steepApproach ? 'the steep approach' : 'an S-turn';
  return {
    below:
      power === 'idle'
        ? 'Below the band: power, or another field.'
        : 'Below the band: another field, at once.',
    lower: 'In the band, lower than the plan: turn in, cut the corner.',
    higher: `In the band, higher than the plan: widen, then ${drag}.`,
    above:
      power === 'idle'
        ? 'Above the band: go around, or land farther in.'
        : 'Above the band: land farther in, or another field.',
  };
}

const faults: Record<Reading, string> = {
  below: 'gives up a spot that is not out of reach, or misreads the low edge',
  lower: 'takes the height for lower than the plan, and for enough',
  higher: 'takes the height for higher than the plan',
  above: 'gives up a spot that can be had, or misreads the high edge',
};

const comparisons: Record<Reading, (height: string, band: Band, units: QuestionSetting['units']) => string> =
  {
    below: (height, band, units) =>
      `${height} is less than ${formatGateEdge(band, 'low', units)}: even the corner cut does not reach the spot.`,
    lower: (height, { plan }, units) =>
      `${height} is above the low edge and under the plan's ${formatHeight(plan, units)}.`,
    higher: (height, { plan }, units) =>
      `${height} is over the plan's ${formatHeight(plan, units)} and under the high edge.`,
    above: (height, band, units) =>
      `${height} is more than ${formatGateEdge(band, 'high', units)}: no way of losing height brings it to the spot.`,
  };
