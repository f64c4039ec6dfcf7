import type { FileKind, SchoolFile } from '../api.ts';
import { element } from './element.ts';

const titles: Readonly<Record<FileKind, string>> = {
  lesson: 'Lessons',
  school: 'School',
  aircraft: 'Aircraft',
  airfield: 'Airfields',
  faults: 'Faults',
};

/** The files of the school by kind, each a button. */
export class FileList {
  readonly #room: HTMLElement;
  readonly #choose: (path: string) => void;
  #shown = '';

  constructor(room: HTMLElement, choose: (path: string) => void) {
    this.#room = room;
    this.#choose = choose;
  }

  show(files: readonly SchoolFile[], open: string | undefined, unsaved: ReadonlySet<string>): void {
    const written = JSON.stringify(files);
    // Made again only where it differs, so that a button with focus stays.
    if (this.#shown !== written) this.#make(files);
    this.#shown = written;
    for (const button of this.#buttons()) {
      if (button.value === open) button.setAttribute('aria-current', 'true');
      else button.removeAttribute('aria-current');
    }
    this.mark(unsaved);
  }

  /** Says of each file whether it is saved. */
  mark(unsaved: ReadonlySet<string>): void {
    for (const button of this.#buttons()) {
      const text = unsaved.has(button.value) ? 'not saved' : '';
      const said = button.querySelector('small')!;
      if (said.textContent !== text) said.textContent = text;
    }
  }

  #buttons(): NodeListOf<HTMLButtonElement> {
    return this.#room.querySelectorAll('button');
  }

  #make(files: readonly SchoolFile[]): void {
    const focused = this.#room.contains(document.activeElement)
      ? (document.activeElement as HTMLButtonElement).value
      : undefined;
    const kinds = Object.keys(titles) as FileKind[];
    const groups = kinds.flatMap((kind) => {
      const own = files.filter((file) => file.kind === kind);
      if (own.length === 0) return [];
      return [
        element('h2', { id: `files-${kind}` }, titles[kind]),
        element(
          'ul',
          { ariaLabel: titles[kind] },
          ...own.map((file) => element('li', {}, this.#button(file))),
        ),
      ];
    });
    this.#room.replaceChildren(...groups);
    for (const button of this.#buttons()) if (button.value === focused) button.focus();
  }

  #button({ path, id }: SchoolFile): HTMLButtonElement {
    const button = element(
      'button',
      { type: 'button', value: path, title: path },
      element('span', {}, id),
      element('small'),
    );
    button.addEventListener('click', () => this.#choose(path));
    return button;
  }
}
