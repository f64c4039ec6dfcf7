import { h } from 'hastscript';
import { z } from 'zod';
import { defineComponent } from '../../src/lesson/component.ts';
import type { PacketContext } from '../context.ts';
import { needsContent } from '../lesson-part.ts';

export const student = defineComponent<PacketContext, z.ZodType>({
  name: 'student',
  form: 'container',
  summary: "Text of the student's edition alone.",
  attributes: z.strictObject({}),
  example: ':::student\nWrite down where you expect to turn.\n:::',
  isFor: ({ context }) => context.edition === 'student',
  render: ({ children }) => [h('div', { className: ['student'] }, [...needsContent('student', children)])],
});
