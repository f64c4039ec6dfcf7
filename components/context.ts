import type { DrawingBoard } from '../src/drawing/drawing.ts';
import type { Plan } from '../src/flight/plan.ts';
import type { School } from '../src/school/school.ts';
import type { PageUnits } from '../src/units/page-units.ts';

/** What a packet is computed for: every directive draws its figures from here. */
export interface PacketContext {
  readonly plan: Plan;
  readonly school: School;
  readonly units: PageUnits;
  readonly board: DrawingBoard;
  /** mm: the room that the page gives a drawing, its caption not counted. */
  readonly drawingRoom: { readonly width: number; readonly height: number };
}
