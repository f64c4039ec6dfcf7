import { existsSync, readFileSync } from 'node:fs';
import { createRequire } from 'node:module';
import { dirname, join } from 'node:path';
import { fileURLToPath } from 'node:url';

const here = dirname(fileURLToPath(import.meta.url));
/** In the npm package, where there are no sources; made by `.ci/compile.mjs`. */
export const bundleFile = 'study.bundle.js';

let bundle: string | undefined;

/** The script of the study page, in one piece, for the inside of a `script` element; made once in a process. */
export function studyBundle(): string {
  const ready = join(here, bundleFile);
  bundle ??= existsSync(ready) ? readFileSync(ready, 'utf8') : bundleStudy(here);
  return bundle;
}

/** Bundles the sources in `folder`, which is this one: a clone has the bundler, the npm package does not. */
export function bundleStudy(folder: string): string {
  const { buildSync } = createRequire(import.meta.url)('esbuild') as typeof import('esbuild');
  const { outputFiles } = buildSync({
    entryPoints: [join(folder, 'study.ts')],
    bundle: true,
    minify: true,
    platform: 'browser',
    format: 'iife',
    target: 'es2022',
    charset: 'utf8',
    legalComments: 'eof',
    alias: { zod: join(folder, 'no-schemas.ts') },
    write: false,
    logLevel: 'silent',
  });
  // These are in strings; in a `script` element they would begin a comment, or end it (HTML, script data states).
  return outputFiles[0]!.text.replace(/<(?=!--|\/?script)/gi, '\\x3C');
}
