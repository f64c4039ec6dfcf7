import type { Amount, FaultChange, FaultKind } from '../flight/terms/fault.ts';
import { didYouMean } from '../messages/nearest-name.ts';
import {
  describeKind,
  parseNumber,
  parseQuantity,
  QuantityError,
  type QuantityKind,
} from '../units/quantity.ts';

/** One way to write a change: how it looks, what it does, and how it is read. */
export interface FlyForm {
  /** The word before the colon. */
  readonly key: string;
  /** A whole text as an author types it: `spacing: +40 %`. */
  readonly written: string;
  /** What may stand after the colon, with its range. */
  readonly takes: string;
  readonly does: string;
  /** The change; undefined where the text is not of this form. Throws QuantityError for a value out of its range. */
  readonly read: (value: string) => FaultChange | undefined;
}

/** Changes that have no figure. */
type PhraseKind = {
  [Kind in FaultKind]: keyof Extract<FaultChange, { kind: Kind }> extends 'kind' ? Kind : never;
}[FaultKind];
type AmountKind = Extract<FaultChange, { amount: Amount }>['kind'];

const sign = String.raw`[+\-−]`;
const number = String.raw`\d+(?:\.\d+)?`;

/** The word before the colon, what may stand after it, and what it does. */
interface FlyExample extends Pick<FlyForm, 'key' | 'does'> {
  readonly example: string;
}

/** A share of a number more or less: `+40 %`, within limits in per cent. */
function share(kind: AmountKind, shown: FlyExample, limits: readonly [number, number]) {
  const [low, high] = limits;
  return form(shown, `a share more or less, ${low} % to +${high} %`, (value) => {
    const percent = percentOf(value, limits, writtenAs(shown));
    return percent === undefined ? undefined : { kind, amount: { factor: 1 + percent / 100 } };
  });
}

/** An amount more or less: `+10 kt`. */
function more(kind: AmountKind, shown: FlyExample, unit: QuantityKind, most: string): FlyForm {
  return form(shown, `${describeKind(unit).what} more or less, up to ${most}`, (value) => {
    const by = amountOf(value, unit, most, writtenAs(shown));
    return by === undefined ? undefined : { kind, amount: { by } };
  });
}

/** Another number in its place: `15 deg`. */
function instead(
  kind: AmountKind,
  shown: FlyExample,
  unit: QuantityKind,
  [low, high]: readonly [string, string],
): FlyForm {
  return form(shown, `${describeKind(unit).what}, ${low} to ${high}`, (value) => {
    if (new RegExp(`^${sign}`).test(value) || value.includes('%')) return undefined;
    const to = parseQuantity(value, unit, shown.example);
    const within = to >= parseQuantity(low, unit) - 1e-9 && to <= parseQuantity(high, unit) + 1e-9;
    if (!within) throw outside(value, `${low} to ${high}`, writtenAs(shown));
    return { kind, amount: { to } };
  });
}

/** A fixed phrase. */
function phrase(kind: PhraseKind, shown: FlyExample) {
  const { example } = shown;
  return form(shown, `\`${example}\``, (value) =>
    value.toLowerCase().replace(/\s+/g, ' ') === example ? { kind } : undefined,
  );
}

/** Seconds late, or early where that can be. */
function seconds(kind: 'base-turn' | 'throttle', shown: FlyExample, early: boolean) {
  const takes = `a time and \`late\`${early ? ' or `early`' : ''}, up to 60 s`;
  return form(shown, takes, (value) => {
    const parts = /^(.*?)\s*(late|early)$/iu.exec(value);
    if (!parts || (!early && parts[2]!.toLowerCase() === 'early')) return undefined;
    const time = parseQuantity(parts[1]!, 'time', '6 s');
    if (time < 0 || time > 60) throw outside(value, '0 s to 60 s', writtenAs(shown));
    return { kind, seconds: parts[2]!.toLowerCase() === 'late' ? time : 0 - time };
  });
}

function form(shown: FlyExample, takes: string, read: FlyForm['read']): FlyForm {
  const { key, does } = shown;
  return { key, written: writtenAs(shown), takes, does, read };
}

const writtenAs = ({ key, example }: FlyExample) => `${key}: ${example}`;

const pace = 'glide speed';
const rapid = 'round-out load factor';

/** How each change is written, in one way or several, in the order of a flight; one that is missing is a type error. */
const forms: { readonly [Kind in FaultKind]: readonly FlyForm[] } = {
  spacing: [
    share(
      'spacing',
      { key: 'spacing', example: '+40 %', does: 'the downwind leg lies farther out, or nearer' },
      [-70, 150],
    ),
    more(
      'spacing',
      { key: 'spacing', example: '+150 m', does: 'the downwind leg lies so much farther out, or nearer' },
      'length',
      '2 km',
    ),
  ],
  throttle: [
    seconds(
      'throttle',
      { key: 'throttle', example: '5 s late', does: 'the throttle closes late: level flight past the key' },
      false,
    ),
  ],
  'start-speed': [
    more(
      'start-speed',
      { key: 'start speed', example: '+12 kt', does: 'the glide begins at another speed' },
      'speed',
      '40 kt',
    ),
  ],
  'power-stopped': [
    phrase('power-stopped', {
      key: 'power',
      example: 'stopped',
      does: 'the engine is stopped where it idles in the plan',
    }),
  ],
  mass: [
    share(
      'mass',
      {
        key: 'mass',
        example: '+15 %',
        does: 'the aircraft is heavier or lighter, and flown at the planned speeds',
      },
      [-40, 40],
    ),
    more(
      'mass',
      { key: 'mass', example: '+40 kg', does: 'so much heavier or lighter, and flown at the planned speeds' },
      'mass',
      '300 kg',
    ),
  ],
  wind: [
    more(
      'wind',
      {
        key: 'wind',
        example: '+8 kt',
        does: 'another wind, from the planned direction; the base turn stays where it was',
      },
      'speed',
      '30 kt',
    ),
  ],
  'glide-speed': [
    form(
      { key: pace, example: '-15 %', does: 'every speed down to the round-out is so much higher or lower' },
      'a share more or less, -25 % to +60 %',
      (value) => {
        const percent = percentOf(value, [-25, 60], `${pace}: -15 %`);
        return percent === undefined ? undefined : { kind: 'glide-speed', factor: 1 + percent / 100 };
      },
    ),
  ],
  'glide-speed-wandering': [
    form(
      { key: pace, example: 'wandering 10 % every 8 s', does: 'the speed swings about the right one' },
      '`wandering`, a share of 1 % to 25 %, and `every` 4 s to 60 s (left out, 10 s)',
      readWandering,
    ),
  ],
  'base-turn': [
    seconds(
      'base-turn',
      { key: 'base-turn', example: '6 s late', does: 'the base turn begins late, or early' },
      true,
    ),
  ],
  'base-turn-as-in-still-air': [
    phrase('base-turn-as-in-still-air', {
      key: 'base-turn',
      example: 'as in still air',
      does: 'the base turn begins after the count of a calm day',
    }),
  ],
  'base-drift': [
    phrase('base-drift', {
      key: 'drift',
      example: 'not corrected',
      does: 'on base the nose is held square to the runway',
    }),
  ],
  'final-turn-bank': [
    more(
      'final-turn-bank',
      {
        key: 'final-turn bank',
        example: '+15 deg',
        does: 'the turn to final is steeper or shallower, from where it is planned',
      },
      'angle',
      '50 deg',
    ),
    instead(
      'final-turn-bank',
      {
        key: 'final-turn bank',
        example: '15 deg',
        does: 'the turn to final is flown at this bank, from where it is planned',
      },
      'angle',
      ['3 deg', '60 deg'],
    ),
  ],
  'final-height': [
    form(
      { key: 'final height', example: '-60 ft', does: 'final begins higher or lower' },
      'a length more or less, up to 1000 ft',
      (value) => {
        const by = amountOf(value, 'length', '1000 ft', 'final height: -60 ft');
        return by === undefined ? undefined : { kind: 'final-height', by };
      },
    ),
  ],
  'final-speed': [
    share(
      'final-speed',
      { key: 'final speed', example: '-15 %', does: 'final is flown slower or faster' },
      [-25, 60],
    ),
    more(
      'final-speed',
      { key: 'final speed', example: '+10 kt', does: 'final is flown so much slower or faster' },
      'speed',
      '40 kt',
    ),
  ],
  'round-out-speed': [
    share(
      'round-out-speed',
      {
        key: 'round-out speed',
        example: '+20 %',
        does: 'final is flown from higher or lower, at the speed that the round-out then begins with, at its place',
      },
      [-15, 60],
    ),
    more(
      'round-out-speed',
      {
        key: 'round-out speed',
        example: '+10 kt',
        does: 'the round-out begins so much faster or slower, at its place: kept high, and dived for the aim point',
      },
      'speed',
      '40 kt',
    ),
  ],
  'round-out-height': [
    share(
      'round-out-height',
      { key: 'round-out height', example: '+100 %', does: 'the round-out begins higher or lower' },
      [-90, 400],
    ),
    more(
      'round-out-height',
      { key: 'round-out height', example: '+10 ft', does: 'the round-out begins so much higher or lower' },
      'length',
      '100 ft',
    ),
  ],
  'round-out-load-factor': [
    form(
      {
        key: rapid,
        example: '+0.2',
        does: 'the round-out is pulled harder, or less hard, for as long as planned',
      },
      'a number more or less, up to 1',
      (value) => {
        if (!new RegExp(`^${sign}\\s*${number}$`, 'u').test(value)) return undefined;
        const by = parseNumber(value, '+0.2');
        if (Math.abs(by) > 1) throw outside(value, 'up to 1 either way', `${rapid}: +0.2`);
        return { kind: 'round-out-load-factor', amount: { by } };
      },
    ),
  ],
  'touchdown-speed': [
    share(
      'touchdown-speed',
      { key: 'touchdown speed', example: '+20 %', does: 'the wheels are put down faster or slower' },
      [-15, 60],
    ),
    more(
      'touchdown-speed',
      { key: 'touchdown speed', example: '+5 kt', does: 'the wheels are put down so much faster or slower' },
      'speed',
      '30 kt',
    ),
  ],
  'touchdown-drift': [
    phrase('touchdown-drift', {
      key: 'touchdown drift',
      example: 'not corrected',
      does: 'the nose is straight through the hold-off, and the drift not stopped',
    }),
  ],
};

/** All that `fly` may say. */
export const flyForms: readonly FlyForm[] = Object.values(forms).flat();

/** A change as it was written, and as it is flown. */
export interface FlyText {
  readonly written: string;
  readonly change: FaultChange;
}

/**
 * Reads what `fly` of a fault says, such as `spacing: +40 %`.
 * @throws QuantityError that says what would be right.
 */
export function readFlyText(text: string): FlyText {
  const colon = text.indexOf(':');
  const keys = [...new Set(flyForms.map(({ key }) => key))];
  if (colon < 0) {
    throw new QuantityError(
      `\`${text}\` has no colon: write what is changed and how, such as \`spacing: +40 %\``,
    );
  }
  const key = text.slice(0, colon).trim().toLowerCase();
  const value = text.slice(colon + 1).trim();
  const forms = flyForms.filter((each) => each.key === key);
  if (forms.length === 0) {
    const known = keys.map((each) => `\`${each}\``).join(', ');
    throw new QuantityError(
      `\`${key}\` cannot be changed in a flight${didYouMean(key, keys)} (known here: ${known})`,
    );
  }
  for (const each of forms) {
    const change = each.read(value);
    if (change) return { written: text, change };
  }
  const ways = forms.map(({ written, takes }) => `\`${written}\` (${takes})`).join(', or ');
  throw new QuantityError(`\`${value}\` says nothing about \`${key}\`: write it as ${ways}`);
}

function percentOf(
  value: string,
  [low, high]: readonly [number, number],
  example: string,
): number | undefined {
  const parts = new RegExp(`^(${sign})\\s*(${number})\\s*%$`, 'u').exec(value);
  if (!parts) return undefined;
  const percent = (parts[1] === '+' ? 1 : -1) * Number(parts[2]);
  if (percent < low || percent > high) throw outside(value, `${low} % to +${high} %`, example);
  return percent;
}

function amountOf(value: string, unit: QuantityKind, most: string, example: string): number | undefined {
  if (!new RegExp(`^${sign}`, 'u').test(value) || value.includes('%')) return undefined;
  // A mass below nought is no mass, but less of it is: the sign is read apart.
  const size = parseQuantity(value.slice(1), unit, example.slice(example.indexOf(':') + 2));
  if (size > parseQuantity(most, unit) + 1e-9) throw outside(value, `up to ${most} either way`, example);
  return value.startsWith('+') ? size : 0 - size;
}

function readWandering(value: string): FaultChange | undefined {
  const parts = new RegExp(`^wandering\\s+(${number})\\s*%(?:\\s+every\\s+(.+))?$`, 'iu').exec(value);
  if (!parts) return undefined;
  const percent = Number(parts[1]);
  const period = parts[2] === undefined ? usualPeriod : parseQuantity(parts[2], 'time', '8 s');
  if (percent < 1 || percent > 25 || period < 4 || period > 60) {
    throw outside(value, '1 % to 25 %, every 4 s to 60 s', `${pace}: wandering 10 % every 8 s`);
  }
  return { kind: 'glide-speed-wandering', amplitude: percent / 100, period };
}

/** s. How long a hunted airspeed takes to come round (common practice, no source). */
const usualPeriod = 10;

function outside(value: string, range: string, example: string): QuantityError {
  return new QuantityError(
    `\`${value}\` is outside what is possible here (${range}): write it as \`${example}\``,
  );
}
