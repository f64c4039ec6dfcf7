import { h } from 'hastscript';
import { z } from 'zod';
import { defineComponent } from '../../src/lesson/component.ts';
import type { PacketContext } from '../context.ts';
import { needsContent } from '../lesson-part.ts';

export const student = defineComponent<PacketContext, z.ZodType>({
  name: 'student',
  form: 'container',
  summary:
    "What the student is asked to do or to write, set apart; the instructor's edition has it in the same place.",
  attributes: z.strictObject({}),
  example: ':::student\nWrite down where you expect to turn.\n:::',
  render: ({ children }) => [
    h('div', { className: ['student'], role: 'group', ariaLabel: 'For the student' }, [
      h('p', { className: ['label'] }, 'For the student'),
      ...needsContent('student', children),
    ]),
  ],
});
