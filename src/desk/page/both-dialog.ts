import { MergeView, unifiedMergeView } from '@codemirror/merge';
import { EditorState } from '@codemirror/state';
import { EditorView } from '@codemirror/view';
import { byId, element } from './element.ts';

export type Decision = 'mine' | 'theirs' | 'both' | 'later';

export interface Both {
  readonly path: string;
  readonly mine: string;
  /** Null: the file is gone. */
  readonly theirs: string | null;
  /** The name that my text would get beside theirs; undefined where there can be no second file. */
  readonly beside: string | undefined;
}

/** px: two texts side by side need it. */
const wide = 760;

/** Shows both texts, and waits until a choice is made. Escape puts it off. */
export async function askBoth({ path, mine, theirs, beside }: Both): Promise<Decision> {
  const dialog = byId('both-dialog', HTMLDialogElement);
  const texts = byId('both-texts', HTMLElement);
  byId('both-title', HTMLElement).textContent = `${path} was changed here and by another program`;
  byId('both-why', HTMLElement).textContent =
    theirs === null
      ? 'The other has taken the file away. Your text is as you left it.'
      : 'Nothing of either is lost until you choose.';
  byId('both-name', HTMLElement).textContent = beside
    ? `saves yours as ${beside}`
    : 'there can be one school.yaml only';
  byId('keep-both', HTMLButtonElement).disabled = beside === undefined || theirs === null;
  byId('my-words', HTMLElement).textContent =
    theirs === null ? 'saves the file again' : 'saves your text over the other';
  byId('their-words', HTMLElement).textContent =
    theirs === null ? 'lets the file and your text go' : 'undo brings yours back';
  const plain = [
    EditorState.readOnly.of(true),
    EditorView.editable.of(false),
    EditorView.lineWrapping,
    EditorView.contentAttributes.of({ tabindex: '0', 'aria-label': 'Text, to be read' }),
  ];
  const sides = dialog.querySelector<HTMLElement>('.sides')!;
  texts.replaceChildren();
  texts.tabIndex = 0;
  let close = () => {};
  if (theirs === null) texts.append(element('pre', {}, mine));
  else if (window.innerWidth >= wide) {
    const view = new MergeView({
      a: { doc: theirs, extensions: plain },
      b: { doc: mine, extensions: plain },
      parent: texts,
      collapseUnchanged: { margin: 2, minSize: 6 },
    });
    close = () => view.destroy();
  } else {
    const extensions = [
      ...plain,
      unifiedMergeView({
        original: theirs,
        mergeControls: false,
        collapseUnchanged: { margin: 2, minSize: 6 },
      }),
    ];
    const view = new EditorView({ doc: mine, extensions, parent: texts });
    close = () => view.destroy();
  }
  sides.hidden = theirs === null || window.innerWidth < wide;
  const decision = await new Promise<Decision>((resolve) => {
    const buttons: readonly (readonly [string, Decision])[] = [
      ['keep-mine', 'mine'],
      ['take-theirs', 'theirs'],
      ['keep-both', 'both'],
      ['later', 'later'],
    ];
    for (const [id, chosen] of buttons) byId(id, HTMLButtonElement).onclick = () => end(chosen);
    dialog.oncancel = () => end('later');
    const end = (chosen: Decision) => resolve(chosen);
    dialog.showModal();
  });
  dialog.close();
  close();
  return decision;
}

/** `power-off-180-mine.md`; numbered where that name is taken. */
export function besideName(path: string, taken: ReadonlySet<string>): string | undefined {
  if (path === 'school.yaml') return undefined;
  const dot = path.lastIndexOf('.');
  for (let number = 1; ; number += 1) {
    const name = `${path.slice(0, dot)}-mine${number === 1 ? '' : `-${number}`}${path.slice(dot)}`;
    if (!taken.has(name)) return name;
  }
}
