import { lessonPart } from '../lesson-part.ts';

export const priorKnowledge = lessonPart({
  name: 'prior-knowledge',
  summary: 'What the student must know and be able to do before the lesson.',
  line: '- Glides at a steady speed, wings level and in a turn.',
});
