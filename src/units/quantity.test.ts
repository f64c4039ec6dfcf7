import { describe, expect, it } from 'vitest';
import { parseNumber, parseQuantity, parseRatio, QuantityError } from './quantity.ts';
import { parseSidedAngle } from './sided-angle.ts';
import { parseWind } from './wind-text.ts';

describe('a quantity', () => {
  it('is read with or without a space, in any letter case, with thousands comma and either minus', () => {
    const knots = 42 * (1852 / 3600);
    for (const text of ['42 kt', '42kt', ' 42 KT ', '42.0 Kt', '42\u00a0kt']) {
      expect(parseQuantity(text, 'speed')).toBeCloseTo(knots, 12);
    }
    expect(parseQuantity('1,000 ft', 'length')).toBeCloseTo(304.8, 12);
    expect(parseQuantity('-140 m', 'length')).toBe(-140);
    expect(parseQuantity('−140 m', 'length')).toBe(-140);
    expect(parseQuantity('2 nm', 'length')).toBe(3704);
    expect(parseQuantity('1008hpa', 'pressure')).toBe(100800);
    expect(parseQuantity('1.5 min', 'time')).toBe(90);
    expect(parseQuantity('30°', 'angle')).toBeCloseTo(Math.PI / 6, 12);
    expect(parseQuantity('180 deg/s', 'turn-rate')).toBeCloseTo(Math.PI, 12);
  });

  it('is never minus nothing', () => expect(Object.is(parseQuantity('-0 m', 'length'), 0)).toBe(true));

  it('without a unit says which units are taken, with an example', () => {
    expect(() => parseQuantity('1000', 'length')).toThrow(
      new QuantityError('`1000` has no unit: write a length such as `1000 ft` (m, km, ft, NM, mi)'),
    );
  });

  it('in a unit of another kind says what it is', () => {
    expect(() => parseQuantity('42 ft', 'speed')).toThrow(
      '`42 ft` is a length, not a speed: write a speed such as `42 kt`',
    );
  });

  it('in an unknown unit names the unit', () => {
    expect(() => parseQuantity('3 cubits', 'length')).toThrow('`cubits` is not a unit known here');
    expect(() => parseQuantity('3 constructor', 'length')).toThrow('`constructor` is not a unit known here');
  });

  it.each([
    'NaN',
    'NaN m',
    '',
    'm',
    'Infinity m',
    '1e3 m',
    '3,5 m',
    '1,00 m',
    '1.2.3 m',
    '--3 m',
    '.5 m',
    '0x10 m',
  ])('is not read from %j, which could mean anything', (text) =>
    expect(() => parseQuantity(text, 'length')).toThrow(QuantityError),
  );

  it('too large for a number is refused', () => {
    expect(() => parseQuantity(`${'9'.repeat(400)} m`, 'length')).toThrow(QuantityError);
  });

  it('below absolute zero, or less than no mass, is refused', () => {
    expect(() => parseQuantity('-300 C', 'temperature')).toThrow('below the least temperature there can be');
    expect(() => parseQuantity('-1 kg', 'mass')).toThrow(QuantityError);
  });
});

describe('a bearing', () => {
  it('of 360 degrees is north', () => expect(parseQuantity('360 deg', 'bearing')).toBe(0));
  it.each(['361 deg', '-10 deg'])('of %s is refused', (text) => {
    expect(() => parseQuantity(text, 'bearing')).toThrow('is not between 0 and 360 degrees');
  });
});

describe('a number and a ratio', () => {
  it('have no unit', () => {
    expect(parseNumber('0.143', '0.143')).toBe(0.143);
    expect(parseRatio('6.4')).toBe(6.4);
    expect(parseRatio('6.4:1')).toBe(6.4);
  });
  it('say what to write', () => {
    expect(() => parseRatio('6.4:2')).toThrow('`6.4:2` is not a number: write one such as `6.4`');
  });
});

describe('an angle with its side', () => {
  it('is positive east and north', () => {
    expect(parseSidedAngle('2 deg W', 'EW')).toBeCloseTo((-2 * Math.PI) / 180, 12);
    expect(parseSidedAngle('2°e', 'EW')).toBeCloseTo((2 * Math.PI) / 180, 12);
    expect(parseSidedAngle('90 deg S', 'NS')).toBeCloseTo(-Math.PI / 2, 12);
  });
  it.each(['2 deg', '-2 deg', '2 deg N', '-2 deg W', '2 W', ''])('is not read from %j', (text) => {
    expect(() => parseSidedAngle(text, 'EW')).toThrow(QuantityError);
  });
});

describe('a wind', () => {
  it('is where it blows from and how fast', () => {
    for (const text of ['210/12kt', '210°/12 kt', '210 deg / 12 KT']) {
      const { from, speed } = parseWind(text);
      expect(from).toBeCloseTo((210 * Math.PI) / 180, 12);
      expect(speed).toBeCloseTo((12 * 1852) / 3600, 12);
    }
    expect(parseWind('360/10km/h')).toEqual({ from: 0, speed: 10 / 3.6 });
    expect(parseWind('Calm')).toEqual({ from: 0, speed: 0 });
  });
  it('from more than 360 degrees is refused', () => {
    expect(() => parseWind('370/12kt')).toThrow('`370/12kt`: the direction 370 is more than 360 degrees');
  });
  it('without a unit says how to write it', () => {
    expect(() => parseWind('210/12')).toThrow(
      '`12` has no unit: write a speed such as `12 kt` (kt, km/h, mph, m/s)',
    );
  });
  it.each(['', 'southwest 12kt', '12kt', '210', '-10/12kt', '210/-3kt', '210/12ft', '210//12kt'])(
    'is not read from %j',
    (text) => expect(() => parseWind(text)).toThrow(QuantityError),
  );
});
