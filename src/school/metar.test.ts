import { readFileSync } from 'node:fs';
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { allowance, type Published, title } from '../../tests/published-rows.ts';
import { type MetarWeather, readMetar } from './metar.ts';
import { MetarError } from './metar-groups.ts';

const published: readonly Published[] = JSON.parse(
  readFileSync(new URL('../../tests/reference/metar.json', import.meta.url), 'utf8'),
);
// International knot; NIST SP 811 for the inch of mercury.
const knot = 1852 / 3600;
const inch = 3386.389;
const degree = Math.PI / 180;

/** A report whose other groups are sound. */
const withWind = (wind: string) => `XXXX 251150Z ${wind} 9999 FEW030 18/11 Q1013`;
const withTemperature = (group: string) => `XXXX 251150Z 21012KT 9999 ${group} Q1013`;
const withPressure = (group: string) => `XXXX 251150Z 21012KT 9999 18/11 ${group}`;

function complaint(text: string): string {
  try {
    readMetar(text);
  } catch (error) {
    expect(error).toBeInstanceOf(MetarError);
    return (error as Error).message;
  }
  throw new Error(`${text} was read`);
}

describe('a report whose decoding is published', () => {
  const figures: Readonly<Record<string, (weather: MetarWeather) => number | undefined>> = {
    wind: ({ wind }) => wind.speed / knot,
    wind_speed: ({ wind }) => wind.speed / knot,
    wind_dir: ({ wind }) => wind.from / degree,
    gust: ({ gust }) => (gust === undefined ? undefined : gust / knot),
    temp: ({ temperature }) => (temperature === undefined ? undefined : temperature - 273.15),
    altimeter: ({ qnh }) => (qnh === undefined ? undefined : qnh / inch),
    qnh: ({ qnh }) => (qnh === undefined ? undefined : qnh / 100),
  };
  // One row of the table prints only the end of its report.
  const whole = (report: string) => report.replace(/^\.\.\. /, 'XXXX 251150Z 00000KT ');
  it.each(published.map((row) => [title(row), row] as const))('%s', (_, row) => {
    const found = figures[row.quantity]?.(readMetar(whole(row.inputs as string)));
    const value = row.value as number;
    expect(Math.abs((found ?? Number.NaN) - value)).toBeLessThanOrEqual(allowance(row, value));
  });
});

describe('the wind of a METAR', () => {
  it('is taken as true, in the unit of its group (WMO-No. 306, FM 15, 15.5)', () => {
    expect(readMetar(withWind('36020KT')).wind).toEqual({ from: 0, speed: expect.closeTo(20 * knot, 12) });
    expect(readMetar(withWind('09008MPS')).wind.speed).toBe(8);
    expect(readMetar(withWind('09036KMH')).wind.speed).toBeCloseTo(10, 12);
    expect(readMetar(withWind('09036G54KMH')).gust).toBeCloseTo(15, 12);
    expect(readMetar(withWind('09008G15MPS')).gust).toBe(15);
    expect(readMetar(withWind('21012KT')).gust).toBeUndefined();
  });
  it('is calm as 00000KT', () => {
    expect(readMetar(withWind('00000KT'))).toMatchObject({ wind: { from: 0, speed: 0 }, variable: false });
  });
  it('may have extremes of direction', () => {
    expect(readMetar(withWind('25009KT 210V280'))).toMatchObject({ variable: true });
    expect(readMetar(withWind('25009KT')).variable).toBe(false);
  });
  it('has no direction as VRB: one must be given, and the gust stays where it is the stronger', () => {
    expect(complaint(withWind('VRB02KT'))).toMatch(/variable \(`VRB02KT`\) and has no direction: .*--wind/);
    const weak = { from: 1, speed: 2 };
    const read = readMetar(withWind('VRB05G15KT'), weak);
    expect(read.wind).toBe(weak);
    expect(read.variable).toBe(true);
    expect(read.gust).toBeCloseTo(15 * knot, 12);
    expect(readMetar(withWind('VRB05G15KT'), { from: 1, speed: 9 }).gust).toBeUndefined();
  });
  it.each(['/////KT', '250//KT', '///09KT', '/////MPS'])('was not measured as %s', (group) => {
    expect(complaint(withWind(group))).toMatch(/was not measured .*--wind/);
    expect(readMetar(withWind(group), { from: 1, speed: 2 }).qnh).toBe(101_300);
  });
  it('may not be missing', () => {
    expect(complaint('XXXX 251150Z 9999 18/11 Q1013')).toMatch(/no group of wind.*--wind/);
  });
  it.each([
    '250P99KT',
    '25P49MPS',
    '25009GP99KT',
    '250109KT',
    '2509KT',
    '250009KT',
    '25009 KT',
    '25009KTS',
    '25009KPH',
    '250/09KT',
    'VRBKT',
  ])('cannot be read as %s', (group) => {
    expect(complaint(withWind(group))).toMatch(/cannot be read as the wind .*25009G19KT/);
  });
  it.each([
    ['37009KT', /001 to 360/],
    ['00009KT', /001 to 360.*calm is `00000KT`/],
    ['25009G05KT', /gust is not more than the wind/],
    ['25009KT 26012KT', /two groups of wind, `25009KT` and `26012KT`/],
  ])('is refused as %s', (group, words) => {
    expect(complaint(withWind(group))).toMatch(words);
  });
  it('is not that of a trend, a remark, or another five figures', () => {
    const text = 'XXXX 251150Z 25009KT 9999 18/11 Q1013 88290592 BECMG 30025G40KT RMK 31020KT 05/04 A2900';
    expect(readMetar(text)).toEqual(readMetar('XXXX 251150Z 25009KT 9999 18/11 Q1013'));
  });
});

describe('the temperature and pressure of a METAR', () => {
  it.each([
    ['18/11', 18],
    ['M12/M15', -12],
    ['M00/M01', 0],
    ['M05/', -5],
    ['10///', 10],
    ['10/XX', 10],
  ])('%s is %d C', (group, celsius) => {
    expect(readMetar(withTemperature(group)).temperature).toBeCloseTo(celsius + 273.15, 12);
  });
  it.each(['/////', '//////', 'CAVOK', '1/2SM', 'M1/4SM', 'R24/0600'])('%s is no temperature', (group) => {
    expect(readMetar(withTemperature(group)).temperature).toBeUndefined();
  });
  it.each(['-5/-7', '9/3', '123/11', '18.2/15.9', '18/11.5'])('%s is refused', (group) => {
    expect(complaint(withTemperature(group))).toMatch(/cannot be read as the temperature .*M02\/M05/);
  });
  it('may be missing, then they are undefined', () => {
    expect(readMetar('XXXX 251150Z AUTO 25009KT CAVOK ///// Q////')).toMatchObject({
      temperature: undefined,
      qnh: undefined,
    });
  });
  it.each([
    ['Q0995', 99_500],
    ['A2992', 29.92 * inch],
    ['Q1013 A2992', 101_300],
    ['A2992 Q1013', 29.92 * inch],
    ['Q0995=', 99_500],
    // 1 hPa and 1.1 hPa apart: each rounded down in its own unit.
    ['Q1012 A2991', 101_200],
    ['Q1013 A2988', 101_300],
  ])('%s is %d Pa', (group, pascals) => {
    expect(readMetar(withPressure(group)).qnh).toBeCloseTo(pascals, 6);
  });
  it.each([
    ['A0995', /no QNH is that/],
    ['Q2992', /no QNH is that/],
    ['A29.92', /cannot be read as the pressure/],
    ['QNH1013', /cannot be read as the pressure/],
    ['Q995', /cannot be read as the pressure/],
    ['Q0995 A2992', /disagree/],
    // 2 hPa and 15 hPa apart.
    ['Q1013 A2985', /disagree/],
    ['Q1011 A2992', /disagree/],
    ['Q1013 A2947', /disagree/],
    ['Q0998 A2992', /disagree/],
    ['85/80 Q1013', /two groups of temperature/],
  ])('%s is refused', (group, words) => {
    expect(complaint(withPressure(group))).toMatch(words);
  });
  it('is refused where no field is so hot', () => {
    expect(complaint(withTemperature('81/11'))).toMatch(/no field is at that temperature/);
  });
});

describe('a text that is no METAR', () => {
  it.each(['', ' ', 'hello', 'XXXX', '210/12kt', 'XXXX 25009KT 18/11 Q1013', 'TAF XXXX 251150Z 25009KT'])(
    '`%s` is told what one looks like',
    (text) => {
      expect(complaint(text)).toMatch(/not a METAR: .*`METAR XXXX 251150Z 21012G22KT/);
    },
  );
  it('may be a report that says nothing, or two of them', () => {
    expect(complaint('METAR XXXX 251150Z NIL=')).toMatch(/no report/);
    expect(complaint(`${withWind('25009KT')}= ${withWind('26009KT')}=`)).toMatch(/more than one report/);
  });
  it('begins otherwise in these ways, in small letters too', () => {
    const plain = readMetar(withWind('25009KT'));
    expect(plain.station).toBe('XXXX');
    for (const start of ['METAR ', 'SPECI ', 'METAR COR ', '\n metar  ']) {
      expect(readMetar(`${start}${withWind('25009kt').toLowerCase()} `)).toEqual(plain);
    }
  });
});

describe('any text at all', () => {
  const onlyMetarError = (text: string) => {
    try {
      const { wind, gust, temperature, qnh } = readMetar(text);
      for (const figure of [wind.from, wind.speed, gust ?? 0, temperature ?? 0, qnh ?? 0]) {
        expect(figure).toBeGreaterThanOrEqual(0);
      }
      expect(wind.from).toBeLessThan(2 * Math.PI);
    } catch (error) {
      if (!(error instanceof MetarError)) throw error;
    }
  };
  it('is read or refused with a MetarError', () => {
    fc.assert(fc.property(fc.string({ unit: 'binary', maxLength: 80 }), onlyMetarError));
  });
  it('also where it is nearly a METAR', () => {
    const piece = fc.constantFrom(
      ...[
        '25009KT',
        'VRB',
        'G',
        'P99',
        '//',
        'KT',
        'MPS',
        'KMH',
        ' ',
        'M',
        '12/',
        'Q0995',
        'A2992',
        '=',
        'RMK',
      ],
      ...['TEMPO', '360', '000', '00000KT', 'V', 'CAVOK', 'R24/0600', '9999', 'AUTO', 'NIL', 'XX', '.', '-'],
    );
    const report = fc
      .array(piece, { maxLength: 14 })
      .map((pieces) => `METAR XXXX 251150Z 0${pieces.join('')}`);
    const spaced = fc
      .array(piece, { maxLength: 14 })
      .map((pieces) => `METAR XXXX 251150Z ${pieces.join(' ')}`);
    fc.assert(fc.property(fc.oneof(report, spaced), onlyMetarError), { numRuns: 2000 });
  });
  it('comes back as it was written, where it is a METAR', () => {
    const two = (n: number) => String(n).padStart(2, '0');
    const celsius = (n: number) => (n < 0 ? `M${two(-n)}` : two(n));
    const units = fc.constantFrom(['KT', knot] as const, ['MPS', 1] as const, ['KMH', 1 / 3.6] as const);
    fc.assert(
      fc.property(
        fc.integer({ min: 1, max: 36 }),
        fc.integer({ min: 1, max: 60 }),
        fc.integer({ min: 0, max: 39 }),
        units,
        fc.integer({ min: -60, max: 60 }),
        fc.integer({ min: 850, max: 1090 }),
        (tens, speed, more, [unit, factor], temperature, qnh) => {
          const gust = more === 0 ? '' : `G${two(speed + more)}`;
          const pressure = `Q${String(qnh).padStart(4, '0')}`;
          const text = `METAR XXXX 251150Z ${two(tens)}0${two(speed)}${gust}${unit} 9999 ${celsius(temperature)}/M01 ${pressure}`;
          const read = readMetar(text);
          expect(read.wind.from).toBeCloseTo(((tens * 10) % 360) * degree, 12);
          expect(read.wind.speed).toBeCloseTo(speed * factor, 9);
          if (more === 0) expect(read.gust).toBeUndefined();
          else expect(read.gust).toBeCloseTo((speed + more) * factor, 9);
          expect(read.temperature).toBeCloseTo(temperature + 273.15, 9);
          expect(read.qnh).toBe(qnh * 100);
        },
      ),
    );
  });
});
