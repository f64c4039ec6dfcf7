import {
  type Diagnostic,
  linter,
  nextDiagnostic,
  previousDiagnostic,
  setDiagnostics,
} from '@codemirror/lint';
import { type Extension, RangeSet, StateEffect, StateField, type Text } from '@codemirror/state';
import {
  type Command,
  Decoration,
  type DecorationSet,
  EditorView,
  keymap,
  WidgetType,
} from '@codemirror/view';
import type { DeskMessage } from '../api.ts';
import { withCode } from './element.ts';

/** What is wrong, shown below the line that it is about. */
class Said extends WidgetType {
  readonly message: DeskMessage;

  constructor(message: DeskMessage) {
    super();
    this.message = message;
  }

  override eq(other: Said): boolean {
    return other.message.reason === this.message.reason && other.message.severity === this.message.severity;
  }

  override toDOM(): HTMLElement {
    const line = document.createElement('div');
    line.className = `said-below ${this.message.severity}`;
    line.append(...withCode(wordsFor(this.message)));
    return line;
  }
}

/** A warning and a note say that they are one. */
export function wordsFor({ reason, severity }: DeskMessage): string {
  const begin = { error: '', warning: 'Warning: ', note: 'Note: ' };
  return `${begin[severity]}${reason}`;
}

const setSaid = StateEffect.define<DecorationSet>();

const said = StateField.define<DecorationSet>({
  create: () => Decoration.none,
  update(value, transaction) {
    const effect = transaction.effects.find((each) => each.is(setSaid));
    return effect ? (effect.value as DecorationSet) : value.map(transaction.changes);
  },
  provide: (field) => EditorView.decorations.from(field),
});

/** Where a message is in the text. A message about an empty place marks the word or the line after it. */
export function placeIn(doc: Text, message: DeskMessage): { from: number; to: number } {
  const at = (line: number, column: number) => {
    const found = doc.line(Math.min(Math.max(line, 1), doc.lines));
    return Math.min(found.from + Math.max(column - 1, 0), found.to);
  };
  const from = at(message.line, message.column);
  const to = at(message.endLine, message.endColumn);
  if (to > from) return { from, to };
  const line = doc.lineAt(from);
  return { from: Math.min(from, line.to), to: Math.max(from, line.to) };
}

/** Shows the messages of the text, in place of those that it had. */
export function showMessages(view: EditorView, messages: readonly DeskMessage[]): void {
  const { doc } = view.state;
  const placed = messages.map((message) => ({ message, ...placeIn(doc, message) }));
  const diagnostics = placed.map(
    ({ message, from, to }): Diagnostic => ({
      from,
      to,
      severity: message.severity === 'note' ? 'info' : message.severity,
      message: wordsFor(message),
    }),
  );
  const widgets = placed.map(({ message, from }) =>
    Decoration.widget({ widget: new Said(message), block: true, side: 1 }).range(doc.lineAt(from).to),
  );
  const transaction = setDiagnostics(view.state, diagnostics);
  view.dispatch(transaction, { effects: setSaid.of(RangeSet.of(widgets, true)) });
}

/** Goes to a message, and speaks it for a reader who cannot see it. */
function going(command: Command): Command {
  return (view) => {
    if (!command(view)) return false;
    const { head } = view.state.selection.main;
    const line = view.state.doc.lineAt(head);
    const words: string[] = [];
    view.state.field(said).between(line.from, line.to, (_from, _to, { spec }) => {
      words.push(wordsFor((spec.widget as Said).message));
    });
    view.dispatch({
      effects: [
        EditorView.announce.of(`Line ${line.number}: ${words.join(' ')}`),
        EditorView.scrollIntoView(head, { y: 'center' }),
      ],
    });
    return true;
  };
}

export const messageExtension: Extension = [
  said,
  // The words are below the line already: hovering has nothing to add.
  linter(null, { tooltipFilter: () => [] }),
  keymap.of([
    { key: 'F8', run: going(nextDiagnostic) },
    { key: 'Shift-F8', run: going(previousDiagnostic) },
  ]),
];
