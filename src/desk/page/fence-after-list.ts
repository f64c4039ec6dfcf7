import type { EditorState, TransactionSpec } from '@codemirror/state';
import { EditorView } from '@codemirror/view';

/** A list continues by itself: its next item is begun before the author ends the directive that it is in. */
const begunItem = /^\s*(?:[-*+]|\d+[.)])\s+::$/;

/** What typing the third colon of `:::` does in an item that was only begun: the fence takes the item's place. */
export function fenceAfterList(state: EditorState, at: number, typed: string): TransactionSpec | undefined {
  if (typed !== ':') return undefined;
  const line = state.doc.lineAt(at);
  if (at !== line.to || !begunItem.test(line.text)) return undefined;
  return {
    changes: { from: line.from, to: line.to, insert: ':::' },
    selection: { anchor: line.from + 3 },
    userEvent: 'input.type',
  };
}

export const fencesAfterLists = EditorView.inputHandler.of((view, from, to, typed) => {
  const change = from === to ? fenceAfterList(view.state, from, typed) : undefined;
  if (!change) return false;
  view.dispatch(change);
  return true;
});
