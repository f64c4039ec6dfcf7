import { describe, expect, it } from 'vitest';
import { metresPerFoot, metresPerSecondPerKnot, radiansPerDegree } from '../../units/factors.ts';
import { anglesApart, distancesApart, heightsApart, marginsApart, speedsApart } from './apart.ts';
import { aviation } from './aviation.ts';
import type { ToldApart } from './telling-apart.ts';

const metric = { height: 'm', distance: 'ft', speed: 'km/h' } as const;
const ft = metresPerFoot;
const kt = metresPerSecondPerKnot;
const plain = ({ value, limit }: ToldApart) => [value, limit].map((text) => text.replaceAll('\u00a0', ' '));

describe('heights beside a limit', () => {
  it('have the steps of the page: 10 ft or 5 m, low ones 1 ft or 0.1 m', () => {
    expect(plain(heightsApart({ value: 244 * ft, limit: 300 * ft }, 'least', aviation))).toEqual([
      '240 ft',
      '300 ft',
    ]);
    expect(plain(heightsApart({ value: 13.4 * ft, limit: 20 * ft }, 'least', aviation))).toEqual([
      '13 ft',
      '20 ft',
    ]);
    expect(plain(heightsApart({ value: 62, limit: 301 * ft }, 'least', metric))).toEqual(['60 m', '95 m']);
    expect(plain(heightsApart({ value: 3.26, limit: 20 }, 'least', metric))).toEqual(['5 m', '20 m']);
    expect(plain(heightsApart({ value: 20, limit: 3.26 }, 'most', metric))).toEqual(['20.0 m', '3.2 m']);
    expect(plain(heightsApart({ value: -3.26, limit: 100 }, 'least', metric))).toEqual(['−5 m', '100 m']);
    expect(plain(heightsApart({ value: 50 * ft, limit: 92 }, 'least', metric))).toEqual(['15 m', '95 m']);
  });
  it('take a step or a rounding of their own before the usual one', () => {
    expect(plain(heightsApart({ value: 62, limit: 90 }, 'least', metric, { step: 20 }))).toEqual([
      '60 m',
      '100 m',
    ]);
    expect(plain(heightsApart({ value: 64.9, limit: 90 }, 'least', metric, { value: 'margin' }))).toEqual([
      '60 m',
      '90 m',
    ]);
  });
});

describe('distances beside a limit', () => {
  it('have the steps of the page: 10 m or 50 ft', () => {
    expect(plain(distancesApart({ value: 254, limit: 312 }, 'most', aviation))).toEqual(['250 m', '310 m']);
    expect(plain(distancesApart({ value: 254 * ft, limit: 321 * ft }, 'most', metric))).toEqual([
      '250 ft',
      '300 ft',
    ]);
  });
});

describe('speeds, angles and margins beside a limit', () => {
  it('have their limit on its safe side', () => {
    expect(plain(speedsApart({ value: 12 * kt, limit: 8.9 * kt }, 'most', aviation))).toEqual([
      '12 kt',
      '8 kt',
    ]);
    expect(plain(speedsApart({ value: 10, limit: 8 }, 'most', metric))).toEqual(['36 km/h', '28 km/h']);
    expect(
      plain(anglesApart({ value: 52 * radiansPerDegree, limit: 44.6 * radiansPerDegree }, 'most')),
    ).toEqual(['52°', '44°']);
  });
  it('never make a margin over the stall larger than it is, nor its least smaller', () => {
    expect(plain(marginsApart(1.219, 1.3))).toEqual(['1.21 times', '1.30 times']);
    expect(plain(marginsApart(1.219, 1.296))).toEqual(['1.21 times', '1.30 times']);
  });
});
