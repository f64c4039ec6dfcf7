import { createHash } from 'node:crypto';
import { readdirSync, readFileSync } from 'node:fs';
import { createRequire } from 'node:module';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';

/** The folder whose layout is the same in the sources and in the compiled package. */
const home = fileURLToPath(new URL('../../../', import.meta.url));

let mark: string | undefined;

/**
 * A SHA-256 of the program itself: its modules, the fonts and figures that it reads, the versions of the packages
 * that it uses, and of Node. A different program may compute other figures or set pages differently.
 */
export function codeMark(): string {
  mark ??= markOf(home);
  return mark;
}

function markOf(folder: string): string {
  const hash = createHash('sha256');
  for (const path of [...filesIn(folder, 'components'), ...filesIn(folder, 'src')].sort()) {
    const bytes = readFileSync(join(folder, path));
    hash.update(`${path}\0${bytes.length}\0`).update(bytes);
  }
  const packageFile = createRequire(import.meta.url).resolve('chalkwing/package.json');
  const { dependencies } = JSON.parse(readFileSync(packageFile, 'utf8')) as { dependencies: unknown };
  return hash.update(JSON.stringify(dependencies)).update(process.version).digest('hex');
}

/** Paths with `/`. What only tests, or only reads arguments and prints lines, does not affect a page. */
function filesIn(folder: string, under: string): string[] {
  return readdirSync(join(folder, under), { withFileTypes: true }).flatMap((entry) => {
    const path = `${under}/${entry.name}`;
    if (entry.isDirectory()) return path === 'src/cli' || path === 'src/desk' ? [] : filesIn(folder, path);
    return /\.test\.[jt]s$|\.md$/.test(entry.name) ? [] : [path];
  });
}
