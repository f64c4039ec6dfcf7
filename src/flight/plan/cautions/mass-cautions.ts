import type { Found } from '../../terms/caution.ts';
import type { Examined } from './examined.ts';

/** A flown mass outside what the aircraft's data allow. */
export function massCautions({ aircraft, flown }: Pick<Examined, 'aircraft' | 'flown'>): Found[] {
  const { most, least, reference } = aircraft.mass;
  const value = flown.mass;
  const found = { code: 'mass', value, source: 'aircraft' } as const;
  if (most === undefined && value > reference + 1e-9)
    return [{ ...found, grade: 'worth-knowing', which: 'reference', limit: reference }];
  if (most !== undefined && value > most + 1e-9) return [{ ...found, which: 'most', limit: most }];
  return least !== undefined && value < least - 1e-9 ? [{ ...found, which: 'least', limit: least }] : [];
}
