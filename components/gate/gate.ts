import { z } from 'zod';
import type { KeyId } from '../../src/flight/terms/key.ts';
import { DirectiveError, defineComponent } from '../../src/lesson/component.ts';
import { nameList } from '../../src/lesson/directive-form.ts';
import { type BandEdge, edgeText, gateBand } from '../../src/words/gates/gate-band.ts';
import { formatKeyHeight } from '../../src/words/keys/key-height.ts';
import type { PacketContext } from '../context.ts';
import { flownFigure } from '../grade-mark.ts';
import { planKey } from '../plan-key.ts';

const attributes = z.strictObject({
  edge: z
    .enum(['low', 'high'], { error: 'write `edge=low` or `edge=high`' })
    .describe('The lowest height of the band, or the highest'),
});

export const gate = defineComponent<PacketContext, typeof attributes>({
  name: 'gate',
  form: 'text',
  onScreen: 'made-again',
  summary:
    'An edge of the band of heights at a key position from which the spot is still made; the low edge is rounded up, ' +
    'the high one down; in words where there is none.',
  attributes,
  label: z.enum(['downwind-key', 'base-key', 'final']),
  example: ':gate[downwind-key]{edge=low}',
  render: ({ label, attributes: { edge }, context: { plan, units } }) => {
    const at = planKey(plan, label as KeyId);
    const found = plan.gates.find((each) => each.at === at.id);
    if (!found) {
      const there = plan.gates.map((each) => each.at);
      const instead = there.length > 0 ? `there are gates at ${nameList(there)}` : 'this flight has no gates';
      throw new DirectiveError(`There is no gate at \`${label}\`: ${instead}`);
    }
    // A packet for another wind must not fail because of a figure that its author could not foresee: it says that
    // there is none.
    const band = gateBand(found, units);
    return flownFigure(band.none === undefined ? words(band[edge]) : 'none, there is no band', plan);

    function words(printed: BandEdge): string {
      if (printed === 'open') return 'no sound height was found';
      return printed === 'plan'
        ? `the plan, ${formatKeyHeight(at, plan.cautions, units)}`
        : edgeText(printed, units);
    }
  },
});
