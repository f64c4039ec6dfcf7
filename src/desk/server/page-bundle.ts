import { createRequire } from 'node:module';
import { join } from 'node:path';

/** What runs in the browser: the desk itself, and the PDF reader, which is loaded only when wanted. */
export const pagePrograms = ['app.js', 'printed-view.js'] as const;

/** Bundles one of them from the sources in `folder`: a clone has the bundler, the npm package does not. */
export async function bundlePage(folder: string, program: (typeof pagePrograms)[number]): Promise<string> {
  const { build } = createRequire(import.meta.url)('esbuild') as typeof import('esbuild');
  const { outputFiles } = await build({
    entryPoints: [join(folder, program.replace(/js$/, 'ts'))],
    bundle: true,
    minify: true,
    platform: 'browser',
    format: 'esm',
    target: 'es2022',
    charset: 'utf8',
    legalComments: 'eof',
    write: false,
    logLevel: 'silent',
  });
  return outputFiles[0]!.text;
}
