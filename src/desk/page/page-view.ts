import type { DeskPage, Part, Room, Style } from '../api.ts';
import { blocksOf, patchParts } from './patch-parts.ts';
import { sheetStyle } from './sheet-style.ts';

/** px: below this a sheet is too small to read, and the packet is shown as it is on a screen. */
const narrow = 520;
/** Pieces that are kept although no page shows them just now, so that a change back sends nothing. */
const most = 800;

/** The packet in its frame, replaced piece by piece. */
export class PageView {
  readonly #frame: HTMLIFrameElement;
  readonly #html = new Map<string, string>();
  readonly #css = new Map<string, string>();
  readonly #styles = new Map<string, HTMLStyleElement>();
  readonly #own: HTMLStyleElement;
  #body: Part | undefined;
  #sheet: CSSStyleSheet[] = [];
  #changed: Element | undefined;
  #asOnScreen = false;

  /** The frame holds an empty document of this origin, in which no script may run. */
  constructor(frame: HTMLIFrameElement) {
    this.#frame = frame;
    const { document } = this;
    document.documentElement.lang = 'en';
    this.#own = document.head.appendChild(document.createElement('style'));
    new ResizeObserver(() => this.#fit()).observe(frame);
    document.addEventListener('click', (event) => followLink(event));
  }

  get document(): Document {
    return this.#frame.contentDocument!;
  }

  /** Keys of all pieces that need not be sent again. */
  get have(): string[] {
    return [...this.#html.keys(), ...this.#css.keys()];
  }

  /** The fonts of the packet, for the desk itself. */
  get fonts(): string | undefined {
    return [...this.#css.values()].find((css) => css.trimStart().startsWith('@font-face'));
  }

  /** Shows nothing. */
  clear(): void {
    this.#body = undefined;
    this.document.body.replaceChildren();
  }

  show(page: DeskPage): void {
    for (const block of blocksOf(page.body)) {
      const html = block.html ?? this.#html.get(block.key)!;
      this.#html.delete(block.key);
      this.#html.set(block.key, html);
    }
    this.#setStyles(page.styles);
    this.document.title = page.title;
    const made = this.#setBody(page.body);
    // The masthead changes with every letter, because it has the mark of the inputs.
    this.#changed = made.find((element) => !element.matches('.masthead')) ?? this.#changed;
    for (const key of this.#html.keys()) {
      if (this.#html.size <= most) break;
      this.#html.delete(key);
    }
  }

  /** Brings what changed last into view. */
  showChange(): void {
    if (this.#changed?.isConnected) this.#changed.scrollIntoView({ block: 'center' });
  }

  #setBody(after: Part): Element[] {
    const { body } = this.document;
    const room = after as Room;
    const before = this.#body as Room | undefined;
    this.#body = after;
    if (before?.open !== room.open) {
      const { attributes } = new DOMParser().parseFromString(room.open, 'text/html').body;
      for (const { name } of [...body.attributes]) body.removeAttribute(name);
      for (const { name, value } of attributes) body.setAttribute(name, value);
    }
    return patchParts(body, before?.parts ?? [], room.parts, (key) => this.#html.get(key)!);
  }

  #setStyles(styles: readonly Style[]): void {
    const isSame = styles.length === this.#styles.size && styles.every(({ key }) => this.#styles.has(key));
    if (isSame) return;
    for (const [key, element] of this.#styles) {
      if (styles.some((style) => style.key === key)) continue;
      element.remove();
      this.#styles.delete(key);
    }
    const elements = styles.map(({ key, css }) => {
      if (css !== undefined) this.#css.set(key, css);
      const element = this.#styles.get(key) ?? this.document.createElement('style');
      if (!this.#styles.has(key)) element.textContent = this.#css.get(key)!;
      this.#styles.set(key, element);
      return element;
    });
    // In order, and without moving the fonts, which would then be read again.
    let last: Element | null = null;
    for (const element of elements) {
      const isThere = element.isConnected && element.previousElementSibling === last;
      if (!isThere)
        this.document.head.insertBefore(element, last ? last.nextSibling : this.document.head.firstChild);
      last = element;
    }
    this.#sheet = elements.map((element) => element.sheet!);
    this.#fit();
  }

  /** On a sheet as wide as the paper, made to fit; where that would be too small, as on a screen. */
  #fit(): void {
    const width = this.#frame.clientWidth;
    if (width === 0 || this.#sheet.length === 0) return;
    this.#asOnScreen = width < narrow;
    this.#own.textContent = sheetStyle(this.#sheet, width, this.#asOnScreen);
    this.#frame.dataset.as = this.#asOnScreen ? 'screen' : 'sheet';
  }
}

/** Within the page a link goes to its place; any other opens beside the desk, not in place of the packet. */
function followLink(event: MouseEvent): void {
  const link = (event.target as Element).closest('a');
  const address = link?.getAttribute('href');
  if (!address || address.startsWith('#')) return;
  event.preventDefault();
  if (/^https?:/.test(address)) window.open(address, '_blank', 'noopener');
}

/** Waits until the frame has the document that it is to hold. */
export async function frameReady(frame: HTMLIFrameElement): Promise<void> {
  const isThere = () =>
    frame.contentDocument?.URL === 'about:srcdoc' && frame.contentDocument.readyState === 'complete';
  if (!isThere()) await new Promise((resolve) => frame.addEventListener('load', resolve, { once: true }));
}
