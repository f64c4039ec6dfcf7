import type { GroundPoint, Position } from '../../flight/flying/reach.ts';
import type { Plan, WindAtHeight } from '../../flight/terms/plan.ts';
import type { ReachField } from './reach-ground.ts';

/** What is drawn: a glide that begins at a place of the plan, and the ground that it reaches. */
export interface ReachScene {
  readonly plan: Plan;
  readonly from: Position;
  /** The name of the place: `Downwind key`. */
  readonly label: string;
  /** rad, of the turns. */
  readonly bank: number;
  /** The wind at the height of the place. */
  readonly aloft: WindAtHeight;
  /** A closed ring, m in the spot frame. */
  readonly outline: readonly GroundPoint[];
  readonly fields: readonly ReachField[];
  /** What the text says about fields that cannot be drawn. */
  readonly elsewhere?: string | undefined;
}
