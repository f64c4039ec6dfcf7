/**
 * The parts of a lesson plan, in their order, each with its heading on the page: those that the Aviation Instructor's
 * Handbook (FAA-H-8083-9, the chapter on planning instruction) asks for (from memory), and the risks of the flight.
 */
export const planParts = {
  objective: 'Objective',
  'prior-knowledge': 'Prior knowledge',
  equipment: 'Equipment',
  schedule: 'Schedule',
  elements: 'Elements',
  'instructor-actions': 'What the instructor does',
  'student-actions': 'What the student does',
  risks: 'Risks and how they are managed',
  standards: 'Completion standards',
} as const;

export type PlanPart = keyof typeof planParts;
