/** The lesson language as a remark plugin (`chalkwing/remark`). */

export type { CheckedUse, DirectiveNode } from '../lesson/check-directives.ts';
export type { ContainerDirective, LeafDirective, TextDirective } from '../lesson/directive-nodes.ts';
export type { FindPicture, FoundPicture } from '../lesson/pictures.ts';
export { default, type RemarkLessonOptions } from '../lesson/remark-lesson.ts';
