#!/usr/bin/env node
// The command as npm links it. Where the TypeScript sources lie beside it (a clone) it loads them, and ignores
// whatever was compiled for a package, which may be old. The package holds the compiled files alone.
import { existsSync } from 'node:fs';

if (existsSync(new URL('main.ts', import.meta.url))) {
  const { register } = await import('tsx/esm/api');
  register();
  await import('./main.ts');
} else {
  await import(new URL('../../dist/lib/src/cli/main.js', import.meta.url).href);
}
