import { createRequire } from 'node:module';
import { dirname } from 'node:path';

/**
 * The folder of this package, from its sources as well as from its compiled files, which lie deeper: the package looks
 * itself up by its own name.
 */
export const packageFolder: string = dirname(
  createRequire(import.meta.url).resolve('chalkwing/package.json'),
);
