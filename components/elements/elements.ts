import { lessonPart } from '../lesson-part.ts';

export const elements = lessonPart({
  name: 'elements',
  summary: 'What the lesson is made of: its knowledge and its manoeuvres.',
  line: '- The glide, the turns, the wind.',
});
