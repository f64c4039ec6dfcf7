import { getDocument } from 'pdfjs-dist/legacy/build/pdf.mjs';
// Runs in the page itself: there is no second file to load it from.
// @ts-expect-error The package has no types for it.
import * as worker from 'pdfjs-dist/legacy/build/pdf.worker.mjs';
import { element } from './element.ts';

Object.assign(globalThis, { pdfjsWorker: worker });

/** Draws the pages of a PDF one below the other, as wide as there is room for. */
export class PrintedView {
  readonly #room: HTMLElement;
  #drawing: Promise<void> = Promise.resolve();

  constructor(room: HTMLElement) {
    this.#room = room;
  }

  /** One PDF after another; the earlier pages stay until the new ones are there. Returns how many there are. */
  async show(pdf: Uint8Array): Promise<number> {
    const drawn = this.#drawing.then(() => this.#draw(pdf));
    this.#drawing = drawn.then(
      () => undefined,
      () => undefined,
    );
    return drawn;
  }

  async #draw(data: Uint8Array): Promise<number> {
    const task = getDocument({ data, isEvalSupported: false });
    const pdf = await task.promise;
    const { scrollTop } = this.#room;
    const pages: HTMLElement[] = [];
    for (let number = 1; number <= pdf.numPages; number += 1) {
      const page = await pdf.getPage(number);
      const plain = page.getViewport({ scale: 1 });
      const width = Math.min(this.#room.clientWidth - 24, plain.width * (96 / 72));
      const scale = (Math.max(width, 200) / plain.width) * window.devicePixelRatio;
      const viewport = page.getViewport({ scale });
      const canvas = element('canvas', {
        width: Math.floor(viewport.width),
        height: Math.floor(viewport.height),
      });
      canvas.setAttribute('role', 'img');
      canvas.setAttribute('aria-label', `Page ${number} of ${pdf.numPages}; its text is in the PDF`);
      canvas.style.width = `${width}px`;
      await page.render({ canvas, viewport }).promise;
      pages.push(element('figure', {}, canvas, element('figcaption', {}, `${number} of ${pdf.numPages}`)));
    }
    this.#room.replaceChildren(...pages);
    this.#room.scrollTop = scrollTop;
    await task.destroy();
    return pages.length;
  }
}
