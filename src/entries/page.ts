/**
 * What a page is made from beside its lesson (`chalkwing/page`): the context that directives are rendered for, one
 * directive alone, the cautions and the style of a packet.
 */

export { contextFor, type PageRequest } from '../press/packet/context-for.ts';
export { type DrawnDirective, drawDirective } from '../press/packet/draw-directive.ts';
export { picturesIn } from '../press/packet/lesson-pictures.ts';
export { pageCautions } from '../press/packet/page-cautions.ts';
export { type Choices, NotToBeFlownError, ScenarioError } from '../press/packet/scenario.ts';
export { pageStyle } from '../press/paper/page-style.ts';
export type { PaperName } from '../press/paper/paper.ts';
