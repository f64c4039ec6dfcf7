import { lessonPart } from '../lesson-part.ts';

export const instructorActions = lessonPart({
  name: 'instructor-actions',
  summary: 'What the instructor shows, says and asks, on the ground and in flight.',
  line: '- Flies the first approach and talks it through.',
});
