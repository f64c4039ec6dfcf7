import type { Edition, PacketContext } from '../../../components/context.ts';
import type { Approach } from '../../flight/terms/approach.ts';
import type { FrontMatter } from '../../lesson/front-matter.ts';
import type { School } from '../../school/school.ts';
import { type PaperName, papers } from '../paper/paper.ts';
import { schoolFor } from '../printing/packet-key.ts';
import { packetContext } from './packet-context.ts';
import { type Choices, planOf, scenarioOf } from './scenario.ts';

/** What a page is worked out for. SI units and radians, directions true; what is left out comes from the school's defaults. */
export interface PageRequest extends Choices {
  readonly school: School;
  /** One of the school's fleet: the name of a file in `fleet/`, without `.yaml`. */
  readonly aircraft?: string | undefined;
  readonly approach?: Approach | undefined;
  /** m above the spot at the start. Default: as for `PlanRequest`. */
  readonly height?: number | undefined;
  /** m from the centreline to the downwind leg. Default: the aircraft's pattern, else the airfield's. */
  readonly spacing?: number | undefined;
  /** rad. Default: the aircraft's planned bank. */
  readonly bank?: number | undefined;
  /** With `not-to-be-flown`, a page is made even of a plan that is not to be flown: the page must then say so (`pageCautions`). */
  readonly shows?: 'not-to-be-flown' | undefined;
  /** Default: the student's. */
  readonly edition?: Edition | undefined;
  /** How wide a drawing may be. Default: the school's paper. */
  readonly paper?: PaperName | undefined;
}

/**
 * Flies an approach and gives what the directives of a page take their figures from: the same flight, in the same units,
 * as a lesson's packet for this setting. For a plan of your own: `{ ...context, request, plan: planApproach(request) }`.
 *
 * @throws ScenarioError where the school has no such aircraft, airfield or runway, or where the approach cannot be flown
 * as asked: `key` says which field of the request is wrong, and the message what would be right.
 * @throws NotToBeFlownError (a ScenarioError) where the plan is not to be flown and `shows` does not say so, or where the
 * spot is not made, whatever `shows` says.
 */
export function contextFor(asked: PageRequest): PacketContext {
  const {
    school,
    aircraft = school.defaults.aircraft,
    edition = 'student',
    paper = school.paper,
    ...flight
  } = asked;
  const { approach = school.defaults.approach, height, spacing, bank, shows, ...choices } = flight;
  const lesson: FrontMatter = { title: 'Page', approach, height, spacing, bank, shows };
  const scenario = scenarioOf(school, lesson, aircraft, choices);
  return packetContext(
    schoolFor(school, aircraft),
    { request: scenario.request, plan: planOf(scenario) },
    edition,
    papers[paper],
  );
}
