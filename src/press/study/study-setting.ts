import type { Power } from '../../flight/terms/aircraft.ts';
import type { Plan, PlanRequest } from '../../flight/terms/plan.ts';
import { radiansPerDegree } from '../../units/factors.ts';
import { roundTo } from '../../units/rounding.ts';
import { approachNames } from '../../words/approaches/approach-names.ts';
import type { PageUnits } from '../../words/figures/page-units.ts';
import { heightUnitSize, speedUnitSize } from '../../words/figures/unit-size.ts';

/** What the student has set, in the units of the page: degrees true, kt or km/h or mph, ft or m. */
export interface Setting {
  readonly direction: number;
  readonly speed: number;
  readonly height: number;
  readonly power: Power;
}

/** A number that can be moved; `printed` is the packet's own, as it is shown. */
export interface Dial {
  readonly label: string;
  readonly unit: string;
  readonly printed: number;
  readonly least: number;
  readonly most: number;
  /** The step of the number and of the slider. Both include the printed value. */
  readonly step: number;
  readonly stride: number;
}

export interface Dials {
  readonly direction: Dial;
  readonly speed: Dial;
  readonly height: Dial;
}

export function isSettable(value: number, { least, most }: Dial): boolean {
  return value >= least && value <= most;
}

/** The printed value takes the place of what is not a number. */
export function nearestSettable(value: number, { least, most, printed }: Dial): number {
  return Number.isNaN(value) ? printed : Math.min(most, Math.max(least, value));
}

/** The heights from which the core flies at all, m. */
const heights = { least: 60, most: 1500 };
/** How far over the aircraft's limit a speed can be set, to see what the core says about it. */
const beyondLimit = 5;

/** What can be moved in the printed setting, and how far. */
export function dialsOf({ request, plan }: Printed, units: PageUnits): Dials {
  const degrees = roundTo(request.wind.from / radiansPerDegree, 1) % 360;
  const least = degrees % 10 || 10;
  const speed = speedUnitSize(units);
  const height = heightUnitSize(units);
  const [step, stride] = units.height === 'ft' ? [10, 50] : [5, 10];
  const start = roundTo(plan.flown.height / height, step);
  const lowest = Math.max(start * 0.4, heights.least / height);
  return {
    direction: {
      label: 'Wind from',
      unit: '° true',
      printed: degrees === 0 ? 360 : degrees,
      least,
      most: least + 350,
      step: 10,
      stride: 10,
    },
    speed: {
      label: 'Wind speed',
      unit: units.speed,
      printed: roundTo(request.wind.speed / speed, 1),
      least: 0,
      most: Math.ceil(Math.max(request.aircraft.limits.wind, request.wind.speed) / speed) + beyondLimit,
      step: 1,
      stride: 1,
    },
    height: {
      label: approachNames[request.approach].startHeight,
      unit: units.height,
      printed: start,
      // From the printed height down in whole strides, so that the slider includes it.
      least: start - Math.floor((start - lowest) / stride) * stride,
      most: Math.min(start * 2, Math.floor(heights.most / height / step) * step),
      step,
      stride,
    },
  };
}

/** The packet's own flight. */
export interface Printed {
  readonly request: PlanRequest;
  readonly plan: Plan;
}

export function printedSetting({ direction, speed, height }: Dials, request: PlanRequest): Setting {
  return {
    direction: direction.printed,
    speed: speed.printed,
    height: height.printed,
    power: request.power,
  };
}

export function isSame(one: Setting, other: Setting): boolean {
  return (
    one.direction === other.direction &&
    one.speed === other.speed &&
    one.height === other.height &&
    one.power === other.power
  );
}

/**
 * The packet's request with what was moved put in; the rest stays as it was asked for, to the last digit. Gusts stay
 * as much above the wind as they were.
 */
export function requestFor(
  setting: Setting,
  printed: PlanRequest,
  dials: Dials,
  units: PageUnits,
): PlanRequest {
  const { wind, gust } = printed;
  const from =
    setting.direction === dials.direction.printed ? wind.from : (setting.direction % 360) * radiansPerDegree;
  const speed = setting.speed === dials.speed.printed ? wind.speed : setting.speed * speedUnitSize(units);
  return {
    ...printed,
    wind: { from, speed },
    ...(gust === undefined ? {} : { gust: gust - wind.speed + speed }),
    ...(setting.height === dials.height.printed ? {} : { height: setting.height * heightUnitSize(units) }),
    power: setting.power,
  };
}

/** Winds given for each height cannot be changed to another wind. */
export function canMoveWind({ windProfile }: PlanRequest): boolean {
  return windProfile !== 'layers';
}
