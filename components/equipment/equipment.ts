import { lessonPart } from '../lesson-part.ts';

export const equipment = lessonPart({
  name: 'equipment',
  summary: 'What is needed on the day: aircraft, radio, documents, something to write on.',
  line: '- The aircraft, this packet, a kneeboard and a pencil.',
});
