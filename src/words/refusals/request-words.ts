import type { HeightOption } from '../../flight/terms/approach.ts';
import type { RangeOf, RequestError, RequestReason } from '../../flight/terms/errors.ts';
import {
  kelvinAtZeroCelsius,
  metresPerFoot,
  metresPerSecondPerFootPerMinute,
  pascalsPerHectopascal,
  radiansPerDegree,
} from '../../units/factors.ts';
import { numberText, roundDownTo, roundUpTo } from '../../units/rounding.ts';
import { plain } from '../cautions/caution-words.ts';
import { anglesApart, speedsApart } from '../figures/apart.ts';
import { speedStep } from '../figures/format.ts';
import type { PageUnits } from '../figures/page-units.ts';

/**
 * Why a request cannot be flown, and what would be right: no capital letter and no full stop, because it follows a
 * colon.
 */
export function requestSentence({ field, reason }: RequestError, units: PageUnits): string {
  return plain((reasons[reason.code] as Words<RequestReason['code']>)(reason, field, units));
}

type Words<Code extends RequestReason['code']> = (
  reason: Extract<RequestReason, { readonly code: Code }>,
  field: string,
  units: PageUnits,
) => string;

const reasons: { readonly [Code in RequestReason['code']]: Words<Code> } = {
  'out-of-range': ({ of, low, high }, field, units) => `${field} must be ${rangeWords(of, low, high, units)}`,
  'not-a-text': (_, field) => `${field} must be a text`,
  'not-yes-or-no': (_, field) => `${field} must be true or false`,
  'none-of': ({ words }, field) => `${field} must be one of: ${words.join(', ')}`,
  'not-a-record': ({ keys }, field) => `${field} must hold: ${keys.join(', ')}`,
  'not-a-list': ({ least }, field) => `${field} must be a list of ${least} or more`,
  'no-glide': ({ aircraft, power }) => `${aircraft} has no glide for the engine ${power}: add glide.${power}`,
  'bank-over-limit': ({ bank, limit }) => {
    const said = anglesApart({ value: bank, limit }, 'most');
    return `the bank of ${said.value} is over the aircraft's limit of ${said.limit}`;
  },
  'gust-under-wind': ({ gust, wind }, _, units) => {
    const said = speedsApart({ value: gust, limit: wind }, 'least', units);
    return `the gusts of ${said.value} are less than the wind of ${said.limit}: give the highest gust, or none`;
  },
  'height-and-option': ({ option }) =>
    `give the height or the ${optionNames[option]}, not both: the other is found`,
  'speeds-not-rising': () => 'speeds must rise: stall, touchdown, approach',
  'glide-under-stall': () => 'the best-glide speed must be more than the stall speed',
  'steep-under-stall': () => 'the speed of the steep approach must be more than the stall speed',
  'no-layers': () => 'the wind profile `layers` needs at least one wind at a height',
  'layers-not-rising': ({ highest }, _, units) =>
    `the heights of wind layers must rise from above the ground to at most ${rangeEnd('height', highest, units, 'high')}`,
  'calibration-not-rising': () => 'both speeds of a calibration table must rise from row to row',
  'too-few-points': () => 'a polar needs measured points at three different speeds or more',
  'sink-is-no-glide': () => 'a measured sink must be more than nothing and less than the speed',
  'no-polar-fits': () =>
    'no polar goes through these points: the sink must first fall and then rise with speed',
  'no-speed-to-hold-off': () =>
    'the round-out ends below the touchdown speed: a faster approach speed, a slower touchdown speed, or less wind is needed',
  'no-pull-is-level': () =>
    'from this round-out height no pull is level before the ground: begin the round-out higher',
  'plan-misses-spot': () => 'faults are flown against a plan that makes the spot: this one does not',
};

const optionNames: Readonly<Record<HeightOption, string>> = { baseDistance: 'base distance of a 90' };

/** `10 to 136 kt`: both ends rounded into the range, so that what the message says is accepted. */
function rangeWords(of: RangeOf, low: number, high: number, units: PageUnits): string {
  const [from, to] = [rangeEnd(of, low, units, 'low'), rangeEnd(of, high, units, 'high')];
  const number = from.split(' ')[0]!;
  return `${of === 'whole-number' ? 'a whole number, ' : ''}${number} to ${to}`;
}

interface RangeUnit {
  /** In SI units or rad, and what zero of it is. */
  readonly size: number;
  readonly from?: number;
  readonly step: number;
  readonly name: string;
}

function rangeEnd(of: RangeOf, value: number, units: PageUnits, end: 'low' | 'high'): string {
  const { size, from = 0, step, name } = unitOf(of, units);
  const rounded = (end === 'low' ? roundUpTo : roundDownTo)((value - from) / size, step);
  // As it is typed, not as it is printed.
  const text = numberText(rounded, Number.isInteger(rounded) ? 1 : step)
    .replace('−', '-')
    .replaceAll(',', '');
  return `${text}${name === '' ? '' : ` ${name}`}`;
}

function unitOf(of: RangeOf, units: PageUnits): RangeUnit {
  const inFeet = units.height === 'ft';
  const height = { size: inFeet ? metresPerFoot : 1, name: units.height };
  switch (of) {
    case 'airspeed':
    case 'wind':
      return { size: speedStep(units), step: 1, name: units.speed };
    case 'sink':
      return inFeet
        ? { size: metresPerSecondPerFootPerMinute, step: 10, name: 'ft/min' }
        : { size: 1, step: 0.1, name: 'm/s' };
    case 'height':
      return { ...height, step: inFeet ? 10 : 1 };
    case 'low-height':
      return { ...height, step: inFeet ? 1 : 0.1 };
    case 'length':
      return units.distance === 'ft'
        ? { size: metresPerFoot, step: 1, name: 'ft' }
        : { size: 1, step: 0.1, name: 'm' };
    case 'distance':
      return units.distance === 'ft'
        ? { size: metresPerFoot, step: 1000, name: 'ft' }
        : { size: 1000, step: 1, name: 'km' };
    case 'mass':
      return { size: 1, step: 1, name: 'kg' };
    case 'angle':
      return { size: radiansPerDegree, step: 1, name: 'degrees' };
    case 'roll-rate':
      return { size: radiansPerDegree, step: 1, name: 'degrees a second' };
    case 'temperature':
      return { size: 1, from: kelvinAtZeroCelsius, step: 1, name: 'C' };
    case 'pressure':
      return { size: pascalsPerHectopascal, step: 1, name: 'hPa' };
    case 'number':
      return { size: 1, step: 0.01, name: '' };
    case 'whole-number':
      return { size: 1, step: 1, name: '' };
  }
}
