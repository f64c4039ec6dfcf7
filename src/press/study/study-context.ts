import type { PacketContext } from '../../../components/context.ts';
import type { DrawingBoard } from '../../drawing/kit/drawing.ts';
import type { Plan, PlanRequest } from '../../flight/terms/plan.ts';
import type { School } from '../../school/school.ts';
import type { StudyData, StudySchool } from './study-data.ts';

/** The school as the directives know it, without anything that a page does not need. */
export function schoolOf({ fleet, airfields, faults, ...settings }: StudySchool): School {
  const school: Omit<School, 'defaults' | 'handbook' | 'paper' | 'source'> = {
    ...settings,
    folder: '',
    fleet: new Map(fleet),
    airfields: new Map(airfields),
    faults: new Map(faults),
    aircraftIds: fleet.map(([id]) => id),
    airfieldIds: airfields.map(([id]) => id),
    lessonIds: [],
  };
  return school as School;
}

/** What directives are rendered from in the page, for any setting of it. */
export function contextMaker(data: StudyData, board: DrawingBoard) {
  const school = schoolOf(data.school);
  const { edition, drawingRoom } = data;
  return (request: PlanRequest, plan: Plan): PacketContext => ({
    request,
    plan,
    school,
    units: school.units,
    edition,
    board,
    drawingRoom,
  });
}
