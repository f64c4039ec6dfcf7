import { soundFinal } from '../../src/flight/gates.ts';
import { keyLabels } from '../../src/flight/keys.ts';
import { metresPerFoot } from '../../src/units/factors.ts';
import { formatHeight } from '../../src/units/format.ts';
import { formatGateEdge } from '../safe-rounding.ts';
import { drawHeight } from './draw-figures.ts';
import { shuffled, shuffledChoices } from './exercise.ts';
import { type Band, bandAt, gateTable } from './gate-table.ts';
import type { Draw, QuestionSetting } from './question-setting.ts';

/** m: so far from every edge, and from the plan, that nobody has to wonder which side is meant. */
const clear = 25 * metresPerFoot;
/** m. */
const furthest = 150 * metresPerFoot;

type Reading = 'below' | 'lower' | 'higher' | 'above';

/** The keys whose gates are asked about; final has a question of its own. */
const asked = ['downwind-key', 'base-key'] as const;
type AskedKey = (typeof asked)[number];

/** A height at a key, to be read from the gate table. */
export const gateReading: Draw = ({ plan, units }, random) => {
  const drawn = shuffled(
    asked.flatMap((at) => readingsAt(at, plan)),
    random,
  )[0];
  if (!drawn) return undefined;
  const { at, band, reading, range } = drawn;
  const height = drawHeight(...range, units, random);
  if (height === undefined) return undefined;
  const words = actions(plan, at);
  const key = keyLabels[at].toLowerCase();
  const shown = (metres: number) => formatHeight(metres, units);
  const others = (Object.keys(words) as Reading[]).filter((each) => each !== reading);
  return shuffledChoices(
    {
      question:
        `Read the table of gates (heights above the spot). You pass the ${key} at ${shown(height)}. ` +
        'Where are you in its band, and what do you do?',
      table: gateTable(plan.gates, units),
      right: words[reading],
      wrong: others.map((other) => ({ text: words[other], fault: faultOf(reading, other) })),
      working: [
        `At the ${key} the band runs from ${formatGateEdge(band, 'low', units)} to ${formatGateEdge(band, 'high', units)}; ` +
          `the plan passes it at ${shown(band.plan)}.`,
        comparisons[reading](shown(height), at, band, units),
      ],
    },
    random,
  );
};

/** The readings that there are heights for at a key. */
function readingsAt(at: AskedKey, { gates, keys }: QuestionSetting['plan']) {
  const band = bandAt(gates, at);
  if (!band) return [];
  const before = at === 'base-key' ? keys.find(({ id }) => id === 'downwind-key')?.height : undefined;
  return Object.entries(rangesOf(band, before))
    .filter(([, [low, high]]) => low <= high)
    .map(([reading, range]) => ({ at, band, reading: reading as Reading, range }));
}

/**
 * No height is drawn to which a glide would have had to climb (`before` is that of the key before it), and none so low that
 * a turn to final begun there is a go-around and nothing else.
 */
function rangesOf(
  { low, plan, high }: Band,
  before = Number.POSITIVE_INFINITY,
): Record<Reading, readonly [number, number]> {
  const most = before - clear;
  return {
    below: [Math.max(low - furthest, low / 2, soundFinal + clear), low - clear],
    lower: [low + clear, plan - clear],
    higher: [Math.max(plan, low) + clear, Math.min(high - clear, most)],
    above: [high + clear, Math.min(high + furthest, most)],
  };
}

/** What the packet's gates ask for, in the words of its own table where that has one line for it. */
function actions({ power, aircraft }: QuestionSetting['plan'], at: AskedKey): Record<Reading, string> {
  const drag = aircraft.steepApproach ? 'the steep approach' : 'an S-turn';
  return {
    below:
      power === 'idle'
        ? 'Below the band: power, or another field.'
        : 'Below the band: another field, at once.',
    lower: `In the band, lower than the plan: ${at === 'base-key' ? 'turn in' : 'turn base sooner'}, cut the corner.`,
    higher: `In the band, higher than the plan: ${at === 'base-key' ? `widen, then ${drag}` : 'move the base turn out'}.`,
    above:
      power === 'idle'
        ? 'Above the band: go around; with no engine, land farther in.'
        : 'Above the band: land farther in, or another field.',
  };
}

/** How one comes from a height to what another would ask for. */
function faultOf(reading: Reading, other: Reading): string {
  if (other === 'below') {
    return reading === 'lower'
      ? 'gives up a spot that is not out of reach, or misreads the low edge'
      : 'takes the height for too low';
  }
  if (other === 'above') {
    return reading === 'higher'
      ? 'gives up a spot that can be had, or misreads the high edge'
      : 'takes the height for too high';
  }
  if (other === 'lower') {
    return `takes the height for lower than the plan${reading === 'below' ? ', and for enough' : ''}`;
  }
  return `takes the height for higher than the plan${reading === 'above' ? ', and for one that can be lost' : ''}`;
}

type Comparison = (height: string, at: AskedKey, band: Band, units: QuestionSetting['units']) => string;

const comparisons: Record<Reading, Comparison> = {
  below: (height, at, band, units) =>
    `${height} is less than ${formatGateEdge(band, 'low', units)}: even ` +
    `${at === 'base-key' ? 'the corner cut' : 'the base turn at once'} does not reach the spot soundly.`,
  lower: (height, _at, { plan }, units) =>
    `${height} is above the low edge and under the plan's ${formatHeight(plan, units)}.`,
  higher: (height, _at, { plan }, units) =>
    `${height} is over the plan's ${formatHeight(plan, units)} and under the high edge.`,
  above: (height, _at, band, units) =>
    `${height} is more than ${formatGateEdge(band, 'high', units)}: no way of losing height brings it to the spot.`,
};
