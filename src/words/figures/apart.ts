import { metresPerFoot } from '../../units/factors.ts';
import type { PageUnits } from './page-units.ts';
import {
  type BesideLimit,
  type Choices,
  type LimitKind,
  type ToldApart,
  tellingApart,
} from './telling-apart.ts';

/** m. Heights below this are given to a foot or a decimetre, as low heights are everywhere. */
const low = 50 * metresPerFoot;

/** A height beside its limit, m, in the unit of the page. See `tellingApart`. */
export function heightsApart(
  { value, limit }: BesideLimit,
  kind: LimitKind,
  units: PageUnits,
  choices: Choices = {},
): ToldApart {
  // By the limit alone: the same limit reads the same whatever stands beside it.
  const isLow = Math.abs(limit) <= low;
  const step = units.height === 'm' ? { step: isLow ? 0.1 : 5 } : {};
  return tellingApart({ value, limit }, units.height, kind, { ...step, ...choices });
}

/** A distance beside its limit, m, in the unit of the page. */
export function distancesApart(
  pair: BesideLimit,
  kind: LimitKind,
  units: PageUnits,
  choices: Choices = {},
): ToldApart {
  const step = units.distance === 'ft' ? { step: 50 } : {};
  return tellingApart(pair, units.distance, kind, { ...step, ...choices });
}

/** A speed beside its limit, m/s, in the unit of the page. */
export function speedsApart(pair: BesideLimit, kind: LimitKind, units: PageUnits): ToldApart {
  return tellingApart(pair, units.speed, kind);
}

/** An angle beside its limit, rad. */
export function anglesApart(pair: BesideLimit, kind: LimitKind): ToldApart {
  return tellingApart(pair, '°', kind);
}

/** Multiple of the stall speed: a margin, never rounded up, beside the least one. */
export function marginsApart(value: number, least: number): ToldApart {
  return tellingApart({ value, limit: least }, 'times', 'least', { value: 'margin' });
}
