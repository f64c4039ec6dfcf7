import { lessonPart } from '../lesson-part.ts';

export const objective = lessonPart({
  name: 'objective',
  summary: 'What the student will be able to do after the lesson.',
  line: 'To judge a glide from the downwind key to the spot.',
});
