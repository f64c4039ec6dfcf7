import { EditorState } from '@codemirror/state';
import { describe, expect, it } from 'vitest';
import { fenceAfterList } from './fence-after-list.ts';

/** The text after a colon is typed at the end of `text`. */
function typedColon(text: string): string {
  const state = EditorState.create({ doc: text });
  const change = fenceAfterList(state, text.length, ':');
  return change ? state.update(change).state.doc.toString() : `${text}:`;
}

describe('the third colon', () => {
  it('takes the place of a list item that was only begun', () => {
    expect(typedColon(':::standards\n- One.\n- ::')).toBe(':::standards\n- One.\n:::');
    expect(typedColon('1. One.\n2. ::')).toBe('1. One.\n:::');
  });

  it('is a colon like any other elsewhere', () => {
    for (const text of ['- One ::', '::', '- :', 'a line ::', '- ::key'])
      expect(typedColon(text)).toBe(`${text}:`);
  });
});
