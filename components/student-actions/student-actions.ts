import { lessonPart } from '../lesson-part.ts';

export const studentActions = lessonPart({
  name: 'student-actions',
  summary: 'What the student does, on the ground and in flight.',
  line: '- Says where the base turn will start, then flies it.',
});
