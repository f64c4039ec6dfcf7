import { lessonPart } from '../lesson-part.ts';

export const risks = lessonPart({
  name: 'risks',
  summary: 'What may go wrong in the lesson, and what is done so that it does not.',
  line: '- Other traffic on base: look out, and call before the key.',
});
