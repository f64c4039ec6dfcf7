import type { Power } from './aircraft.ts';
import type { HeightOption } from './approach.ts';

/** What kind of number a range is for, in SI units or rad; `number` is a plain one. */
export type RangeOf =
  | 'airspeed'
  | 'wind'
  | 'sink'
  | 'height'
  | 'low-height'
  | 'length'
  | 'distance'
  | 'mass'
  | 'angle'
  | 'roll-rate'
  | 'temperature'
  | 'pressure'
  | 'number'
  | 'whole-number';

/** Why a request cannot be flown as asked: a code, with the figures that its words need. */
export type RequestReason =
  | { readonly code: 'out-of-range'; readonly of: RangeOf; readonly low: number; readonly high: number }
  | { readonly code: 'not-a-text' | 'not-yes-or-no' }
  | { readonly code: 'none-of'; readonly words: readonly string[] }
  | { readonly code: 'not-a-record'; readonly keys: readonly string[] }
  | { readonly code: 'not-a-list'; readonly least: number }
  | { readonly code: 'no-glide'; readonly aircraft: string; readonly power: Power }
  /** rad. */
  | { readonly code: 'bank-over-limit'; readonly bank: number; readonly limit: number }
  /** m/s. */
  | { readonly code: 'gust-under-wind'; readonly gust: number; readonly wind: number }
  | { readonly code: 'height-and-option'; readonly option: HeightOption }
  | { readonly code: 'speeds-not-rising' | 'glide-under-stall' | 'steep-under-stall' }
  | { readonly code: 'no-layers' }
  /** m: no layer is higher. */
  | { readonly code: 'layers-not-rising'; readonly highest: number }
  | { readonly code: 'calibration-not-rising' }
  | { readonly code: 'too-few-points' | 'sink-is-no-glide' | 'no-polar-fits' }
  /** The round-out leaves no speed to hold off, even in still air; or no pull is level before the ground. */
  | { readonly code: 'no-speed-to-hold-off' | 'no-pull-is-level' }
  | { readonly code: 'plan-misses-spot' };

/** A request that cannot be flown as asked: which field, and why. `words/refusals` makes a sentence of it. */
export class RequestError extends Error {
  override readonly name = 'RequestError';
  readonly field: string;
  readonly reason: RequestReason;

  constructor(field: string, reason: RequestReason) {
    super(`${field}: ${reason.code}`);
    this.field = field;
    this.reason = reason;
  }
}

/** The result; undefined where making it throws a RequestError. */
export function unlessRefused<Made>(make: () => Made): Made | undefined {
  try {
    return make();
  } catch (error) {
    if (error instanceof RequestError) return undefined;
    throw error;
  }
}
