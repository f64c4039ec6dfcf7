import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { packageFolder } from './package-folder.ts';

/** The version of this program, from its package file. */
export const version: string = JSON.parse(readFileSync(join(packageFolder, 'package.json'), 'utf8')).version;
