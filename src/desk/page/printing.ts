import type { PrintAnswer, PrintRequest } from '../api.ts';
import { askPrint, askPrinted, NoAnswer, printedAddress, Refused } from './ask.ts';
import { byId, element } from './element.ts';
import type { PrintedView } from './printed-view.ts';

/** What reads a PDF is larger than all the rest of the page: it is loaded when pages are first wanted. */
const reader = '/printed-view.js';

export interface ToPrint {
  readonly request: PrintRequest;
  /** Only what is on the disk is printed. */
  readonly isSaved: boolean;
}

/** Prints the lesson, says how it went, and shows the pages. */
export class Printing {
  readonly #toPrint: () => ToPrint | undefined;
  readonly #say: (words: string) => void;
  readonly #said = byId('printed-said', HTMLElement);
  readonly #pages = byId('pages', HTMLElement);
  #view: PrintedView | undefined;
  #isPrinting = false;

  constructor(toPrint: () => ToPrint | undefined, say: (words: string) => void) {
    this.#toPrint = toPrint;
    this.#say = say;
  }

  /** The text or a choice has changed: what was printed is out of date. */
  changed(): void {
    if (this.#isPrinting || this.#said.dataset.state !== 'printed') return;
    this.#said.dataset.state = 'old';
    this.#said.append(
      element('p', {}, 'Since then the text or a choice has changed: save, and print again.'),
    );
  }

  /** Another lesson: what was printed belongs to none that is shown. */
  forget(): void {
    this.#said.replaceChildren();
    this.#pages.replaceChildren();
    if (this.#showsPages) this.showPages(false);
  }

  get #showsPages(): boolean {
    return !this.#pages.hidden;
  }

  showPages(pages: boolean): void {
    this.#pages.hidden = !pages;
    byId('sheet', HTMLIFrameElement).hidden = pages;
    byId('as-pages', HTMLButtonElement).setAttribute('aria-pressed', String(pages));
    byId('as-sheet', HTMLButtonElement).setAttribute('aria-pressed', String(!pages));
    if (pages) void this.print();
  }

  async print(): Promise<void> {
    const toPrint = this.#toPrint();
    if (this.#isPrinting || !toPrint) return;
    this.#isPrinting = true;
    byId('print', HTMLButtonElement).setAttribute('aria-disabled', 'true');
    this.#tell(toPrint.isSaved ? 'Printing…' : 'Printing what is saved; what is not saved is not in it…');
    try {
      await this.#show(await askPrint(toPrint.request), toPrint);
    } catch (error) {
      if (!(error instanceof Refused || error instanceof NoAnswer)) throw error;
      this.#tell(error.message);
    } finally {
      this.#isPrinting = false;
      byId('print', HTMLButtonElement).removeAttribute('aria-disabled');
    }
  }

  async #show({ packets, messages, noBrowser }: PrintAnswer, { isSaved }: ToPrint): Promise<void> {
    const lines: (Node | string)[][] = [];
    for (const { state, pdf, files, said } of packets) {
      const words = {
        printed: 'Printed: ',
        unchanged: 'Printed before, and nothing has changed since: ',
        'without-browser': 'Made without a browser: ',
        unprintable: 'It could not be printed. ',
        unwritten: 'It could not be written. ',
        left: 'It was not printed. ',
      }[state];
      const names = files.flatMap((file, at) => {
        const link = pdf && file.endsWith('.pdf') && printedAddress(pdf);
        const name = link ? element('a', { href: link, target: '_blank', rel: 'noopener' }, file) : file;
        return at === 0 ? [name] : [', ', name];
      });
      lines.push([words, ...names, said.length > 0 ? ` ${said.join(' ')}` : '']);
    }
    if (noBrowser) lines.push([noBrowser]);
    for (const { path, line, reason, choice } of messages)
      lines.push([choice ? `Chosen ${choice}: ${reason}` : `${path}, line ${line}: ${reason}`]);
    if (!isSaved) lines.push(['It is of what was saved: save and print again.']);
    this.#tell(...lines.map((line) => element('span', {}, ...line)));
    this.#said.dataset.state = 'printed';
    const pdf = packets.find((packet) => packet.pdf)?.pdf;
    if (!this.#showsPages) return;
    this.#pages.tabIndex = 0;
    if (pdf === undefined) {
      this.#pages.replaceChildren();
      return;
    }
    const come = (await import(reader).catch(() => undefined)) as
      | typeof import('./printed-view.ts')
      | undefined;
    if (!come) {
      this.#said.append(element('p', {}, 'The pages cannot be shown here just now: open the PDF.'));
      return;
    }
    this.#view ??= new come.PrintedView(this.#pages);
    await this.#view.show(await askPrinted(pdf));
  }

  #tell(...lines: (Node | string)[]): void {
    this.#said.dataset.state = '';
    this.#said.replaceChildren(...lines.map((line) => element('p', {}, line)));
    this.#say(this.#said.textContent ?? '');
  }
}
