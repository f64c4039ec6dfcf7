import type { Plan, PlanRequest } from '../../src/flight/terms/plan.ts';
import type { AirfieldFile } from '../../src/school/airfield.ts';
import type { PageUnits } from '../../src/words/figures/page-units.ts';
import type { PacketContext } from '../context.ts';
import type { Exercise } from './exercise.ts';

/** What questions are drawn from: the flight of the packet, and what else may be flown there. */
export interface QuestionSetting {
  readonly plan: Plan;
  readonly request: PlanRequest;
  readonly units: PageUnits;
  /** The airfield's own file; undefined for an airfield that is not of this school. */
  readonly airfield: AirfieldFile | undefined;
}

/** Draws one question. Undefined where this flight, or this draw, does not have what the question needs. */
export type Draw = (setting: QuestionSetting, random: () => number) => Exercise | undefined;

export function questionSetting({ plan, request, units, school }: PacketContext): QuestionSetting {
  const files = [...school.airfields.values()];
  const airfield =
    files.find((file) => file === request.airfield) ??
    files.find(({ name }) => name === request.airfield.name);
  return { plan, request, units, airfield };
}
