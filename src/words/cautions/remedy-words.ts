import { indicatedSpeed } from '../../flight/aircraft/calibration.ts';
import type { Caution, CautionCode, CautionOf, MovedSpot, WithinWinds } from '../../flight/terms/caution.ts';
import type { PageUnits } from '../figures/page-units.ts';
import {
  formatFar,
  formatLeastHeight,
  formatLeastLowHeight,
  formatLeastSpeed,
  formatMargin,
  formatMostAngle,
  formatMostSpeed,
  formatSafeDistance,
  roundMostSpeed,
  roundSafeDistance,
} from '../figures/safe-rounding.ts';
import { tellingApart } from '../figures/telling-apart.ts';
import { keyNames } from '../keys/key-names.ts';
import { banks, type CautionSubject, plain, type Said } from './caution-words.ts';

/** What would be flyable in place of what a caution warns of, as a sentence; undefined where the caution says it itself. */
export function remedySentence(
  caution: Caution,
  subject: CautionSubject,
  units: PageUnits,
): string | undefined {
  const { aircraft, runway } = subject;
  const words = (remedies[caution.code] as Remedy<CautionCode>)(caution, { aircraft, runway, units });
  return words === undefined ? undefined : plain(words);
}

type Remedy<Code extends CautionCode> = (caution: CautionOf<Code>, said: Said) => string | undefined;

const tooShort = 'The runway is too short for this landing, wherever on it the spot lies.';

const remedies: { readonly [Code in CautionCode]: Remedy<Code> } = {
  'beyond-reach': () => undefined,
  'wind-over-glide': () => undefined,
  'obstacle-clearance': ({ remedy, obstacle }, { units }) => {
    if (!remedy) return undefined;
    if ('spot' in remedy) {
      return `With the spot ${moved(remedy, units)}, the path would clear the ${obstacle}.`;
    }
    const { higher, near } = remedy;
    const there = near
      ? `, ${formatLeastHeight(near.height, units)} at the ${keyNames[near.key].toLowerCase()}`
      : '';
    return `A path ${formatLeastHeight(higher, units)} higher would clear the ${obstacle}${there}.`;
  },
  'stall-margin': ({ remedy }, { aircraft, units }) =>
    'bank' in remedy
      ? `It would keep the margin with the turns at ${formatMostAngle(remedy.bank)} of bank or less.`
      : `It would keep the margin in this turn at ${shown(remedy.eas, aircraft, units)} or more.`,
  slow: ({ remedy: { eas, of } }, { aircraft, units }) =>
    `It would keep the margin with ${of === 'approach' ? 'an approach' : 'a glide'} at ${shown(eas, aircraft, units)} or more, at this mass.`,
  'approach-speed-not-reached': ({ value, limit }) =>
    `A turn to final that is complete higher leaves the time to ${value > limit ? 'slow down' : 'speed up'} to it.`,
  'bank-over-limit': shallower,
  'bank-over-medium': shallower,
  'wind-over-limit': ({ remedy }, { units }) => withinWinds(remedy, units),
  'crosswind-over-limit': ({ remedy }, { units }) => withinWinds(remedy, units),
  tailwind: ({ remedy }, { units }) =>
    `${withinWinds(remedy, units)} Landed the other way, the runway has this wind ahead.`,
  gust: ({ remedy }, { aircraft, units }) =>
    `An approach speed of ${shown(remedy.eas, aircraft, units)} would allow for these gusts.`,
  mass: ({ which, value, limit }) => {
    if (which === 'reference') return undefined;
    const said = tellingApart({ value, limit }, 'kg', which);
    return `It would be within limits at ${said.limit} or ${which === 'most' ? 'less' : 'more'}.`;
  },
  'off-runway': ({ where, remedy }, { units }) => {
    if (where === 'beside') return 'It has to end on the centreline: less wind across, or another approach.';
    if (!remedy) return 'It has to end on the runway: another height, or less wind.';
    return `With the spot ${moved(remedy, units, formatFar)}, the wheels would touch on the runway.`;
  },
  'aim-before-threshold': ({ remedy }, { units }) =>
    'tooShort' in remedy
      ? tooShort
      : `With the spot ${moved(remedy, units)}, all of the landing from the round-out on would lie on the runway.`,
  'landing-distance': ({ value, limit, remedy }, { runway, units }) => {
    if (remedy.tooShort) return tooShort;
    const by = value - limit;
    const fits =
      roundSafeDistance(by, 'up', units) <= runway.spot
        ? `with the spot ${formatSafeDistance(by, 'up', units)} nearer the landing end of the runway`
        : `with ${formatSafeDistance(value, 'up', units)} of runway left at the touchdown`;
    const { otherWay } = remedy;
    const other =
      otherWay === undefined
        ? ''
        : ` Landed the other way, the roll would be ${formatSafeDistance(otherWay, 'up', units)}.`;
    return `It would fit ${fits}.${other}`;
  },
  'final-turn-low': () => 'From a higher start the turn to final is complete higher.',
  'downwind-key-height': () => undefined,
  'base-turn-far': () => 'A lower downwind key or a wider downwind leg brings it nearer.',
  'round-out-pull': ({ remedy }, { aircraft, units }) => {
    const own = `the ${formatMargin(remedy.own)} g of the aircraft's data`;
    if ('eas' in remedy)
      return `With an approach at ${shown(remedy.eas, aircraft, units)} or more, at this mass, the wing bears ${own} to the end of the round-out.`;
    return remedy.height === undefined
      ? 'A flatter final or a higher round-out would need less.'
      : `Begun at ${formatLeastLowHeight(remedy.height, units)}, the round-out would need no more than ${own}.`;
  },
};

function shallower({ turn, ...caution }: CautionOf<'bank-over-limit' | 'bank-over-medium'>): string {
  const said = banks(caution);
  const turns = turn === 'circle' ? 'the circle' : 'the turns';
  return `It would be within limits with ${turns} at ${said.limit} of bank or less: with more room, or in less wind.`;
}

function withinWinds({ most }: WithinWinds, units: PageUnits): string {
  return roundMostSpeed(most, units) <= 0
    ? 'It would be within the wind limits in a calm.'
    : `It would be within the wind limits in ${formatMostSpeed(most, units)} from the same direction, gusts counted.`;
}

function moved(
  { spot, by }: MovedSpot,
  units: PageUnits,
  format = (metres: number, of: PageUnits) => formatSafeDistance(metres, 'up', of),
): string {
  return `${format(by, units)} ${spot === 'farther-in' ? 'farther in' : 'nearer the landing end'}`;
}

/** The airspeed, m/s EAS, as the indicator shows it; never less. */
function shown(eas: number, aircraft: Said['aircraft'], units: PageUnits): string {
  return formatLeastSpeed(indicatedSpeed(eas, aircraft), units);
}
