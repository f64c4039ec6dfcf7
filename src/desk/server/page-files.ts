import { readFile } from 'node:fs/promises';
import { createRequire } from 'node:module';
import { fileURLToPath } from 'node:url';
import { Refusal } from './refusal.ts';

/** The page's own files: beside the sources in a clone, beside the compiled files in the package. */
const folder = new URL('../page/', import.meta.url);

interface PageFile {
  readonly type: string;
  readonly content: string | Uint8Array;
}

const types: Readonly<Record<string, readonly [name: string, type: string]>> = {
  '/': ['index.html', 'text/html; charset=utf-8'],
  '/app.js': ['app.js', 'text/javascript; charset=utf-8'],
  '/app.css': ['app.css', 'text/css; charset=utf-8'],
};

/** A file of the page by its address; undefined for an address that is none of them. */
export async function pageFile(address: string): Promise<PageFile | undefined> {
  const found = Object.hasOwn(types, address) ? types[address] : undefined;
  if (!found) return undefined;
  const [name, type] = found;
  try {
    return { type, content: name === 'app.js' ? await program() : await readFile(new URL(name, folder)) };
  } catch (error) {
    if ((error as NodeJS.ErrnoException).code !== 'ENOENT') throw error;
    throw new Refusal(404, `The desk's \`${name}\` is not there: install the program again.`);
  }
}

/** In the package it was bundled when that was made; in a clone it is bundled when it is asked for. */
async function program(): Promise<string | Uint8Array> {
  if (!import.meta.url.endsWith('.ts')) return readFile(new URL('app.js', folder));
  const source = new URL('app.ts', folder);
  await readFile(source);
  // A clone has the bundler, the npm package has not.
  const { build } = createRequire(import.meta.url)('esbuild') as typeof import('esbuild');
  const { outputFiles } = await build({
    entryPoints: [fileURLToPath(source)],
    bundle: true,
    format: 'esm',
    target: 'es2022',
    write: false,
    logLevel: 'silent',
  });
  return outputFiles[0]!.text;
}
