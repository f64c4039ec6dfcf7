import { z } from 'zod';
import type { KeyId } from '../../src/flight/terms/key.ts';
import type { KeyPosition, Plan } from '../../src/flight/terms/plan.ts';
import { DirectiveError, defineComponent } from '../../src/lesson/component.ts';
import { formatDistance, formatTime } from '../../src/words/figures/format.ts';
import type { PageUnits } from '../../src/words/figures/page-units.ts';
import { formatKeyHeight } from '../../src/words/keys/key-height.ts';
import { keyNames } from '../../src/words/keys/key-names.ts';
import { acrossWords, alongWords } from '../../src/words/keys/place-words.ts';
import { nameOf } from '../choice-of.ts';
import type { PacketContext } from '../context.ts';
import { flownFigure } from '../grade-mark.ts';
import { planKey } from '../plan-key.ts';

type Figure = (key: KeyPosition, plan: Plan, units: PageUnits) => string;

const figures = {
  height: (key, { cautions }, units) => formatKeyHeight(key, cautions, units),
  along: (key, _plan, units) => alongWords(key, units),
  across: (key, _plan, units) => acrossWords(key, units),
  distance: (key, _plan, units) => formatDistance(Math.hypot(key.along, key.across), units),
  time: (key, plan) => formatTime(key.time - (plan.track[0]?.time ?? 0)),
  'past-abeam': (key, _plan, units) => {
    if (key.id === 'base-turn') return formatDistance(-key.along, units);
    throw new DirectiveError(
      `\`past-abeam\` is a figure of \`base-turn\` alone; for \`${key.id}\` write \`show=along\` or \`show=distance\``,
    );
  },
  after: (key, plan) => {
    const seconds = key.time - planKey(plan, 'downwind-key').time;
    if (seconds >= 0) return formatTime(seconds);
    throw new DirectiveError(`\`${key.id}\` comes before the downwind key; write \`show=time\``);
  },
} satisfies Record<string, Figure>;

const meanings = {
  height: 'height above the spot',
  along: 'how far before the spot it lies, or past it, along the landing direction',
  across: 'how far to the left or right of the centreline it lies',
  distance: 'distance from the spot over the ground',
  time: 'time since the throttle closed or the engine stopped',
  'past-abeam': 'how far past abeam the spot the base turn begins; of `base-turn` alone',
  after: 'time after the downwind key',
} satisfies Record<keyof typeof figures, string>;

const attributes = z.strictObject({
  show: nameOf(figures, meanings).describe('Which figure of it').default('height'),
});

export const key = defineComponent<PacketContext, typeof attributes>({
  name: 'key',
  form: 'text',
  onScreen: 'made-again',
  summary: 'A figure of a key position: its height, where it lies, when it is passed.',
  attributes,
  label: nameOf(keyNames),
  example: ':key[downwind-key]{show=height}',
  render: ({ label, attributes: { show }, context: { plan, units } }) => {
    const figure: Figure = figures[show];
    return flownFigure(figure(planKey(plan, label as KeyId), plan, units), plan);
  },
});
