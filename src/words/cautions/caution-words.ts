import { indicatedSpeed } from '../../flight/aircraft/calibration.ts';
import { keyHeights } from '../../flight/plan/cautions/pattern-cautions.ts';
import type { Aircraft } from '../../flight/terms/aircraft.ts';
import type { Runway } from '../../flight/terms/airfield.ts';
import type { Caution, CautionCode, CautionOf } from '../../flight/terms/caution.ts';
import { radiansPerDegree } from '../../units/factors.ts';
import { roundTo } from '../../units/rounding.ts';
import { anglesApart, distancesApart, heightsApart, marginsApart, speedsApart } from '../figures/apart.ts';
import { formatHeight, formatSpeed, speedStep } from '../figures/format.ts';
import type { PageUnits } from '../figures/page-units.ts';
import { formatFar, formatLeastSpeed, formatSafeDistance } from '../figures/safe-rounding.ts';
import { type ToldApart, tellingApart } from '../figures/telling-apart.ts';

/** Whose flight a caution is of; a plan is one. */
export interface CautionSubject {
  readonly aircraft: Pick<Aircraft, 'name' | 'source' | 'calibration'>;
  readonly runway: Pick<Runway, 'name' | 'spot'>;
}

/** What a sentence is made from besides the caution itself. */
export interface Said extends CautionSubject {
  readonly units: PageUnits;
}

/** A caution as a sentence, in the units of the page: `The crosswind is 14 kt; the limit of the Osier 15 is 9 kt.` */
export function cautionSentence(caution: Caution, subject: CautionSubject, units: PageUnits): string {
  const { aircraft, runway } = subject;
  return plain((sentences[caution.code] as Sentence<CautionCode>)(caution, { aircraft, runway, units }));
}

type Sentence<Code extends CautionCode> = (caution: CautionOf<Code>, said: Said) => string;

const sentences: { readonly [Code in CautionCode]: Sentence<Code> } = {
  'beyond-reach': ({ value, remedy: { height, wind } }, { units }) => {
    const ways = [
      ...(height === undefined ? [] : [`from ${formatHeight(height, units)} at the start`]),
      ...(wind === undefined ? [] : [`in a wind of ${formatSpeed(wind, units)} from the same direction`]),
    ];
    const remedy =
      ways.length > 0
        ? `it would be made ${ways.join(', or ')}`
        : 'neither another start nor less wind alone makes it soundly';
    return `The spot cannot be made: at best the wheels touch ${formatFar(value, units)} from it; ${remedy}.`;
  },
  'wind-over-glide': ({ leg }) => `On ${leg} the wind is stronger than the glide: the leg cannot be flown.`,
  'obstacle-clearance': ({ how, obstacle, value, limit }, { units }) => {
    if (how === 'met') return `The path meets the ${obstacle}, ${formatRise(-value, units)} below the top.`;
    const said = heightsApart({ value, limit }, 'least', units, { value: 'margin' });
    const nearest =
      how === 'above'
        ? `The path passes ${said.value} above the ${obstacle}`
        : `The wing comes within ${said.value} of the ${obstacle}, beside or before it`;
    return `${nearest}; ${said.limit} is the least.`;
  },
  'stall-margin': (caution) => {
    const said = marginsApart(caution.value, caution.limit);
    return `In the turn the speed is ${said.value} the stall speed at that bank; it should be at least ${said.limit}.`;
  },
  slow: (caution) => {
    const said = marginsApart(caution.value, caution.limit);
    return `In straight flight before the round-out the speed is ${said.value} the stall speed; it should be at least ${said.limit}.`;
  },
  'approach-speed-not-reached': ({ value, limit }, { aircraft, units }) => {
    const planned = indicatedSpeed(limit, aircraft);
    const off = Math.abs(indicatedSpeed(value, aircraft) - planned);
    const step = speedStep(units);
    const by = formatSpeed(Math.max(step, roundTo(off, step)), units);
    return `The approach speed of ${formatSpeed(planned, units)} is not reached before the round-out: on final the speed is ${by} ${value > limit ? 'more' : 'less'} at best.`;
  },
  'bank-over-limit': (caution, { aircraft }) => {
    const said = banks(caution);
    return `A turn needs ${said.value} of bank; the limit of the ${aircraft.name} is ${said.limit}.`;
  },
  'bank-over-medium': (caution) => {
    const said = banks(caution);
    return `A turn needs ${said.value} of bank; a medium turn has ${said.limit} at most.`;
  },
  'wind-over-limit': (caution, said) => windSentence('wind', caution, said),
  'crosswind-over-limit': (caution, said) => windSentence('crosswind', caution, said),
  tailwind: ({ value, limit, inGusts, source }, { aircraft, units }) => {
    const said = speedsApart({ value, limit }, 'most', units);
    const whose =
      source === 'aircraft'
        ? `the limit of the ${aircraft.name} is`
        : source === 'school-limit'
          ? "the school's limit is"
          : 'the most is';
    return `The tailwind${inGusts ? ' in gusts' : ''} on the runway is ${said.value}; ${whose} ${said.limit}.`;
  },
  gust: ({ value, limit, over }, { units }) => {
    const said = marginsApart(value, limit);
    return `Gusts of ${formatLeastSpeed(over, units)} over the wind leave the approach speed ${said.value} the stall speed, half of them taken off; it should be at least ${said.limit}.`;
  },
  mass: ({ which, value, limit }, { aircraft }) => {
    const said = tellingApart({ value, limit }, 'kg', which === 'least' ? 'least' : 'most');
    return which === 'reference'
      ? `The mass is ${said.value}, more than the ${said.limit} that the figures of the ${aircraft.name} are for; its data name no greatest mass.`
      : `The mass is ${said.value}; the ${which} that the ${aircraft.name} may be flown at is ${said.limit}.`;
  },
  'off-runway': ({ where, value }, { units }) => {
    const places = { beside: 'beside', short: 'before the landing end of', long: 'beyond the end of' };
    return `The wheels touch ${formatFar(value, units)} ${places[where]} the runway.`;
  },
  'aim-before-threshold': ({ aim, value, spot }, { units }) => {
    const before = `before the landing end of the runway, which lies ${toTheMetre(spot, units)} before the spot`;
    return aim === undefined
      ? `The round-out begins ${formatSafeDistance(value, 'up', units)} ${before}.`
      : `The aim point lies ${formatSafeDistance(aim, 'up', units)} ${before}.`;
  },
  'landing-distance': ({ value, limit }, { units }) =>
    `The landing roll is ${formatSafeDistance(value, 'up', units)} in this wind and air, longer than the ${formatSafeDistance(limit, 'down', units)} of runway left after the touchdown.`,
  'final-turn-low': ({ value, limit }, { units }) => {
    const said = heightsApart({ value, limit }, 'least', units);
    return `The turn to final is complete at ${said.value}; it should be complete at ${said.limit} or higher.`;
  },
  'downwind-key-height': ({ value, limit }, { units }) => {
    const said = heightsApart({ value, limit }, value < limit ? 'least' : 'most', units);
    const { low, high } = keyHeights;
    const number = (metres: number) => formatHeight(metres, units).split('\u00a0')[0];
    return `The downwind key is flown at ${said.value}; about ${formatHeight((low + high) / 2, units)} (${number(low)} to ${formatHeight(high, units)}) is usual, and judged best by eye.`;
  },
  'base-turn-far': ({ value, limit }, { units }) => {
    const said = distancesApart({ value, limit }, 'most', units);
    return `The base turn lies ${said.value} past abeam, more than twice the distance of the downwind leg (${said.limit}): the spot is hard to judge from there.`;
  },
  'round-out-pull': ({ stalls, value, limit }, { aircraft }) => {
    const said = tellingApart({ value, limit }, 'g', 'most');
    return stalls
      ? `The round-out needs a pull of ${said.value}, and at its speed the wing bears ${said.limit}: it stalls.`
      : `From its round-out height the ${aircraft.name} needs a pull of ${said.value} to be level in time, more than the ${said.limit} of its data.`;
  },
};

function windSentence(
  what: string,
  { value, limit, inGusts }: CautionOf<'wind-over-limit' | 'crosswind-over-limit'>,
  { aircraft, units }: Said,
): string {
  const said = speedsApart({ value, limit }, 'most', units);
  return `The ${what}${inGusts ? ' in gusts' : ''} is ${said.value}; the limit of the ${aircraft.name} is ${said.limit}.`;
}

/** Degrees, as a caution about bank gives them. */
export function banks({ value, limit }: Pick<Caution, 'value' | 'limit'>): ToldApart {
  return anglesApart({ value: value * radiansPerDegree, limit: limit * radiansPerDegree }, 'most');
}

/** m of height, to the foot or the decimetre where it is low; never less than it is. */
function formatRise(metres: number, units: PageUnits): string {
  return heightsApart({ value: 0, limit: metres }, 'least', units).limit;
}

/** m: a place in the airfield's data, not rounded the way a figure of the flight is. */
function toTheMetre(metres: number, units: PageUnits): string {
  return tellingApart({ value: 0, limit: metres }, units.distance, 'least', { step: 1 }).limit;
}

/** A sentence is read aloud, and printed in terminals too: plain spaces, and degrees as a word. */
export const plain = (sentence: string) => sentence.replaceAll('\u00a0', ' ').replaceAll('°', ' degrees');
