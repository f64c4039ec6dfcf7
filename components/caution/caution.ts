import { h } from 'hastscript';
import { z } from 'zod';
import { defineComponent } from '../../src/lesson/component.ts';
import type { PacketContext } from '../context.ts';
import { needsContent } from '../lesson-part.ts';

export const caution = defineComponent<PacketContext, z.ZodType>({
  name: 'caution',
  form: 'container',
  summary: 'A warning in a box.',
  attributes: z.strictObject({}),
  example: ':::caution\nClose the throttle only within reach of the field.\n:::',
  // Neither an aside, which the page sets in its margin, nor a landmark: boxes must not fill a screen reader's list of regions.
  render: ({ children }) => [
    h('div', { className: ['caution'], role: 'note', ariaLabel: 'Caution' }, [
      h('p', { className: ['label'] }, 'Caution'),
      ...needsContent('caution', children),
    ]),
  ],
});
