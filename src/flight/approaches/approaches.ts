import type { Approach } from '../terms/approach.ts';
import { approach90 } from './approach-90.ts';
import { approach180 } from './approach-180.ts';
import { approach360 } from './approach-360.ts';
import type { ApproachMethod } from './approach-method.ts';
import { approachSpiral } from './approach-spiral.ts';

/** The table of approaches: a new one is a file of its own and a row here. */
export const approaches: Readonly<Record<Approach, ApproachMethod>> = {
  '90': approach90,
  '180': approach180,
  '360': approach360,
  spiral: approachSpiral,
};
