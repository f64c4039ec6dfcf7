import { indicatedSpeed } from '../../src/flight/aircraft/calibration.ts';
import { speedAtMass } from '../../src/flight/aircraft/glide.ts';
import { usualTailwind } from '../../src/flight/plan/cautions/wind-cautions.ts';
import type { BestGlide } from '../../src/flight/terms/aircraft.ts';
import type { Plan } from '../../src/flight/terms/plan.ts';
import { formatAngle } from '../../src/units/angle-text.ts';
import { metresPerSecondPerFootPerMinute } from '../../src/units/factors.ts';
import { numberText } from '../../src/units/rounding.ts';
import {
  formatDistance,
  formatHeight,
  formatLowHeight,
  formatMass,
  formatRatio,
  formatSink,
  formatSpeed,
} from '../../src/words/figures/format.ts';
import type { PageUnits } from '../../src/words/figures/page-units.ts';
import {
  formatMassLimit,
  formatMostAngle,
  formatMostSpeed,
  formatSafeDistance,
} from '../../src/words/figures/safe-rounding.ts';

/** A speed at the mass it is given for, and at the mass flown. */
export interface SpeedRow {
  readonly name: string;
  readonly given: string;
  readonly now: string;
}

/** Indicated speeds; they go with the square root of the mass. */
export function speedRows({ aircraft, flown }: Plan, units: PageUnits): SpeedRow[] {
  const { speeds, glide, steepApproach, flap } = aircraft;
  const row = (name: string, eas: number | undefined, flapAt: string | undefined): SpeedRow[] => {
    if (eas === undefined) return [];
    const shown = (speed: number) => formatSpeed(indicatedSpeed(speed, aircraft), units);
    const named = flapAt === undefined ? name : `${name}, flap ${flapAt}`;
    return [{ name: named, given: shown(eas), now: shown(speedAtMass(eas, aircraft, flown.mass)) }];
  };
  return [
    ...row('Stall, wings level', speeds.stall, flap?.stall),
    ...row('Touchdown', speeds.touchdown, flap?.touchdown),
    ...row('Approach', speeds.approach, flap?.approach),
    ...row('Best glide, engine idling', glide.idle.speed, flap?.glide),
    ...row('Best glide, engine stopped', glide.stopped?.speed, flap?.glide),
    ...row('Steep approach', steepApproach?.speed, flap?.steepApproach),
  ];
}

export interface OtherRow {
  readonly name: string;
  readonly value: string;
}

/** What does not change with the mass. */
export function otherRows({ aircraft }: Plan, units: PageUnits): OtherRow[] {
  const { mass, glide, steepApproach, turns, roundOut, limits, pattern } = aircraft;
  const has = <T>(value: T | undefined, row: (value: T) => OtherRow): OtherRow[] =>
    value === undefined ? [] : [row(value)];
  return [
    { name: 'Glide ratio, engine idling', value: ratioWords(glide.idle, units) },
    ...has(glide.stopped, (stopped) => ({
      name: 'Glide ratio, engine stopped',
      value: ratioWords(stopped, units),
    })),
    ...has(steepApproach, ({ ratio }) => ({ name: 'Steep approach, ratio', value: formatRatio(ratio) })),
    { name: 'Planned bank', value: formatAngle(turns.bank) },
    { name: 'Most bank allowed', value: formatMostAngle(turns.limit) },
    { name: 'Rate of roll', value: `${formatAngle(turns.rollRate)} a second` },
    {
      name: 'Round-out',
      value: `begins at ${formatLowHeight(roundOut.height, units)}, at a load factor of ${numberText(roundOut.loadFactor, 0.01)}`,
    },
    {
      name: 'Landing roll',
      value: `${formatSafeDistance(aircraft.landingRoll, 'up', units)}, as given for a calm, standard air at sea level and ${formatMass(mass.reference)}`,
    },
    ...has(mass.most, (most) => ({ name: 'Most mass', value: formatMassLimit(most, 'most') })),
    ...has(mass.least, (least) => ({ name: 'Least mass', value: formatMassLimit(least, 'least') })),
    { name: 'Most wind', value: formatMostSpeed(limits.wind, units) },
    { name: 'Most crosswind', value: formatMostSpeed(limits.crosswind, units) },
    {
      name: 'Most tailwind',
      value:
        limits.tailwind === undefined
          ? `no figure of its own; ${formatMostSpeed(usualTailwind, units)} is taken`
          : formatMostSpeed(limits.tailwind, units),
    },
    ...has(pattern?.height, (height) => ({ name: 'Own pattern height', value: formatHeight(height, units) })),
    ...has(pattern?.spacing, (spacing) => ({
      name: 'Own downwind spacing',
      value: formatDistance(spacing, units),
    })),
  ];
}

/** A fitted glide says how closely it matches what was measured, and never that it matches without error. */
function ratioWords({ ratio, residual }: BestGlide, units: PageUnits): string {
  if (residual === undefined) return formatRatio(ratio);
  const step = units.height === 'ft' ? 10 * metresPerSecondPerFootPerMinute : 0.1;
  const within = Math.max(1, Math.ceil(residual / step - 1e-9)) * step;
  return `${formatRatio(ratio)}, fitted to measured points, which it meets within ${formatSink(within, units)} (root mean square)`;
}
