import type { Element } from 'hast';
import { h } from 'hastscript';
import { grades } from '../../flight/terms/grade.ts';
import type { Plan } from '../../flight/terms/plan.ts';
import { cautionSentence } from '../../words/cautions/caution-words.ts';
import { cautionsOf } from '../../words/cautions/grade-sentences.ts';
import { gradeNames } from '../../words/cautions/grade-words.ts';
import { limitSource } from '../../words/cautions/limit-sources.ts';
import { capital } from '../../words/figures/letter-case.ts';
import type { PageUnits } from '../../words/figures/page-units.ts';
import type { DayAsked } from './day-asked.ts';

/** What is on the first page of every packet and cannot be left out, by a lesson or by a school. */
const standing = (aircraft: string, airfield: string) => [
  'This is training material. It does not replace instruction, and it is no permission to fly.',
  "The aircraft's own handbook, local rules and the instructor's judgement prevail over everything printed here.",
  `The figures are computed from the profile of ${aircraft} and the data of ${airfield} named on this page, for this wind and air only. How the figures were worked out stands at the end.`,
];

/** For one seat, where nobody can take over and the text speaks of an instructor's hand. */
const ofOneSeat = (aircraft: string) =>
  `${aircraft} has one seat: nobody can take over. Each exercise is learned first in a two-seater of its class, with an instructor. It is flown here only by a pilot signed off for it, briefed on the ground, with the instructor where the exercise can be seen, and on the radio, who answers a call and otherwise says one thing only: “Go around.” Where these pages speak of the instructor in the air, they mean the two-seater.`;

/** A flight, and what the school and its airfield have to say of every one. */
export interface CautionedFlight {
  readonly plan: Plan;
  readonly units: PageUnits;
  readonly school: { readonly cautions: readonly string[] };
  /** The airfield's local procedures. */
  readonly rules: readonly string[];
}

/**
 * The packet's caution block: the standing cautions, the day that the lesson asks for, what the flight itself showed, the
 * airfield's rules and the school's.
 */
export function packetCautions(
  { plan, units, school, rules }: CautionedFlight,
  day: DayAsked | undefined,
): Element {
  const { aircraft, airfield } = plan;
  const list = (lines: readonly string[]) =>
    h(
      'ul',
      lines.map((line) => h('li', line)),
    );
  const part = (heading: string, lines: readonly string[]) =>
    lines.length === 0 ? [] : [h('h3', heading), list(lines)];
  const flown = grades.flatMap((grade) =>
    cautionsOf(plan, grade).map((caution) =>
      h('li', [
        ...(grade === 'worth-knowing' ? [] : [h('strong', `${capital(gradeNames[grade])}: `)]),
        `${cautionSentence(caution, plan, units)} `,
        h('span', { class: 'from' }, `Limit: ${limitSource(caution, plan, units)}`),
      ]),
    ),
  );
  return h('section', { class: 'caution packet-cautions', ariaLabelledBy: 'cautions' }, [
    h('h2', { id: 'cautions' }, 'Cautions'),
    list([
      ...standing(aircraft.name, airfield.name),
      ...(aircraft.seats === 1 ? [ofOneSeat(aircraft.name)] : []),
    ]),
    ...(plan.made
      ? []
      : [
          h('p', [
            h('strong', 'As asked for, this approach does not reach the spot. It is not to be flown.'),
          ]),
        ]),
    ...(day === undefined
      ? []
      : [
          h('h3', 'The day this lesson asks for'),
          h('p', day.words),
          ...day.breaches.map(({ words }) => h('p', h('strong', words))),
        ]),
    ...(flown.length === 0 ? [] : [h('h3', 'Of this approach, as flown on paper'), h('ul', flown)]),
    ...part(`Local procedures at ${airfield.name}`, rules),
    ...part('The school asks', school.cautions),
  ]);
}
