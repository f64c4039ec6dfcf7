import type { Plan } from '../../flight/terms/plan.ts';
import { metresPerFoot } from '../../units/factors.ts';
import { settingName } from '../../words/cautions/grade-sentences.ts';
import type { PageUnits } from '../../words/figures/page-units.ts';
import { formatLeastHeight, roundEdge } from '../../words/figures/safe-rounding.ts';
import { gateBand } from '../../words/gates/gate-band.ts';
import { inHandBelow } from '../../words/gates/in-hand.ts';
import { keyNames } from '../../words/keys/key-names.ts';
import type { PlanMessage } from './say-of-plan.ts';

/** m. A plan that begins nearer than this to the floor of its band has no height to lose; a figure of ours, no source. */
const leastInHand = 50 * metresPerFoot;

/** A warning where a plan begins, at its first key with a gate, near the floor of the band or under it. */
export function inHandMessages(plan: Plan, units: PageUnits): PlanMessage[] {
  const [first] = plan.gates;
  // A plan that is not to be flown is reported as such, and on final there is no beginning higher.
  if (first === undefined || first.at === 'final' || plan.grade === 'not-to-be-flown') return [];
  const inHand = inHandBelow(first, plan.cautions, units);
  const least = roundEdge(leastInHand, 'low', units);
  const isNear = inHand ? inHand.height < least - 1e-6 : isFloor(plan, units);
  if (!isNear) return [];
  const place = `the floor of its band at the ${keyNames[first.at].toLowerCase()}`;
  const words =
    inHand === undefined || inHand.height === 0
      ? `stands at ${place}`
      : inHand.height < 0
        ? `stands below ${place}, by ${inHand.text}`
        : `stands near ${place}, ${inHand.text} above it`;
  return [
    {
      severity: 'warning',
      rule: 'in-hand',
      words: `${settingName(plan, units)}: the plan ${words}. Begin higher: ${formatLeastHeight(leastInHand, units)} in hand is the least, a figure of ours, no source`,
      keys: ['height', 'approach'],
    },
  ];
}

/** Whether the first band ends at the plan itself. */
function isFloor({ gates }: Plan, units: PageUnits): boolean {
  const band = gateBand(gates[0]!, units);
  return band.none === undefined && band.low === 'plan';
}
