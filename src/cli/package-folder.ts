import { createRequire } from 'node:module';
import { dirname } from 'node:path';

/**
 * The folder of this package, found from its sources and from its compiled files (which lie deeper) alike: the
 * package looks itself up by its own name.
 */
export const packageFolder: string = dirname(
  createRequire(import.meta.url).resolve('chalkwing/package.json'),
);
