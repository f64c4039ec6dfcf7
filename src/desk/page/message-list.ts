import type { DeskMessage } from '../api.ts';
import { element, withCode } from './element.ts';
import { wordsFor } from './source-messages.ts';

/** All messages, from whatever file, each a button that goes to its place. */
export class MessageList {
  readonly #heading: HTMLElement;
  readonly #list: HTMLElement;
  readonly #go: (message: DeskMessage) => void;

  constructor(heading: HTMLElement, list: HTMLElement, go: (message: DeskMessage) => void) {
    this.#heading = heading;
    this.#list = list;
    this.#go = go;
  }

  /** In words. */
  get count(): string {
    return this.#heading.textContent ?? '';
  }

  show(messages: readonly DeskMessage[], open: string | undefined): void {
    const { length } = messages;
    const count = length === 0 ? 'No messages' : length === 1 ? '1 message' : `${length} messages`;
    if (this.#heading.textContent !== count) this.#heading.textContent = count;
    const rows = messages.map((message) => ({ message, text: textOf(message, open) }));
    const written = JSON.stringify(rows);
    if (this.#list.dataset.shown === written) return;
    this.#list.dataset.shown = written;
    this.#list.replaceChildren(
      ...rows.map(({ message, text }) => {
        const button = element('button', { type: 'button' }, ...withCode(text));
        button.addEventListener('click', () => this.#go(message));
        return element('li', {}, button);
      }),
    );
  }
}

function textOf(message: DeskMessage, open: string | undefined): string {
  const { path, choice, line } = message;
  const place =
    choice !== undefined ? `Chosen ${choice}` : path === open ? `Line ${line}` : `${path}, line ${line}`;
  return `${place}: ${wordsFor(message)}`;
}
