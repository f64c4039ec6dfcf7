import { readFile } from 'node:fs/promises';
import { fileURLToPath } from 'node:url';
import { bundlePage, pagePrograms } from './page-bundle.ts';
import { Refusal } from './refusal.ts';

/** The page's own files: beside the sources in a clone, beside the compiled files in the package. */
const folder = new URL('../page/', import.meta.url);

interface PageFile {
  readonly type: string;
  readonly content: string | Uint8Array;
}

const types: Readonly<Record<string, readonly [name: string, type: string]>> = {
  '/': ['index.html', 'text/html; charset=utf-8'],
  '/app.css': ['app.css', 'text/css; charset=utf-8'],
  ...Object.fromEntries(pagePrograms.map((name) => [`/${name}`, [name, 'text/javascript; charset=utf-8']])),
};

/** A file of the page by its address; undefined for any other address. */
export async function pageFile(address: string): Promise<PageFile | undefined> {
  const found = Object.hasOwn(types, address) ? types[address] : undefined;
  if (!found) return undefined;
  const [name, type] = found;
  try {
    const program = pagePrograms.find((each) => each === name);
    return { type, content: program ? await programText(program) : await readFile(new URL(name, folder)) };
  } catch (error) {
    if ((error as NodeJS.ErrnoException).code !== 'ENOENT') throw error;
    throw new Refusal(404, `The desk's \`${name}\` is not there: install the program again.`);
  }
}

const bundled = new Map<string, Promise<string>>();

/** In the package it was bundled when the package was made; in a clone it is bundled when it is first asked for. */
function programText(name: (typeof pagePrograms)[number]): Promise<string | Uint8Array> {
  if (!import.meta.url.endsWith('.ts')) return readFile(new URL(name, folder));
  const text = bundled.get(name) ?? bundlePage(fileURLToPath(folder), name);
  bundled.set(name, text);
  // A mistake in the sources may be corrected while the desk is open.
  text.catch(() => bundled.delete(name));
  return text;
}
