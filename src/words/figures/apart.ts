import { metresPerFoot } from '../../units/factors.ts';
import type { PageUnits } from './page-units.ts';
import { type LimitKind, type ToldApart, tellingApart } from './telling-apart.ts';

type Choices = NonNullable<Parameters<typeof tellingApart>[4]>;

/** m. Heights below this are given to a foot or a decimetre, as low heights are everywhere. */
const low = 50 * metresPerFoot;

/** A height beside its limit, m, in the unit of the page. See `tellingApart`. */
export function heightsApart(
  value: number,
  limit: number,
  kind: LimitKind,
  units: PageUnits,
  choices: Choices = {},
): ToldApart {
  const isLow = Math.min(Math.abs(value), Math.abs(limit)) < low;
  const step = units.height === 'm' ? { step: isLow ? 0.1 : 5 } : {};
  return tellingApart(value, limit, units.height, kind, { ...step, ...choices });
}

/** A distance beside its limit, m, in the unit of the page. */
export function distancesApart(
  value: number,
  limit: number,
  kind: LimitKind,
  units: PageUnits,
  choices: Choices = {},
): ToldApart {
  const step = units.distance === 'ft' ? { step: 50 } : {};
  return tellingApart(value, limit, units.distance, kind, { ...step, ...choices });
}

/** A speed beside its limit, m/s, in the unit of the page. */
export function speedsApart(value: number, limit: number, kind: LimitKind, units: PageUnits): ToldApart {
  return tellingApart(value, limit, units.speed, kind);
}

/** An angle beside its limit, rad. */
export function anglesApart(value: number, limit: number, kind: LimitKind): ToldApart {
  return tellingApart(value, limit, '°', kind);
}

/** Multiple of the stall speed: a margin, never rounded up, beside the least one. */
export function marginsApart(value: number, least: number): ToldApart {
  return tellingApart(value, least, 'times', 'least', { value: 'margin' });
}
