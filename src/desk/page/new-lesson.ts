import { NoAnswer, Refused } from './ask.ts';
import type { DeskFiles } from './desk-files.ts';
import { byId } from './element.ts';

/** Asks for a title and makes the lesson. Returns its path; undefined where the author gave up. */
export async function askTitle(files: DeskFiles): Promise<string | undefined> {
  const dialog = byId('title-dialog', HTMLDialogElement);
  const input = byId('title-input', HTMLInputElement);
  const said = byId('title-said', HTMLElement);
  input.value = '';
  said.textContent = '';
  dialog.showModal();
  return new Promise((resolve) => {
    const end = (path: string | undefined) => {
      dialog.close();
      resolve(path);
    };
    dialog.oncancel = () => end(undefined);
    byId('title-cancel', HTMLButtonElement).onclick = () => end(undefined);
    byId('title-form', HTMLFormElement).onsubmit = (event) => {
      event.preventDefault();
      const title = input.value.trim();
      const path = `${nameFor(title)}.md`;
      if (path === '.md') {
        said.textContent = 'A title needs a letter or a number.';
        return;
      }
      files.create(path, newLesson(title)).then(
        () => end(path),
        (error: unknown) => {
          if (!(error instanceof Refused || error instanceof NoAnswer)) throw error;
          said.textContent = error.message;
        },
      );
    };
  });
}

/** `The power-off 180` is `the-power-off-180.md`. */
function nameFor(title: string): string {
  return title
    .normalize('NFKD')
    .replace(/\p{M}/gu, '')
    .toLowerCase()
    .replace(/[^\p{L}\p{N}]+/gu, '-')
    .replace(/^-+|-+$/g, '')
    .slice(0, 60);
}

/** The least that makes a lesson. */
function newLesson(title: string): string {
  return `---\ntitle: ${JSON.stringify(title)}\napproach: "180"\n---\n\n`;
}
