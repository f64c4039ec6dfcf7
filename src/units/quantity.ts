import {
  kelvinAtZeroCelsius,
  kilogramsPerPound,
  metresPerFoot,
  metresPerNauticalMile,
  metresPerSecondPerFootPerMinute,
  metresPerSecondPerKmh,
  metresPerSecondPerKnot,
  metresPerSecondPerMph,
  metresPerStatuteMile,
  pascalsPerHectopascal,
  pascalsPerInchOfMercury,
  radiansPerDegree,
} from './factors.ts';

/** What a quantity measures. `bearing` is a direction of 0 to 360 degrees, `angle` any angle. */
export type QuantityKind =
  | 'length'
  | 'speed'
  | 'vertical-speed'
  | 'angle'
  | 'bearing'
  | 'turn-rate'
  | 'mass'
  | 'temperature'
  | 'pressure'
  | 'time';

/** What was read and what to type instead, in words for the person who typed it. */
export class QuantityError extends Error {
  override readonly name = 'QuantityError';
}

/** SI value = number x factor + offset. */
interface Unit {
  readonly names: readonly string[];
  readonly factor: number;
  readonly offset?: number;
}

interface Kind {
  /** With its article: "a length". */
  readonly what: string;
  readonly example: string;
  readonly units: readonly Unit[];
  /** The lowest SI value that can exist. */
  readonly floor?: number;
}

const degree: Unit = { names: ['deg', '°'], factor: radiansPerDegree };
const second: Unit = { names: ['s'], factor: 1 };
const metrePerSecond: Unit = { names: ['m/s'], factor: 1 };

const kinds: Readonly<Record<QuantityKind, Kind>> = {
  length: {
    what: 'a length',
    example: '1000 ft',
    units: [
      { names: ['m'], factor: 1 },
      { names: ['km'], factor: 1000 },
      { names: ['ft'], factor: metresPerFoot },
      { names: ['NM'], factor: metresPerNauticalMile },
      { names: ['mi'], factor: metresPerStatuteMile },
    ],
  },
  speed: {
    what: 'a speed',
    example: '42 kt',
    units: [
      { names: ['kt'], factor: metresPerSecondPerKnot },
      { names: ['km/h'], factor: metresPerSecondPerKmh },
      { names: ['mph'], factor: metresPerSecondPerMph },
      metrePerSecond,
    ],
  },
  'vertical-speed': {
    what: 'a vertical speed',
    example: '620 ft/min',
    units: [{ names: ['ft/min'], factor: metresPerSecondPerFootPerMinute }, metrePerSecond],
  },
  angle: { what: 'an angle', example: '30 deg', units: [degree] },
  bearing: { what: 'a direction', example: '238 deg', units: [degree] },
  'turn-rate': {
    what: 'a rate of turn',
    example: '20 deg/s',
    units: [{ names: ['deg/s', '°/s'], factor: radiansPerDegree }],
  },
  mass: {
    what: 'a mass',
    example: '365 kg',
    floor: 0,
    units: [
      { names: ['kg'], factor: 1 },
      { names: ['lb'], factor: kilogramsPerPound },
    ],
  },
  temperature: {
    what: 'a temperature',
    example: '25 C',
    floor: 0,
    units: [
      { names: ['C', '°C'], factor: 1, offset: kelvinAtZeroCelsius },
      { names: ['F', '°F'], factor: 5 / 9, offset: kelvinAtZeroCelsius - (32 * 5) / 9 },
      { names: ['K'], factor: 1 },
    ],
  },
  pressure: {
    what: 'a pressure',
    example: '1008 hPa',
    floor: 0,
    units: [
      { names: ['hPa'], factor: pascalsPerHectopascal },
      { names: ['inHg'], factor: pascalsPerInchOfMercury },
      { names: ['Pa'], factor: 1 },
    ],
  },
  time: { what: 'a time', example: '6 s', units: [second, { names: ['min'], factor: 60 }] },
};

/**
 * A quantity as a person writes it (`42 kt`, `42kt`, `1,000 ft`, `−140 m`) in SI: m, m/s, rad, rad/s, kg, K, Pa, s. A
 * bearing comes back in 0 <= value < 2 pi. The error gives `example` in place of the kind's own.
 * @throws QuantityError for anything else, a bare number above all.
 */
export function parseQuantity(text: string, kind: QuantityKind, example = kinds[kind].example): number {
  const { what, floor } = kinds[kind];
  const advice = `write ${what} such as \`${example}\` (${unitNames(kind)})`;
  const trimmed = text.trim();
  const parts = /^([+\-−]?\s*[\d.,]+)\s*(.*)$/su.exec(trimmed);
  const number = parts ? readNumber(parts[1]!) : undefined;
  if (!parts || number === undefined) throw new QuantityError(`\`${trimmed}\` is not ${what}: ${advice}`);
  const written = parts[2]!;
  if (written === '') throw new QuantityError(`\`${trimmed}\` has no unit: ${advice}`);
  const unit = findUnit(written, kind);
  if (!unit) {
    const other = kindOf(written);
    throw new QuantityError(
      other
        ? `\`${trimmed}\` is ${kinds[other].what}, not ${what}: ${advice}`
        : `\`${trimmed}\`: \`${written}\` is not a unit known here: ${advice}`,
    );
  }
  const value = number * unit.factor + (unit.offset ?? 0);
  if (floor !== undefined && value < floor) {
    throw new QuantityError(
      `\`${trimmed}\` is below the least ${what.replace(/^an? /, '')} there can be: ${advice}`,
    );
  }
  if (kind === 'bearing') return normalisedBearing(number, unit, trimmed, advice);
  return value;
}

/**
 * A number without a unit, such as an exponent: `0.143`, `1,000`, `−2`.
 * @throws QuantityError
 */
export function parseNumber(text: string, example: string): number {
  const number = readNumber(text.trim());
  if (number === undefined) {
    throw new QuantityError(`\`${text.trim()}\` is not a number: write one such as \`${example}\``);
  }
  return number;
}

/**
 * A glide ratio, `6.4` or `6.4:1`.
 * @throws QuantityError
 */
export function parseRatio(text: string): number {
  return parseNumber(text.replace(/\s*:\s*1\s*$/, ''), '6.4');
}

function normalisedBearing(degrees: number, unit: Unit, text: string, advice: string): number {
  if (degrees < 0 || degrees > 360) {
    throw new QuantityError(`\`${text}\` is not between 0 and 360 degrees: ${advice}`);
  }
  return (degrees % 360) * unit.factor;
}

/** Digits with an optional thousands comma and decimal point; undefined for anything that could be read two ways. */
function readNumber(text: string): number | undefined {
  const parts = /^([+\-−]?)\s*(\d{1,3}(?:,\d{3})+|\d+)(\.\d+)?$/u.exec(text);
  if (!parts) return undefined;
  const size = Number(parts[2]!.replaceAll(',', '') + (parts[3] ?? ''));
  if (!Number.isFinite(size)) return undefined;
  return parts[1] === '-' || parts[1] === '−' ? 0 - size : size;
}

function findUnit(written: string, kind: QuantityKind): Unit | undefined {
  const wanted = written.toLowerCase();
  return kinds[kind].units.find((unit) => unit.names.some((name) => name.toLowerCase() === wanted));
}

function kindOf(written: string): QuantityKind | undefined {
  return (Object.keys(kinds) as QuantityKind[]).find((kind) => findUnit(written, kind));
}

/** Every kind of quantity, with what it is called (`a length`), an example, and the units it may be typed in. */
export function describeKind(kind: QuantityKind): {
  what: string;
  example: string;
  units: readonly string[];
} {
  const { what, example, units } = kinds[kind];
  return { what, example, units: units.flatMap(({ names }) => names) };
}

export const quantityKinds = Object.keys(kinds) as readonly QuantityKind[];

function unitNames(kind: QuantityKind): string {
  return describeKind(kind).units.join(', ');
}
