import type { Component } from '../src/lesson/component.ts';
import { air } from './air/air.ts';
import { aircraft } from './aircraft/aircraft.ts';
import { aircraftFigures } from './aircraft-figures/aircraft-figures.ts';
import { caution } from './caution/caution.ts';
import { checklist } from './checklist/checklist.ts';
import type { PacketContext } from './context.ts';
import { debrief } from './debrief/debrief.ts';
import { elements } from './elements/elements.ts';
import { equipment } from './equipment/equipment.ts';
import { exercises } from './exercises/exercises.ts';
import { faults } from './faults/faults.ts';
import { finalSight } from './final-sight/final-sight.ts';
import { forClass, forClassInSentence } from './for/for.ts';
import { gate } from './gate/gate.ts';
import { gates } from './gates/gates.ts';
import { ground } from './ground/ground.ts';
import { instructor } from './instructor/instructor.ts';
import { instructorActions } from './instructor-actions/instructor-actions.ts';
import { key } from './key/key.ts';
import { keys } from './keys/keys.ts';
import { kneeboard } from './kneeboard/kneeboard.ts';
import { objective } from './objective/objective.ts';
import { pattern } from './pattern/pattern.ts';
import { priorKnowledge } from './prior-knowledge/prior-knowledge.ts';
import { profile } from './profile/profile.ts';
import { reach } from './reach/reach.ts';
import { risks } from './risks/risks.ts';
import { roundOut } from './round-out/round-out.ts';
import { schedule } from './schedule/schedule.ts';
import { standards } from './standards/standards.ts';
import { student } from './student/student.ts';
import { studentActions } from './student-actions/student-actions.ts';
import { turn } from './turn/turn.ts';
import { turns } from './turns/turns.ts';
import { wind } from './wind/wind.ts';
import { windTable } from './wind-table/wind-table.ts';

/** Every directive of the lesson language. */
export const components: readonly Component<PacketContext>[] = [
  objective,
  priorKnowledge,
  equipment,
  schedule,
  elements,
  instructorActions,
  studentActions,
  risks,
  standards,
  caution,
  instructor,
  student,
  forClass,
  forClassInSentence,
  key,
  aircraft,
  wind,
  air,
  turn,
  gate,
  ground,
  keys,
  pattern,
  profile,
  reach,
  turns,
  finalSight,
  roundOut,
  gates,
  windTable,
  aircraftFigures,
  faults,
  checklist,
  kneeboard,
  exercises,
  debrief,
];
