import type { Plan } from '../../src/flight/terms/plan.ts';
import { metresPerFoot } from '../../src/units/factors.ts';
import { formatHeight, heightStep } from '../../src/words/figures/format.ts';
import { lowerFirst } from '../../src/words/figures/letter-case.ts';
import { formatLeastHeight } from '../../src/words/figures/safe-rounding.ts';
import { edgeTexts } from '../../src/words/gates/gate-band.ts';
import { dragWords, insteadAbove, turnsInTime } from '../../src/words/gates/gate-words.ts';
import { leastFinal } from '../../src/words/gates/least-final.ts';
import { sumText } from './by-hand.ts';
import { drawHeight, printedHeight } from './draw-figures.ts';
import { shuffledChoices } from './exercise.ts';
import { type Band, bandAt, gateTable } from './gate-table.ts';
import type { Draw } from './question-setting.ts';

/** m: a final lower or higher than the plan by this much. */
const offsets = [40 * metresPerFoot, 120 * metresPerFoot] as const;
/** m: so far from an edge that nobody has to wonder. */
const clear = 15 * metresPerFoot;
/** In this share of the questions the final is low: that is the case to know by heart. */
const lowShare = 0.7;

/** What to do on a final that begins lower or higher than planned. */
export const finalOffHeight: Draw = ({ plan, request, units }, random) => {
  const band = bandAt(plan.gates, 'final', units);
  const size = drawHeight(offsets, units, random);
  // Where the plan's own turn to final is too low, no question has a lower one.
  if (!band || size === undefined || !turnsInTime({ plan, request })) return undefined;
  const isLow = random() < lowShare;
  const planned = printedHeight(band.plan, units);
  const [height, mirrored] = isLow ? [planned - size, planned + size] : [planned + size, planned - size];
  if (height < heightStep(units) || mirrored < heightStep(units)) return undefined;
  // With the engine running, the answer to an approach that is not right by then is to go around, within the band or
  // below it.
  const least = plan.power === 'idle' ? leastFinal(request) : 0;
  if (Math.max(height, mirrored) < least) return undefined;
  if ([band.low, band.high, least].some((edge) => Math.abs(edge - height) < clear)) return undefined;

  const shown = (metres: number) => formatHeight(metres, units);
  const minimum = formatLeastHeight(least, units);
  const sound = formatLeastHeight(leastFinal(request), units);
  const edges = edgeTexts(band, units);
  const state = stateOf(height, band, least);
  const lateWords = (metres: number) =>
    metres < band.low ? 'below the band' : `in the band, but below ${minimum}`;
  const does = actions(plan, lateWords(height), sound);
  const right = `${shown(height)}: ${does[state]}`;
  // Power is right below the band and below the least height alike, so one cannot be a wrong choice for the other.
  const nearest = (
    { late: ['lower'], below: ['lower'], lower: ['below'], higher: ['above'], above: ['higher'] } as const
  )[state];
  const faults = stateFaults(minimum, height >= band.low);
  return shuffledChoices(
    {
      question:
        `You roll out on final ${shown(size)} ${isLow ? 'lower' : 'higher'} than planned; speed and place are right. How high ` +
        'above the spot is that, and what now?',
      table: gateTable({ ...plan, gates: [band] }, units),
      right,
      wrong: [
        ...nearest.map((each) => ({
          text: `${shown(height)}: ${does[each]}`,
          fault: faults[state === 'late' ? 'late' : each],
        })),
        {
          text: `${shown(mirrored)}: ${actions(plan, lateWords(mirrored), sound)[stateOf(mirrored, band, least)]}`,
          fault: `${shown(size)} ${isLow ? 'added' : 'taken off'}, the wrong way round`,
        },
        isLow
          ? {
              text: `${shown(height)}: slower than the best glide, to stretch it.`,
              fault: 'slower than the best glide the path through the air is steeper, and the stall nearer',
            }
          : {
              text: `${shown(height)}: slower than the best glide, to sink faster.`,
              fault: 'near the stall with no height to recover',
            },
      ],
      working: [
        `${sumText(isLow ? '−' : '+', shown(planned), shown(size))} = ${shown(height)}; the band runs from ` +
          `${edges.low} to ${edges.high}.`,
        reasons(minimum)[state],
      ],
    },
    random,
  );
};

/** `late`: lower than a turn to final may be complete. */
type State = 'late' | 'below' | 'lower' | 'higher' | 'above';

function stateOf(height: number, { low, plan, high }: Band, least: number): State {
  if (height < least) return 'late';
  if (height < low) return 'below';
  if (height > high) return 'above';
  return height < plan ? 'lower' : 'higher';
}

function actions(plan: Plan, late: string, sound: string): Record<State, string> {
  const idle = plan.power === 'idle';
  const above = insteadAbove('final', plan);
  return {
    late: `${late}: power, and go around.`,
    below: idle
      ? 'below the band: power, at once.'
      : 'below the band: the best ground short of the spot, at once.',
    lower: 'in the band: the best speed for this wind, and no slower.',
    higher: `in the band: ${dragWords(plan, sound)}.`,
    above: `above the band: ${lowerFirst(above)}.`,
  };
}

function stateFaults(minimum: string, reachesSpot: boolean): Record<State, string> {
  return {
    late: reachesSpot
      ? `the spot may be reached, but by ${minimum} the turn was to be complete`
      : 'hopes that the best speed reaches a spot that it does not',
    below: 'gives up a spot that the best speed for this wind still reaches',
    lower: 'hopes that the best speed reaches a spot that it does not',
    higher: 'hopes that the height can be lost',
    above: 'gives up a spot that the height can be lost for',
  };
}

function reasons(minimum: string): Record<State, string> {
  return {
    late: `The turn to final is complete by ${minimum}; what is not right by then is gone around from.`,
    below: 'Below the low edge not even the best speed for this wind reaches the spot.',
    lower: 'Above the low edge the best speed for this wind still reaches the spot; a slower one may not.',
    higher: 'Under the high edge the height can still be lost before the spot.',
    above: 'Above the high edge even the longest way that the gate allows passes the spot.',
  };
}
