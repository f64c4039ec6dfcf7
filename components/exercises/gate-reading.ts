import { metresPerFoot } from '../../src/units/factors.ts';
import { formatHeight } from '../../src/words/figures/format.ts';
import { lowerFirst } from '../../src/words/figures/letter-case.ts';
import { edgeTexts } from '../../src/words/gates/gate-band.ts';
import { insteadAbove, insteadBelow, onPattern, turnsInTime } from '../../src/words/gates/gate-words.ts';
import { leastFinal } from '../../src/words/gates/least-final.ts';
import { keyNames } from '../../src/words/keys/key-names.ts';
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
export const gateReading: Draw = (setting, random) => {
  const { plan, units } = setting;
  // Where the plan's own turn to final is too low, "at the plan" is no answer to compare the others with.
  if (!turnsInTime(setting)) return undefined;
  const drawn = shuffled(
    asked.flatMap((at) => readingsAt(at, setting)),
    random,
  )[0];
  if (!drawn) return undefined;
  const { at, band, reading, range } = drawn;
  const height = drawHeight(range, units, random);
  if (height === undefined) return undefined;
  const words = actions(plan, at);
  const key = keyNames[at].toLowerCase();
  const shown = (metres: number) => formatHeight(metres, units);
  const edges = edgeTexts(band, units);
  const others = (Object.keys(words) as Reading[]).filter((each) => each !== reading);
  return shuffledChoices(
    {
      question:
        `Read the table of gates (heights above the spot). You pass the ${key} at ${shown(height)}. ` +
        'Where are you in its band, and what do you do?',
      table: gateTable(plan, units),
      right: words[reading],
      wrong: others.map((other) => ({ text: words[other], fault: faultOf(reading, other) })),
      working: [
        `At the ${key} the band runs from ${edges.low} to ${edges.high}; ` +
          `the plan passes it at ${shown(band.plan)}.`,
        comparisons[reading](shown(height), at, band, units),
      ],
    },
    random,
  );
};

/** The readings at a key for which there are heights. */
function readingsAt(at: AskedKey, { plan: { gates, keys }, request, units }: QuestionSetting) {
  const band = bandAt(gates, at, units);
  if (!band) return [];
  const earlier = at === 'base-key' ? 'downwind-key' : 'overhead';
  const before = keys.find(({ id }) => id === earlier)?.height;
  return Object.entries(rangesOf(band, leastFinal(request), before))
    .filter(([, [low, high]]) => low <= high)
    .map(([reading, range]) => ({ at, band, reading: reading as Reading, range }));
}

/**
 * No height is drawn that a glide would have had to climb to (`before` is the height at the key before), and none so
 * low that a turn to final begun there can only be a go-around.
 */
function rangesOf(
  { low, plan, high }: Band,
  sound: number,
  before = Number.POSITIVE_INFINITY,
): Record<Reading, readonly [number, number]> {
  const most = before - clear;
  return {
    below: [Math.max(low - furthest, low / 2, sound + clear), low - clear],
    lower: [low + clear, plan - clear],
    higher: [Math.max(plan, low) + clear, Math.min(high - clear, most)],
    above: [high + clear, Math.min(high + furthest, most)],
  };
}

/** What the packet's gates ask for, in the words of its own table where that has a line for it. */
function actions(plan: QuestionSetting['plan'], at: AskedKey): Record<Reading, string> {
  const below = insteadBelow(at, plan);
  const above = insteadAbove(at, plan);
  return {
    below: `Below the band: ${lowerFirst(below)}.`,
    lower: `In the band, lower than the plan: ${onPattern[at].lower}.`,
    higher: `In the band, higher than the plan: ${onPattern[at].higher}.`,
    above: `Above the band: ${lowerFirst(above)}.`,
  };
}

/** How a height leads one to what another height would ask for. */
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
    `${height} is less than ${edgeTexts(band, units).low}: even ` +
    `${at === 'base-key' ? 'the corner cut' : 'the base turn at once'} does not reach the spot soundly.`,
  lower: (height, _at, { plan }, units) =>
    `${height} is above the low edge and under the plan's ${formatHeight(plan, units)}.`,
  higher: (height, _at, { plan }, units) =>
    `${height} is over the plan's ${formatHeight(plan, units)} and under the high edge.`,
  above: (height, _at, band, units) =>
    `${height} is more than ${edgeTexts(band, units).high}: even the longest way that the gate allows passes the spot.`,
};
