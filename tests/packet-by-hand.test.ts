import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { lessonOf, openTrialSchool, type TrialSchool, tableRows, wordsOf } from './packet-school.ts';

// An instructor with a calculator: the figures of the last pages, worked out again from what is printed there and
// nothing else. Gas constant, lapse rate and sea level values: US Standard Atmosphere 1976, table 2 (R*/M0 =
// 8314.32/28.9644). Turn, load factor: FAA-H-8083-25, chapter Aerodynamics of Flight. Power law of the wind: common
// practice, no source.

let school: TrialSchool;
const pages = new Map<string, string>();

beforeAll(async () => {
  school = await openTrialSchool();
  const hot = ['temperature: 33 C', 'qnh: 996 hPa', 'bank: 25 deg'];
  await school.write('lessons/hot.md', lessonOf('Words.', hot));
  const fleet = ['--aircraft', 'osier-15', 'withy-80'];
  const asked = [['power-off-180'], ['hot', '--power', 'stopped', '--wind', '250/6kt']];
  for (const args of asked) {
    const ran = await school.buildHtml([...args, ...fleet]);
    if (ran.code !== 4) throw new Error(ran.err);
  }
  for (const path of await school.built())
    pages.set(path.replace(/^dist\/packets\/(.*)\.html$/, '$1'), await school.text(path));
});
afterAll(() => school.remove());

const packets = ['power-off-180/osier-15', 'power-off-180/withy-80', 'hot/osier-15', 'hot/withy-80'];

describe.each(packets)('%s, redone by hand', (packet) => {
  const page = () => pages.get(packet)!;
  const printed = (what: string) => asPrinted(numberTexts(lineOf(page(), what).result)[0]!);

  it('density of the air, from the printed pressure and temperature', () => {
    const [temperature] = numbersOf(lineOf(page(), 'Density at the field').working).slice(2);
    const density = printed('Pressure at the field').value / (287.053 * temperature!);
    expectPrinted(density, printed('Density at the field'));
  });

  it('pressure at the field, from QNH and elevation by the standard atmosphere', () => {
    const qnh = inputOf(page(), 'Temperature, QNH').at(-1)!;
    const elevation = inputOf(page(), 'Elevation')[0]! * 0.3048;
    const exponent = 9.80665 / (287.053 * 0.0065);
    const altitude = (288.15 / 0.0065) * (1 - (qnh / 1013.25) ** (1 / exponent));
    const pressure = 101_325 * (1 - (0.0065 * (altitude + elevation)) / 288.15) ** exponent;
    // QNH is printed to 1 hPa, so the pressure is known to half of that, and to 10 ft of elevation.
    expect(Math.abs(pressure - printed('Pressure at the field').value)).toBeLessThan(120);
  });

  it('true airspeed in the turn, from the handbook speed, the masses and the density', () => {
    expectPrinted(trueAirspeed(page()), printed('True airspeed'));
  });

  it('sink in the turn, from the glide ratio, the bank and the speed', () => {
    expectPrinted(sinkInTurn(page()).sink, printed('Sink'));
    const degrees = /γ = ([\d.]+)°/.exec(lineOf(page(), 'Glide angle').result)![1]!;
    expectPrinted(Math.asin(sinkInTurn(page()).sine) / radians, asPrinted(degrees));
  });

  it('radius of the turn, from the speed and the bank', () => {
    const { sine } = sinkInTurn(page());
    const speed = trueAirspeed(page());
    const { bank } = turnOf(page());
    // r = V² cos γ / (g tan φ): the radius of a level turn, seen from above.
    expectPrinted(
      (speed ** 2 * Math.sqrt(1 - sine ** 2)) / (9.80665 * Math.tan(bank)),
      printed('Radius through the air'),
    );
  });

  it('stall speed in the turn, from the handbook stall speed, the masses and the bank', () => {
    const stall = inputOf(page(), 'Stall, touchdown, approach')[0]! * knot * massFactor(page());
    expectPrinted(stall / Math.sqrt(Math.cos(turnOf(page()).bank)), printed('Stall speed in the turn'));
  });

  it('glide over the ground on final, from the glide, the wind and the runway', () => {
    const [sink, horizontal] = numbersOf(lineOf(page(), 'Sink; speed over still ground').result);
    const [surface, height] = numbersOf(lineOf(page(), 'Wind there').working.split('=').at(-1)!);
    const exponent = inputOf(page(), 'Wind by height: exponent α')[0]!;
    const wind = surface! * (height! / 10) ** exponent;
    expectPrinted(wind, printed('Wind there'));
    const from = numbersOf(lineOf(page(), 'Wind there').result)[1]!;
    const angle = (from - inputOf(page(), 'Runway; direction true').at(-1)!) * radians;
    const ground = Math.sqrt(horizontal! ** 2 - (wind * Math.sin(angle)) ** 2) - wind * Math.cos(angle);
    expectPrinted(ground, printed('Groundspeed, drift allowed for'));
    // Half of the last place of the speed, and of the sink, comes to about two places here.
    expectPrinted(ground / sink!, printed('Glide over the ground'), 'Glide over the ground', 2.6);
  });

  it('each line, from the numbers in its own working', () => {
    for (const { what, redo, at = 0 } of redone) {
      const lines = linesOf(page()).filter((line) => `${line.what} `.startsWith(`${what} `));
      expect(lines.map((line) => line.what)).toHaveLength(1);
      const { working } = lines[0]!;
      const printedNumbers = numberTexts(
        working
          .replace(/, (with|at) .*$/, '')
          .split('=')
          .at(-1)!,
      );
      const value = redo(...printedNumbers.map((text) => asPrinted(text).value));
      const result = asPrinted(numberTexts(lines[0]!.result)[at]!);
      expectPrinted(value, result, what, Math.max(1.5, 0.5 + roundingOf(redo, printedNumbers) / result.unit));
    }
  });

  it('the aim point of the key table is the sum of round-out and hold-off', () => {
    const roundOut = printed('Round-out: from the aim point to where the path is level');
    const sum = roundOut.value + printed('Hold-off: from there to where the wheels touch').value;
    expectPrinted(sum, printed('Aim point before the spot'));
    const aim = tableRows(page(), /Key positions as flown/).find(([key]) => key === 'Aim point')!;
    expect(Math.abs(numbersOf(aim[2]!)[0]! + sum)).toBeLessThan(0.6);
  });
});

const knot = 1852 / 3600;
const radians = Math.PI / 180;

interface Redone {
  /** The beginning of the line. */
  readonly what: string;
  /** The result, from the numbers of the working as they come from left to right. */
  readonly redo: (...numbers: number[]) => number;
  /** Which number of the printed result; the first where it is left out. */
  readonly at?: number;
}

const atMass = (speed: number, _knots: number, flown: number, reference: number) =>
  speed * Math.sqrt(flown / reference);

/** Lines that a calculator gives from the numbers in them. */
const redone: readonly Redone[] = [
  { what: 'Density at the field', redo: (p, gas, t) => p / (gas * t) },
  { what: 'True over equivalent', redo: (sea, field) => Math.sqrt(sea / field) },
  { what: 'The same at', redo: (f, one, lapse, h, t, e) => f * (one - (lapse * h) / t) ** e },
  { what: 'Best glide', redo: atMass },
  { what: 'Approach', redo: atMass },
  { what: 'Touchdown', redo: atMass },
  { what: 'Stall, wings level', redo: atMass },
  { what: 'True airspeed', redo: (v, _knots, f) => v * f },
  {
    what: 'Drag over weight, parasite',
    redo: (best, u, two, e) => (Math.cos(best * radians) * u ** 2) / (two * e),
  },
  {
    what: 'Drag over weight, induced',
    redo: (one, two, e, best, bank, u) =>
      one / (two * e * Math.cos(best * radians) * Math.cos(bank * radians) ** 2 * u ** 2),
  },
  {
    what: 'Glide angle',
    redo: (one, four, b, a, bAgain, minus, two, below) =>
      (Math.sqrt(one + four * b * (a + bAgain)) - minus) / (two * below),
  },
  { what: 'Sink', redo: (v, sine) => v * sine },
  { what: 'Speed over still ground', redo: (v, glide) => v * Math.cos(glide * radians) },
  { what: 'Load factor', redo: (one, bank) => one / Math.cos(bank * radians) },
  { what: 'Stall speed in the turn', redo: (v, _knots, n) => v * Math.sqrt(n) },
  { what: 'Rate of turn', redo: (g, bank, v) => (g * Math.tan(bank * radians)) / v },
  { what: 'Radius through the air', redo: (v, rate) => v / rate },
  { what: 'A turn of 90°, without', redo: (sink, time) => sink * time, at: 1 },
  { what: 'Wind there', redo: (w, h, ten, exponent) => w * (h / ten) ** exponent },
  { what: 'Groundspeed counted', redo: (v, f, counted, wind) => v * f - counted * wind },
  { what: 'Landing roll', redo: (roll, over, given) => roll * (over / given) ** 2 },
  { what: 'Wind against and across', redo: (w, from, to) => w * Math.cos((from - to) * radians) },
  {
    what: 'Wind against and across',
    redo: (w, from, to) => Math.abs(w * Math.sin((from - to) * radians)),
    at: 1,
  },
  { what: 'Groundspeed, drift', redo: (v, across, against) => Math.sqrt(v ** 2 - across ** 2) - against },
  { what: 'Glide over the ground', redo: (ground, sink) => ground / sink },
  { what: 'Aim point before', redo: (roundOut, holdOff) => roundOut + holdOff },
];

/** The best glide, for the power setting that the page names. */
function bestGlide(page: string): { ratio: number; speed: number } {
  const power = /Engine (idling|stopped)/.exec(wordsOf(page))![1]!;
  const [ratio, , knots] = inputOf(page, `Best glide, engine ${power}`);
  return { ratio: ratio!, speed: knots! * knot };
}

/** How much speeds grow from the handbook's mass to the mass flown. */
function massFactor(page: string): number {
  return Math.sqrt(inputOf(page, 'Mass flown')[0]! / inputOf(page, 'Speeds hold at')[0]!);
}

/** The bank and the height of the turn that is worked out, rad and m. */
function turnOf(page: string): { bank: number; height: number } {
  const heading = /planned bank of ([\d.]+)°, ([\d.]+) m above the field/.exec(wordsOf(page))!;
  return { bank: Number(heading[1]) * radians, height: Number(heading[2]) };
}

/** m/s, from the handbook's speed, the masses, and the air at the height of the turn. */
function trueAirspeed(page: string): number {
  const pressure = asPrinted(numberTexts(lineOf(page, 'Pressure at the field').result)[0]!).value;
  const temperature = numbersOf(lineOf(page, 'Density at the field').working)[2]!;
  const { height } = turnOf(page);
  const field = pressure / (287.053 * temperature);
  const density = field * (1 - (0.0065 * height) / temperature) ** (9.80665 / (287.053 * 0.0065) - 1);
  return bestGlide(page).speed * massFactor(page) * Math.sqrt(1.225 / density);
}

/**
 * Drag over weight at the speed of best glide is half parasite and half induced; the induced half grows with the
 * square of the lift, which is the part of the weight across the path over the cosine of the bank. Found by halving.
 */
function sinkInTurn(page: string): { sine: number; sink: number } {
  const { ratio } = bestGlide(page);
  const level = Math.cos(Math.atan(1 / ratio));
  const lift = (sine: number) => Math.sqrt(1 - sine ** 2) / Math.cos(turnOf(page).bank) / level;
  let [low, high] = [0, 1];
  for (let step = 0; step < 60; step += 1) {
    const sine = (low + high) / 2;
    if (sine < (level / (2 * ratio)) * (1 + lift(sine) ** 2)) low = sine;
    else high = sine;
  }
  return { sine: low, sink: trueAirspeed(page) * low };
}

interface Line {
  readonly what: string;
  readonly working: string;
  readonly result: string;
}

/** The lines of the worked chain. */
function linesOf(page: string): Line[] {
  return tableRows(page, /class="chain"/)
    .filter((cells) => cells.length === 3)
    .map(([what, working, result]) => ({ what: what!, working: working!, result: result! }));
}

function lineOf(page: string, what: string): Line {
  const line = linesOf(page).find((each) => each.what === what);
  if (!line) throw new Error(`The chain has no line ${what}`);
  return line;
}

/** The numbers of one entry of `What went in`. */
function inputOf(page: string, label: string): number[] {
  const entries = [...page.matchAll(/<dt>([\s\S]*?)<\/dt><dd>([\s\S]*?)<\/dd>/g)];
  const entry = entries.find(([, name]) => wordsOf(name!) === label);
  if (!entry) throw new Error(`The page does not say: ${label}`);
  return numbersOf(wordsOf(entry[2]!));
}

/** Numbers as printed; a sign belongs to the number right after it. */
function numberTexts(text: string): string[] {
  return text.match(/−?\d[\d,]*(\.\d+)?/g) ?? [];
}

function numbersOf(text: string): number[] {
  return numberTexts(text).map((number) => asPrinted(number).value);
}

interface Printed {
  readonly value: number;
  /** One in the last place. The page prints four figures or more, and leaves out zeros at the end. */
  readonly unit: number;
}

function asPrinted(text: string): Printed {
  const value = Number(text.replace('−', '-').replaceAll(',', ''));
  const decimals = text.split('.')[1]?.length ?? 0;
  const fourth = value === 0 ? 1 : 10 ** (Math.floor(Math.log10(Math.abs(value))) - 3);
  return { value, unit: Math.min(10 ** -decimals, fourth) };
}

/**
 * By how much the result moves where each number of the working is half of its last place away from what is printed,
 * all to the same side. Whole numbers are taken as they are.
 */
function roundingOf(redo: Redone['redo'], texts: readonly string[]): number {
  const numbers = texts.map((text) => asPrinted(text).value);
  const moves = texts.map((text, index) => {
    const { value, unit } = asPrinted(text);
    const moved = numbers.with(index, text.includes('.') ? value + unit / 2 : value);
    return Math.abs(redo(...moved) - redo(...numbers));
  });
  return moves.reduce((sum, move) => sum + move, 0);
}

/** The page promises "the last figure or one beside it". */
function expectPrinted(value: number, { value: printed, unit }: Printed, what = '', places = 1.5): void {
  const off = Math.abs(value - printed) / unit;
  expect(off, `${what} ${value}, printed ${printed}`).toBeLessThanOrEqual(places);
}
