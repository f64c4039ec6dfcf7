import { z } from 'zod';
import { aircraftClasses } from '../../src/flight/terms/aircraft-class.ts';
import { DirectiveError, defineComponent } from '../../src/lesson/component.ts';
import { someOfForm } from '../../src/school/written-form.ts';
import type { PacketContext } from '../context.ts';
import { needsContent } from '../lesson-part.ts';

const classes = z
  .string()
  .transform((text) => text.split(/[\s,]+/).filter((name) => name !== ''))
  .pipe(
    z.array(z.enum(aircraftClasses)).min(1, { error: 'write a class of aircraft, such as `weight-shift`' }),
  )
  .describe('Classes of aircraft that the words are for; left out, all')
  .meta({ ...someOfForm(aircraftClasses), sample: 'three-axis glider' });

const attributes = z
  .strictObject({
    class: classes.optional(),
    seats: z
      .enum(['1', '2'])
      .describe('Whether the words are for one seat, or for two and more; left out, for any')
      .optional(),
  })
  .refine((given) => given.class !== undefined || given.seats !== undefined, {
    path: ['class'],
    error: 'such as `class=weight-shift`, `class="three-axis glider"` for several, or `seats=1`',
  });
type Attributes = typeof attributes;

function isForAircraft(use: { attributes: z.output<Attributes>; context: PacketContext }): boolean {
  const { class: of, seats = 2 } = use.context.plan.aircraft;
  const { class: classes, seats: asked } = use.attributes;
  return (classes?.includes(of) ?? true) && (asked === undefined || (asked === '1') === (seats === 1));
}

export const forAircraft = defineComponent<PacketContext, Attributes>({
  name: 'for',
  form: 'container',
  summary: 'Text only for aircraft of some classes, or of one seat or more.',
  attributes,
  example: ':::for{class="weight-shift three-axis"}\nThe wing tells you its speed.\n:::',
  isFor: isForAircraft,
  render: ({ children }) => [...needsContent('for', children)],
});

export const forAircraftInSentence = defineComponent<PacketContext, Attributes>({
  name: 'for',
  form: 'text',
  summary: 'Words only for aircraft of some classes, or of one seat or more.',
  attributes,
  holdsText: true,
  example: ':for[Ease the bar in.]{class=weight-shift}:for[Lower the nose.]{class="three-axis glider"}',
  isFor: isForAircraft,
  render: ({ children }) => {
    if (children.length > 0) return children;
    throw new DirectiveError('`for` holds no words: write them in its brackets, `:for[the bar]{class=…}`');
  },
});
