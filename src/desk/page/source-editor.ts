import {
  autocompletion,
  closeBrackets,
  closeBracketsKeymap,
  completionKeymap,
} from '@codemirror/autocomplete';
import { defaultKeymap, history, historyKeymap, indentWithTab } from '@codemirror/commands';
import { bracketMatching, indentUnit } from '@codemirror/language';
import { highlightSelectionMatches, searchKeymap } from '@codemirror/search';
import { EditorState, type Extension, Prec } from '@codemirror/state';
import { drawSelection, EditorView, highlightActiveLine, keymap, lineNumbers } from '@codemirror/view';
import type { FileKind, WordsAnswer } from '../api.ts';
import { completion } from './complete.ts';
import { fencesAfterLists } from './fence-after-list.ts';
import { languageOf } from './lesson-language.ts';
import { messageExtension } from './source-messages.ts';

export interface EditorHooks {
  readonly words: () => WordsAnswer | undefined;
  /** After each change of the text, whoever made it. */
  readonly changed: (state: EditorState) => void;
}

/** The text of one file, with its own undo history and cursor. */
export function editorState(path: string, kind: FileKind, text: string, hooks: EditorHooks): EditorState {
  return EditorState.create({ doc: text, extensions: [extensions(path, kind, hooks)] });
}

function extensions(path: string, kind: FileKind, { words, changed }: EditorHooks): Extension {
  return [
    lineNumbers(),
    history(),
    drawSelection(),
    EditorState.allowMultipleSelections.of(true),
    indentUnit.of('  '),
    bracketMatching(),
    closeBrackets(),
    highlightActiveLine(),
    highlightSelectionMatches(),
    autocompletion({ override: [completion(() => kind, words)], icons: false }),
    languageOf(path),
    ...(kind === 'lesson' ? [fencesAfterLists] : []),
    messageExtension,
    EditorView.lineWrapping,
    EditorView.contentAttributes.of({
      'aria-label': `Text of ${path}`,
      spellcheck: String(kind === 'lesson'),
      // It can be edited and so takes focus; not every accessibility checker knows that.
      tabindex: '0',
      autocapitalize: 'sentences',
    }),
    EditorView.editorAttributes.of({ class: kind === 'lesson' ? 'of-lesson' : 'of-yaml' }),
    EditorView.updateListener.of((update) => {
      if (update.docChanged) changed(update.state);
    }),
    // Escape first closes a list of words or the search panel; after that, Tab leaves the text.
    Prec.low(
      keymap.of([
        ...closeBracketsKeymap,
        ...completionKeymap,
        ...searchKeymap,
        ...historyKeymap,
        ...defaultKeymap,
        indentWithTab,
      ]),
    ),
  ];
}
