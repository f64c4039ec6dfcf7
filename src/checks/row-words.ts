import { numberText } from '../units/rounding.ts';
import type { Published } from './published.ts';

/** How an input of a row reads on the page: what it is, and its unit with the number. */
const inputWords: Readonly<Record<string, (value: string) => string>> = {
  H_ft: (n) => `at ${n} ft`,
  H_m: (n) => `at ${n} m`,
  altimeter_inHg: (n) => `altimeter ${n} inHg`,
  elev_ft: (n) => `elevation ${n} ft`,
  OAT_F: (n) => `${n} °F outside`,
  rwy_deg: (n) => `runway ${n}°`,
  wind: (wind) => `wind ${wind}`,
  wind_mph: (wind) => `wind ${wind} mph`,
  TC: (n) => `true course ${n}°`,
  C: (n) => `course ${n}°`,
  TH: (n) => `true heading ${n}°`,
  track: (n) => `track ${n}°`,
  TAS: (n) => `true airspeed ${n} kt`,
  TAS_kt: (n) => `true airspeed ${n} kt`,
  AS_mph: (n) => `airspeed ${n} mph`,
  GS: (n) => `groundspeed ${n}`,
  bank_deg: (n) => `bank ${n}°`,
  angle_deg: (n) => `path ${n}°`,
  speed_kt: (n) => `${n} kt`,
  V_kt: (n) => `at ${n} kt`,
  Vbg_kt: (n) => `best glide at ${n} kt`,
  Vs_kt: (n) => `stall speed ${n} kt`,
  Vs1g_kt: (n) => `stall speed ${n} kt wings level`,
  'V/Vs': (n) => `at ${n} times the stall speed`,
  factor: (n) => `${n} times the stall speed`,
  n: (n) => `load factor ${n}`,
  rate_dps: (n) => `${n}° a second`,
  fpm: (n) => `sink ${n} ft/min`,
  time_s: (n) => `for ${n} s`,
  'h/b': (n) => `wing at ${n} of the span`,
  dist_ft: (n) => `${n} ft flown`,
  loss_ft: (n) => `${n} ft lost`,
  ratio: (n) => `glide ratio ${n}`,
  dist_nm: (n) => `over ${n} NM`,
  LDmax: (n) => `best L/D ${n}`,
  ahead_pc: (n) =>
    n.startsWith('-')
      ? `${n.slice(1)} % of the touchdown speed behind`
      : `${n} % of the touchdown speed ahead`,
  faster_pc: (n) => `${n} % faster`,
  heavier_pc: (n) => `${n} % heavier`,
  gust_kt: (n) => `gusts ${n} kt over the wind`,
};

/** The inputs that a row's value holds for, in words. Throws for an input that has no words yet. */
export function inputsText({ id, inputs }: Published): string {
  if (typeof inputs === 'string') return asPrinted(inputs);
  return Object.entries(inputs)
    .map(([name, value]) => {
      const words = inputWords[name];
      if (!words) throw new Error(`${id}: add words for the input ${name} to row-words.ts`);
      return words(typeof value === 'number' ? asGiven(value) : value);
    })
    .join(', ');
}

const unitSigns: Readonly<Record<string, string>> = {
  '1': '',
  '—': '',
  deg: '°',
  degF: '°F',
  'deg/s': '°/s',
  'deg kt/s': '° kt/s',
  'm/s2': 'm/s²',
  'kg/m3': 'kg/m³',
  'ft/nm': 'ft/NM',
};

/** The units of a row's values, one for each, with whatever goes between number and unit. */
export function unitTexts(unit: string): string[] {
  return unit.split(', ').map((one) => {
    const sign = unitSigns[one] ?? one;
    return sign === '' || sign === '°' ? sign : `\u00a0${sign}`;
  });
}

/** The typewriter characters of the data, as a printer sets them. */
export function asPrinted(text: string): string {
  return text
    .replace(/(\d) deg\b/g, '$1°')
    .replace(/\bdeg\/s/g, '°/s')
    .replace(/ x /g, ' × ')
    .replace(/\bV\^2|\^2\b/g, (found) => found.replace('^2', '²'));
}

/** A number with the digits it was given, and a comma between thousands. */
export function asGiven(value: number): string {
  return numberText(value, 10 ** -decimalsOf(value));
}

/** A published number with the last digit that was printed: `0.7860` where the tolerance is one of its last digit. */
export function publishedText({ value: whole, tolerance: { abs } }: Published, value: number): string {
  const ofLastDigit = abs !== undefined && /^0\.0*1$/.test(String(abs)) && typeof whole === 'number';
  return numberText(value, 10 ** -Math.max(decimalsOf(value), ofLastDigit ? decimalsOf(abs) : 0));
}

function decimalsOf(value: number): number {
  const [digits, exponent] = String(value).split('e');
  return Math.max(0, (digits!.split('.')[1] ?? '').length - Number(exponent ?? 0));
}

/** The step that ours is printed to: fine enough to show a tenth of what is allowed. */
export function stepFor(theirs: number, allowed: number): number {
  const given = 10 ** -decimalsOf(theirs);
  if (isExact(theirs, allowed)) return given;
  return Math.min(1, 10 ** Math.floor(Math.log10(allowed / 10) + 1e-9));
}

/** True where nothing but the rounding of binary fractions is allowed. */
function isExact(theirs: number, allowed: number): boolean {
  return allowed <= 2e-9 * Math.max(1, Math.abs(theirs));
}

/** `+0.4`, `−0.3`, `0`. */
export function differenceText(difference: number, step: number): string {
  const text = numberText(difference, step);
  return /[1-9]/.test(text) && difference > 0 ? `+${text}` : /[1-9]/.test(text) ? text : '0';
}

/** `±0.6`; `none`. */
export function allowedText(theirs: number, allowed: number): string {
  return isExact(theirs, allowed) ? 'none' : `±${asGiven(Number(allowed.toPrecision(2)))}`;
}

/** Where more is allowed than the rounding of the printed figure, the row's note says why. */
export function widerThanRounding(theirs: number, allowed: number): boolean {
  return !isExact(theirs, allowed) && allowed > 10 ** -decimalsOf(theirs) * 1.001;
}

export const statusWords: Readonly<Record<Published['status'], string>> = {
  FOUND: 'read in the document or a reprint',
  MEMORY: 'from memory, document not seen',
};
