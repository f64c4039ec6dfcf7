import type { Component } from '../src/lesson/component.ts';
import { air } from './air/air.ts';
import { aircraft } from './aircraft/aircraft.ts';
import { aircraftFigures } from './aircraft-figures/aircraft-figures.ts';
import { caution } from './caution/caution.ts';
import { checklist } from './checklist/checklist.ts';
import { circleBanks } from './circle-banks/circle-banks.ts';
import type { PacketContext } from './context.ts';
import { debrief } from './debrief/debrief.ts';
import { elements } from './elements/elements.ts';
import { equipment } from './equipment/equipment.ts';
import { exercises } from './exercises/exercises.ts';
import { faults } from './faults/faults.ts';
import { finalSight } from './final-sight/final-sight.ts';
import { forAircraft, forAircraftInSentence } from './for/for.ts';
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

/** Directives that an author looks for together. */
export interface DirectiveGroup {
  readonly title: string;
  /** What they are for, in a sentence or two. */
  readonly about: string;
  readonly components: readonly Component<PacketContext>[];
}

/** Every directive of the lesson language, in the groups of the author's reference page. */
export const groups: readonly DirectiveGroup[] = [
  {
    title: 'Parts of the lesson plan',
    about:
      'Each prints a section under its standard heading. `chalkwing check` names those that a lesson leaves out.',
    components: [
      objective,
      priorKnowledge,
      equipment,
      schedule,
      elements,
      instructorActions,
      studentActions,
      risks,
      standards,
    ],
  },
  {
    title: 'Warnings',
    about: "They stand where they are written. The packet's own page of cautions comes by itself.",
    components: [caution],
  },
  {
    title: 'Words for some readers',
    about:
      'One lesson serves both editions and every class of aircraft; these hold what is for some of them alone.',
    components: [instructor, student, forAircraft, forAircraftInSentence],
  },
  {
    title: 'Figures in a sentence',
    about:
      "Each becomes a figure in the school's own units, worked out for the aircraft, the runway and the wind of the packet and rounded to the safe side where it has one. Never type such a figure by hand: the next packet would print it unchanged.",
    components: [key, aircraft, wind, air, turn, gate, ground],
  },
  {
    title: 'Drawings',
    about: 'All are to scale, with a caption, a scale, and a line that says what they were computed for.',
    components: [pattern, profile, reach, turns, finalSight, roundOut],
  },
  {
    title: 'Tables',
    about: 'Computed for the packet, as the drawings are.',
    components: [keys, gates, circleBanks, windTable, aircraftFigures, faults],
  },
  {
    title: 'Practice',
    about:
      'Questions about this aircraft on this field in this wind, whose answers can be checked by flying.',
    components: [exercises],
  },
  {
    title: 'In the cockpit',
    about: 'Pages to take along.',
    components: [checklist, kneeboard],
  },
  {
    title: 'After the flight',
    about: 'Forms to fill in together.',
    components: [debrief],
  },
];

/** Every directive of the lesson language. */
export const components: readonly Component<PacketContext>[] = groups.flatMap((group) => group.components);
