import { h } from 'hastscript';
import { z } from 'zod';
import { approaches } from '../../src/flight/approaches/approaches.ts';
import type { Plan, TrackSample } from '../../src/flight/terms/plan.ts';
import { captionNumber } from '../../src/lesson/captions.ts';
import { DirectiveError, defineComponent } from '../../src/lesson/component.ts';
import { formatAngle } from '../../src/units/angle-text.ts';
import { approachWords, sourceWords } from '../../src/words/approaches/approach-words.ts';
import { formatHeight, formatSpeed } from '../../src/words/figures/format.ts';
import type { PacketContext } from '../context.ts';

export const circleBanks = defineComponent<PacketContext, z.ZodType>({
  name: 'circle-banks',
  form: 'leaf',
  onScreen: 'made-again',
  isOfTheFlight: true,
  summary: 'A table of the bank, the groundspeed and the height at each eighth of the circle of a 360.',
  attributes: z.strictObject({}),
  example: '::circle-banks',
  render: ({ ordinal, context: { plan, units } }) => {
    if (!approaches[plan.approach].isOneCircle) {
      throw new DirectiveError(
        'Only the 360 is a circle held on the ground: take `::circle-banks` out, or fly `approach: "360"`',
      );
    }
    const number = { scope: 'col', className: ['number'] };
    return [
      h('table', { className: ['circle-banks'], id: `circle-banks-${ordinal}` }, [
        h('caption', [
          captionNumber('Table'),
          ` The bank round the circle, ${approachWords(plan)}. Heights are above the spot. The wings come level for downwind and for final.`,
        ]),
        h('thead', [
          h('tr', [
            h('th', { scope: 'col' }, 'Where'),
            h('th', number, 'Bank'),
            h('th', number, 'Groundspeed'),
            h('th', number, 'Height'),
          ]),
        ]),
        h(
          'tbody',
          eighthsOf(plan).map(({ where, at }) =>
            h('tr', [
              h('th', { scope: 'row' }, where),
              ...[
                formatAngle(Math.abs(at.bank)),
                formatSpeed(at.groundspeed, units),
                formatHeight(at.height, units),
              ].map((figure) => h('td', { className: ['number'] }, figure)),
            ]),
          ),
        ),
      ]),
      h('p', { className: ['source'] }, sourceWords(plan, units)),
    ];
  },
});

const quarter = Math.PI / 2;

/**
 * Where the track over the ground has turned this far from the landing direction; the wings are level between the
 * halves.
 */
const eighths = [
  ['First half, an eighth round', quarter / 2],
  ['a quarter round, across the runway', quarter],
  ['three eighths round', 1.5 * quarter],
  ['Second half, five eighths round', 2.5 * quarter],
  ['three quarters round, at the base key', 3 * quarter],
  ['seven eighths round', 3.5 * quarter],
] as const;

/** The sample nearest to each of them. */
export function eighthsOf({ track }: Pick<Plan, 'track'>): { where: string; at: TrackSample }[] {
  const turned = turnedAlong(track);
  return eighths.map(([where, by]) => {
    const near = (i: number) => Math.abs(turned[i]! - by);
    const nearest = turned.reduce((best, _, i) => (near(i) < near(best) ? i : best), 0);
    return { where, at: track[nearest]! };
  });
}

/** rad by which the track over the ground has turned since the first sample, to either side; one for each sample. */
function turnedAlong(track: readonly TrackSample[]): number[] {
  let last = 0;
  let turned = 0;
  return track.map((sample, i) => {
    const before = track[i - 1];
    const moved = before && Math.hypot(sample.along - before.along, sample.across - before.across);
    if (!before || !moved) return Math.abs(turned);
    const course = Math.atan2(sample.across - before.across, sample.along - before.along);
    const change = course - last;
    turned += Math.atan2(Math.sin(change), Math.cos(change));
    last = course;
    return Math.abs(turned);
  });
}
