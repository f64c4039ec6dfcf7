import { z } from 'zod';
import { DirectiveError, defineComponent } from '../../src/lesson/component.ts';
import { aircraftClasses } from '../../src/school/aircraft-classes.ts';
import { someOfForm } from '../../src/school/written-form.ts';
import type { PacketContext } from '../context.ts';
import { needsContent } from '../lesson-part.ts';

const classes = z
  .string({ error: 'such as `class=weight-shift`, or `class="three-axis glider"` for several' })
  .transform((text) => text.split(/[\s,]+/).filter((name) => name !== ''))
  .pipe(
    z.array(z.enum(aircraftClasses)).min(1, { error: 'write a class of aircraft, such as `weight-shift`' }),
  )
  .describe('Whom the words are for')
  .meta({ ...someOfForm(aircraftClasses), sample: 'three-axis glider' });

const attributes = z.strictObject({ class: classes });
type Attributes = typeof attributes;

function isOfClass(use: { attributes: z.output<Attributes>; context: PacketContext }): boolean {
  return use.attributes.class.includes(use.context.plan.aircraft.class);
}

export const forClass = defineComponent<PacketContext, Attributes>({
  name: 'for',
  form: 'container',
  summary: 'Text only for aircraft of some classes.',
  attributes,
  example: ':::for{class="weight-shift three-axis"}\nThe wing tells you its speed.\n:::',
  isFor: isOfClass,
  render: ({ children }) => [...needsContent('for', children)],
});

export const forClassInSentence = defineComponent<PacketContext, Attributes>({
  name: 'for',
  form: 'text',
  summary: 'Words only for aircraft of some classes.',
  attributes,
  holdsText: true,
  example: ':for[Ease the bar in.]{class=weight-shift}:for[Lower the nose.]{class="three-axis glider"}',
  isFor: isOfClass,
  render: ({ children }) => {
    if (children.length > 0) return children;
    throw new DirectiveError('`for` holds no words: write them in its brackets, `:for[the bar]{class=…}`');
  },
});
