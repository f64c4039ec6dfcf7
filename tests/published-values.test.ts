import { describe, expect, it } from 'vitest';
import {
  fieldAir,
  pressureAltitude,
  standardDensity,
  standardPressure,
  standardTemperature,
  stationPressure,
} from '../src/flight/air.ts';
import type { Obstacle } from '../src/flight/airfield.ts';
import { lapseRate, seaLevelDensity, seaLevelPressure, standardGravity } from '../src/flight/constants.ts';
import { sinOfGlide } from '../src/flight/glide.ts';
import { inducedDragReduction } from '../src/flight/ground-effect.ts';
import { planApproach } from '../src/flight/planner.ts';
import { loadFactor, stallSpeedUnder, turnRadius, turnRate } from '../src/flight/turns.ts';
import {
  crosswind,
  drift,
  headwind,
  surfaceWindHeight,
  windField,
  windTriangle,
} from '../src/flight/wind.ts';
import { readAircraft, readAirfield } from '../src/school/read.ts';
import {
  kelvinAtZeroCelsius,
  kilogramsPerPound,
  metresPerFoot,
  metresPerNauticalMile,
  metresPerSecondPerFootPerMinute,
  metresPerSecondPerKnot,
  metresPerStatuteMile,
  pascalsPerInchOfMercury,
  radiansPerDegree,
} from '../src/units/factors.ts';
import { parseQuantity } from '../src/units/quantity.ts';
import { allowance, input, type Published, published, title } from './published-rows.ts';

type Computed = number | readonly number[];
type Family = Readonly<Record<string, (row: Published) => Computed>>;

const knot = metresPerSecondPerKnot;
const degree = radiansPerDegree;
const inHg = pascalsPerInchOfMercury;
const at = (name: string) => new URL(`../lessons/${name}`, import.meta.url).pathname;

const fahrenheit = (kelvin: number) => ((kelvin - kelvinAtZeroCelsius) * 9) / 5 + 32;
/** Altitude of a row in m. */
const altitude = (row: Published) => input(row, 'H_ft') * metresPerFoot;

/** `140/25`, or `045/30`, as a wind in the row's own speed unit. */
function windOf(row: Published, key = 'wind'): { from: number; speed: number } {
  const [from, speed] = String((row.inputs as Record<string, string>)[key]).split('/');
  return { from: Number(from) * degree, speed: Number(speed) };
}

/** Where an increasing or decreasing function has the value. */
function invert(f: (x: number) => number, value: number, low: number, high: number): number {
  const rising = f(high) > f(low);
  for (let i = 0; i < 100; i++) {
    const middle = (low + high) / 2;
    if (f(middle) > value === rising) high = middle;
    else low = middle;
  }
  return (low + high) / 2;
}

const compass = (angle: number) => (((angle / degree) % 360) + 360) % 360;
/** A difference of directions, rad, -pi to pi. */
const between = (a: number, b: number) => Math.atan2(Math.sin(a - b), Math.cos(a - b));

/** The airspeed that gives a groundspeed on a course in a wind; all in the row's unit of speed. */
function airspeedFor(row: Published): number {
  const north = drift(windOf(row), 0);
  const course = input(row, 'C') * degree;
  return invert((speed) => windTriangle(course, speed, north).groundspeed, input(row, 'GS'), 60, 500);
}

function headingFor(row: Published): number {
  return compass(windTriangle(input(row, 'C') * degree, airspeedFor(row), drift(windOf(row), 0)).heading);
}

/** The course made good on a heading, found by trying courses. */
function courseOf(row: Published): number {
  const north = drift(windOf(row, 'wind_mph'), 0);
  const heading = input(row, 'TH') * degree;
  const headingOn = (course: number) =>
    between(windTriangle(course, input(row, 'AS_mph'), north).heading, heading);
  return invert(headingOn, 0, heading - 1, heading + 1);
}

/** The wind that explains heading, airspeed, track and groundspeed, by Newton's method on the wind triangle. */
function windFromDrift(row: Published): { from: number; speed: number } {
  const miss = (along: number, across: number) => {
    const { heading, groundspeed } = windTriangle(input(row, 'track') * degree, input(row, 'TAS'), {
      along,
      across,
    });
    return [between(heading, input(row, 'TH') * degree), groundspeed - input(row, 'GS')] as const;
  };
  let [along, across] = [1, 1];
  for (let i = 0; i < 50; i++) {
    const [f, g] = miss(along, across);
    const [fx, gx] = miss(along + 1e-4, across).map((v, k) => (v - [f, g][k]!) / 1e-4) as [number, number];
    const [fy, gy] = miss(along, across + 1e-4).map((v, k) => (v - [f, g][k]!) / 1e-4) as [number, number];
    const determinant = fx * gy - fy * gx;
    along -= (f * gy - g * fy) / determinant;
    across -= (g * fx - f * gx) / determinant;
  }
  return { from: Math.atan2(-across, -along), speed: Math.hypot(along, across) };
}

const rateBank = (tas: number, degreesPerSecond: number) =>
  invert((bank) => turnRate(tas, bank), degreesPerSecond * degree, 0.001, 1.5);
const standardBank = (row: Published) => rateBank(input(row, 'TAS_kt') * knot, 3) / degree;

/** Sink at the best glide of a polar whose best glide has this angle, ft/min. */
const rateOfDescent = (row: Published) => {
  const speed = input(row, 'speed_kt') * knot;
  const polar = { speed, ratio: 1 / Math.tan(input(row, 'angle_deg') * degree) };
  return (speed * sinOfGlide(polar, speed, 1)) / metresPerSecondPerFootPerMinute;
};
/** Feet lost in a nautical mile at the best glide of a ratio, through the polar. */
const feetPerMile = (ratio: number) => {
  const sin = sinOfGlide({ speed: 30, ratio }, 30, 1);
  return (Math.tan(Math.asin(sin)) * metresPerNauticalMile) / metresPerFoot;
};

const pressureAltitudeFeet = (row: Published) =>
  pressureAltitude(
    stationPressure(input(row, 'altimeter_inHg') * inHg, input(row, 'elev_ft') * metresPerFoot),
  ) / metresPerFoot;

const families: Readonly<Record<string, Family>> = {
  'the standard atmosphere': {
    sigma: (row) => standardDensity(altitude(row)) / seaLevelDensity,
    sqrt_sigma: (row) => Math.sqrt(standardDensity(altitude(row)) / seaLevelDensity),
    delta: (row) => standardPressure(altitude(row)) / seaLevelPressure,
    theta: (row) => standardTemperature(altitude(row)) / standardTemperature(0),
    T_F: (row) => fahrenheit(standardTemperature(altitude(row))),
    'sea-level standard pressure': () => standardPressure(0) / inHg,
    'sea-level density': () => standardDensity(0),
    'pressure at tropopause': (row) => standardPressure(input(row, 'H_m')),
    'density at tropopause': (row) => standardDensity(input(row, 'H_m')),
    'tropospheric lapse': () => lapseRate * metresPerFoot,
  },
  'pressure altitude and density altitude': {
    'pressure-altitude correction': (row) =>
      pressureAltitude(input(row, 'altimeter_inHg') * inHg) / metresPerFoot,
    'pressure altitude': pressureAltitudeFeet,
    'pressure altitude at sea-level field': pressureAltitudeFeet,
    'density altitude': (row) =>
      fieldAir(
        input(row, 'elev_ft') * metresPerFoot,
        parseQuantity(`${input(row, 'OAT_F')} F`, 'temperature'),
        input(row, 'altimeter_inHg') * inHg,
      ).densityAltitude / metresPerFoot,
  },
  'wind components': {
    headwind: (row) => headwind(windOf(row), input(row, 'rwy_deg') * degree),
    crosswind: (row) => Math.abs(crosswind(windOf(row), input(row, 'rwy_deg') * degree)),
  },
  'the wind triangle': {
    groundspeed: (row) =>
      typeof row.inputs === 'object' && 'TC' in row.inputs
        ? windTriangle(input(row, 'TC') * degree, input(row, 'TAS'), drift(windOf(row), 0)).groundspeed
        : windTriangle(courseOf(row), input(row, 'AS_mph'), drift(windOf(row, 'wind_mph'), 0)).groundspeed,
    'true heading': (row) =>
      compass(windTriangle(input(row, 'TC') * degree, input(row, 'TAS'), drift(windOf(row), 0)).heading),
    course: (row) => compass(courseOf(row)),
    'required heading': headingFor,
    'required airspeed': airspeedFor,
    'wind direction from drift': (row) => compass(windFromDrift(row).from),
    'wind speed from drift': (row) => windFromDrift(row).speed,
  },
  'load factor and stall speed': {
    'load factor (printed figure)': (row) => loadFactor(input(row, 'bank_deg') * degree),
    'load factor, approximate': (row) => loadFactor(input(row, 'bank_deg') * degree),
    'bank said to give 3 g': () => invert(loadFactor, 3, 0, 1.5) / degree,
    'stall speed': (row) => stallSpeedUnder(input(row, 'n'), input(row, 'Vs1g_kt')),
    'speed to keep above in a 3 g turn': (row) => stallSpeedUnder(3, input(row, 'Vs1g_kt')),
    'older-aircraft manoeuvring speed': (row) =>
      stallSpeedUnder(
        invert((n) => stallSpeedUnder(n, 1), input(row, 'factor'), 1, 9),
        input(row, 'Vs_kt'),
      ),
    'load factor when stalled there': (row) => invert((n) => stallSpeedUnder(n, 1), input(row, 'V/Vs'), 1, 9),
    'stall speed in 60 deg bank': (row) =>
      stallSpeedUnder(loadFactor(input(row, 'bank_deg') * degree), input(row, 'Vs1g_kt')),
  },
  'turn rate, radius and standard-rate bank': {
    'standard-rate turn': () =>
      turnRate(50, Math.atan((50 * (2 * Math.PI)) / 120 / standardGravity)) / degree,
    'bank rule 15 % of TAS': standardBank,
    'bank for 3 deg/s': standardBank,
    'handbook radius constant': () => {
      const bank = 30 * degree;
      return 100 ** 2 / ((turnRadius(100 * knot, bank) / metresPerFoot) * Math.tan(bank));
    },
    'handbook rate constant': () =>
      ((turnRate(100 * knot, 30 * degree) / degree) * 100) / Math.tan(30 * degree),
    radius: (row) => turnRadius(input(row, 'TAS_kt') * knot, input(row, 'bank_deg') * degree) / metresPerFoot,
    rate: (row) => turnRate(input(row, 'TAS_kt') * knot, input(row, 'bank_deg') * degree) / degree,
    'turn-back example: radius at 65 kt, rate one': (row) => {
      const tas = input(row, 'TAS_kt') * knot;
      return turnRadius(tas, rateBank(tas, input(row, 'rate_dps'))) / metresPerFoot;
    },
    'turn-back example: lateral offset after 180': () => {
      const tas = 65 * knot;
      return (2 * turnRadius(tas, rateBank(tas, 3))) / metresPerFoot;
    },
    'turn-back example: total heading change / time': () => {
      const tas = 65 * knot;
      return [180 + 45, (225 * degree) / turnRate(tas, rateBank(tas, 3))];
    },
    'turn-back example: height lost': (row) =>
      (input(row, 'fpm') * metresPerSecondPerFootPerMinute * input(row, 'time_s')) / metresPerFoot,
    'rate-one calibration': () => (90 * degree) / turnRate(60 * knot, rateBank(60 * knot, 3)),
  },
  'ground effect': {
    'induced-drag reduction': (row) => 100 * inducedDragReduction(input(row, 'h/b')),
  },
  'the wind profile': {
    'power-law exponent': () => {
      const out = { along: 0, across: 0 };
      const wind = { from: 0, speed: 10 };
      windField(wind, { kind: 'power', exponent: 1 / 7, layers: [] }, 0)(10 * Math.E, out);
      return Math.log(-out.along / 10);
    },
    'WMO measuring height': () => surfaceWindHeight,
  },
  'glide ratio': {
    'glide ratio': (row) => {
      const ratio = input(row, 'dist_ft') / input(row, 'loss_ft');
      return 1 / Math.tan(Math.asin(sinOfGlide({ speed: 30, ratio }, 30, 1)));
    },
    'height lost': (row) => feetPerMile(input(row, 'ratio')) * input(row, 'dist_nm'),
    'L/D at twice best-glide speed': (row) => {
      const polar = { speed: input(row, 'Vbg_kt') * knot, ratio: input(row, 'LDmax') };
      return 1 / Math.tan(Math.asin(sinOfGlide(polar, input(row, 'V_kt') * knot, 1)));
    },
  },
  'rates of descent': {
    'rate of descent (printed)': rateOfDescent,
    '3 degree path': () => feetPerMile(1 / Math.tan(3 * degree)),
    'maximum straight-in gradient': () => {
      const gradient = 400;
      const ratio = metresPerNauticalMile / (gradient * metresPerFoot);
      return [gradient, Math.asin(sinOfGlide({ speed: 30, ratio }, 30, 1)) / degree];
    },
  },
  units: {
    'nautical mile': () => metresPerNauticalMile,
    'statute mile (1760 yd)': () => metresPerStatuteMile,
    'foot (1/3 yd, yd 0.9144 m)': () => metresPerFoot,
    pound: () => kilogramsPerPound,
    'standard gravity': () => standardGravity,
    'inch of mercury, conventional': () => inHg,
  },
};

/** Rows that are not one number to compute; each has a test of its own below, by id. */
const byId = ['da_nws_coeffs', 'ge_wies', 'ge_exp', 'fl_roundout', 'fg_screen', 'bk_medium', 'bk_steep'];
const row = (id: string) => published.find((one) => one.id === id)!;

const familyOf = (one: Published) =>
  byId.includes(one.id)
    ? undefined
    : Object.keys(families).find(
        (name) => families[name]![one.quantity] && topicOf[name]!.includes(one.topic),
      );

/** A quantity such as `groundspeed` is only that family's within its topic. */
const topicOf: Readonly<Record<string, string>> = {
  'the standard atmosphere': '1_atmosphere',
  'pressure altitude and density altitude': '2_density_altitude',
  'wind components': '4_wind',
  'the wind triangle': '4_wind',
  'load factor and stall speed': '3_turns',
  'turn rate, radius and standard-rate bank': '3_turns 13_handling',
  'ground effect': '8_ground_effect',
  'the wind profile': '9_wind_profile',
  'glide ratio': '5_glide',
  'rates of descent': '7_final_geometry',
  units: '12_units',
};

describe('the carried rows', () => {
  it('are each used by a family or a test of their own', () => {
    const unused = published.filter((one) => !familyOf(one) && !byId.includes(one.id));
    expect(unused.map(({ id }) => id)).toEqual([]);
    expect(byId.filter((id) => !row(id))).toEqual([]);
  });

  it('have ids of their own, a source and a tolerance', () => {
    expect(new Set(published.map(({ id }) => id)).size).toBe(published.length);
    for (const { source, tolerance } of published) {
      expect(source).not.toBe('');
      expect(Object.keys(tolerance)).toHaveLength(1);
    }
  });

  it('are enough to mean something', () => expect(published.length).toBeGreaterThanOrEqual(150));
});

for (const [name, family] of Object.entries(families)) {
  const rows = published.filter((one) => familyOf(one) === name);
  const right = rows.filter(({ printedWrong }) => !printedWrong);
  const wrong = rows.filter(({ printedWrong }) => printedWrong);

  describe(`${name} agrees with print`, () => {
    it.each(right.map((one) => [title(one), one] as const))('%s', (_title, one) => {
      const values = [one.value].flat() as number[];
      const ours = [family[one.quantity]!(one)].flat() as number[];
      expect(ours).toHaveLength(values.length);
      ours.forEach((value, i) => {
        const off = Math.abs(value - values[i]!);
        expect(off, `ours ${value}, printed ${values[i]}`).toBeLessThanOrEqual(allowance(one, values[i]!));
      });
    });

    if (wrong.length > 0) {
      it.each(wrong.map((one) => [title(one), one] as const))(
        'but not where print is wrong: %s',
        (_title, one) => {
          const ours = family[one.quantity]!(one) as number;
          expect(Math.abs(ours - one.exact!) / one.exact!).toBeLessThan(0.002);
          expect(Math.abs(ours - (one.value as number)) / ours).toBeGreaterThan(0.0015);
        },
      );
    }
  });
}

describe('forms and practice that are no single number', () => {
  it.each([
    [0, 29.92, 59],
    [1500, 30.1, 80],
    [5883, 30.1, 70],
    [4000, 29.5, 100],
  ])(
    `density altitude at %d ft, %d inHg, %d F: within 30 ft of the expression in ${row('da_nws_coeffs').source}`,
    (feet, setting, f) => {
      const [scale, factor, exponent] = row('da_nws_coeffs').value as number[];
      const air = fieldAir(feet * metresPerFoot, parseQuantity(`${f} F`, 'temperature'), setting * inHg);
      const theirs = scale! * (1 - (factor! * (air.pressure / inHg / (f + 459.67))) ** exponent!);
      expect(Math.abs(air.densityAltitude / metresPerFoot - theirs)).toBeLessThan(30);
    },
  );

  it.each([0.04, 0.07, 0.1, 0.15, 0.2, 0.25])(
    `ground effect at %d spans: within 4 points of ${row('ge_wies').source}`,
    (heightOverSpan) => {
      const theirs = (1 - 1.32 * heightOverSpan) / (1.05 + 7.4 * heightOverSpan);
      expect(Math.abs(inducedDragReduction(heightOverSpan) - theirs)).toBeLessThan(0.04);
    },
  );

  it.each([0.1, 0.15, 0.25, 0.4, 0.6, 1])(
    `ground effect at %d spans: within 3 points of the ${row('ge_exp').source} (from memory)`,
    (heightOverSpan) => {
      const theirs = Math.exp(-2.48 * (2 * heightOverSpan) ** 0.768);
      expect(Math.abs(inducedDragReduction(heightOverSpan) - theirs)).toBeLessThan(0.03);
    },
  );

  it.each(['osier-15', 'withy-80'])(
    `%s rounds out at 10 to 20 ft: ${row('fl_roundout').source}`,
    async (id) => {
      const [low, high] = row('fl_roundout').value as number[];
      const { value } = await readAircraft(at(`fleet/${id}.yaml`));
      expect(value!.roundOut.height / metresPerFoot).toBeGreaterThanOrEqual(low!);
      expect(value!.roundOut.height / metresPerFoot).toBeLessThanOrEqual(high!);
    },
  );

  it(`an obstacle is held against the screen height: ${row('fg_screen').source}`, async () => {
    const tall = { what: 'mast', height: 15, along: -140, across: 0, width: 10 };
    const plan = await planWith(30, [tall]);
    const clearance = plan.cautions.find(({ code }) => code === 'obstacle-clearance');
    expect(clearance!.limit / metresPerFoot).toBeCloseTo(row('fg_screen').value as number, 9);
  });

  it(`a bank above medium is cautioned from ${row('bk_steep').value} degrees: ${row('bk_medium').source}`, async () => {
    const limit = row('bk_steep').value as number;
    expect((row('bk_medium').value as number[])[1]).toBe(limit);
    const codes = async (bank: number) => (await planWith(bank)).cautions.map(({ code }) => code);
    expect(await codes(limit - 1)).not.toContain('bank-over-medium');
    const steep = (await planWith(limit + 1)).cautions.find(({ code }) => code === 'bank-over-medium');
    expect(steep!.limit).toBe(limit);
  });
});

/** Osier 15 at its own airfield in 12 kt, with a bank in degrees and other obstacles. */
async function planWith(bank: number, obstacles: readonly Obstacle[] = []) {
  const aircraft = (await readAircraft(at('fleet/osier-15.yaml'))).value!;
  const airfield = (await readAirfield(at('airfields/fallow-reach.yaml'))).value!;
  const wind = { from: 210 * degree, speed: 12 * knot };
  return planApproach({
    aircraft,
    airfield,
    runway: { ...airfield.runways[0]!, obstacles },
    approach: '180',
    power: 'idle',
    wind,
    bank: bank * degree,
  });
}
