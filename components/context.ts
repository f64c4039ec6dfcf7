import type { DrawingBoard } from '../src/drawing/kit/drawing.ts';
import type { Plan, PlanRequest } from '../src/flight/terms/plan.ts';
import type { School } from '../src/school/school.ts';
import type { PageUnits } from '../src/words/figures/page-units.ts';

/** Whom a packet is printed for: the instructor's has notes and answers in its margin. */
export type Edition = 'instructor' | 'student';

/** What a packet is computed for: every directive draws its figures from here. */
export interface PacketContext {
  readonly plan: Plan;
  /** What the plan was asked for: a directive that flies more flights asks for the same with one thing changed. */
  readonly request: PlanRequest;
  readonly school: School;
  readonly units: PageUnits;
  readonly edition: Edition;
  readonly board: DrawingBoard;
  /** mm: the room that the page gives a drawing, without its caption. */
  readonly drawingRoom: { readonly width: number; readonly height: number };
}
