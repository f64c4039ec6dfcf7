/** The second half of the lesson language, as a rehype plugin (`chalkwing/rehype`). */

export { default, type RehypeLessonOptions } from '../lesson/rehype-lesson.ts';
