import type { FaultChange, FaultKind } from '../terms/fault.ts';
import type { FaultMethod, MadeOn } from './fault-method.ts';
import { baseDrift } from './kinds/base-drift.ts';
import { baseTurn } from './kinds/base-turn.ts';
import { baseTurnAsInStillAir } from './kinds/base-turn-as-in-still-air.ts';
import { finalHeight } from './kinds/final-height.ts';
import { finalSpeed } from './kinds/final-speed.ts';
import { finalTurnBank } from './kinds/final-turn-bank.ts';
import { glideSpeed } from './kinds/glide-speed.ts';
import { glideSpeedWandering } from './kinds/glide-speed-wandering.ts';
import { mass } from './kinds/mass.ts';
import { powerStopped } from './kinds/power-stopped.ts';
import { roundOutHeight } from './kinds/round-out-height.ts';
import { roundOutLoadFactor } from './kinds/round-out-load-factor.ts';
import { roundOutSpeed } from './kinds/round-out-speed.ts';
import { spacing } from './kinds/spacing.ts';
import { startSpeed } from './kinds/start-speed.ts';
import { throttle } from './kinds/throttle.ts';
import { touchdownDrift } from './kinds/touchdown-drift.ts';
import { touchdownSpeed } from './kinds/touchdown-speed.ts';
import { wind } from './kinds/wind.ts';

/** The table of faults: a new one is a file of its own in `kinds` and its row here. */
export const faultMethods: { readonly [Kind in FaultKind]: FaultMethod<Kind> } = {
  spacing,
  'base-turn': baseTurn,
  'base-turn-as-in-still-air': baseTurnAsInStillAir,
  wind,
  'base-drift': baseDrift,
  'glide-speed': glideSpeed,
  'glide-speed-wandering': glideSpeedWandering,
  'final-turn-bank': finalTurnBank,
  throttle,
  'start-speed': startSpeed,
  mass,
  'power-stopped': powerStopped,
  'final-speed': finalSpeed,
  'final-height': finalHeight,
  'round-out-speed': roundOutSpeed,
  'round-out-height': roundOutHeight,
  'round-out-load-factor': roundOutLoadFactor,
  'touchdown-speed': touchdownSpeed,
  'touchdown-drift': touchdownDrift,
};

/** Where on the approach a fault is made. */
export function madeOn({ kind }: FaultChange): MadeOn {
  return faultMethods[kind].madeOn;
}

/** A fault of the last seconds: no key comes after it, and it is put right in the landing alone. */
export function isInTheLanding(change: FaultChange): boolean {
  return madeOn(change) === 'landing';
}
