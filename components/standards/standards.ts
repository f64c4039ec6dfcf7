import { lessonPart } from '../lesson-part.ts';

export const standards = lessonPart({
  name: 'standards',
  summary: 'How well the student must do it for the lesson to be complete.',
  line: '- Touches down on the spot or within the length agreed beyond it.',
});
