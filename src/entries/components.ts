/** The directives of the lesson language (`chalkwing/components`), and what it takes to define one more. */

export type { Edition, PacketContext } from '../../components/context.ts';
export { components, type DirectiveGroup, groups } from '../../components/list.ts';
export type { DrawingBoard } from '../drawing/kit/drawing.ts';
export {
  type Component,
  DirectiveError,
  defineComponent,
  type Form,
  type OnScreen,
  type Use,
} from '../lesson/component.ts';
export type { PageUnits } from '../words/figures/page-units.ts';
