#!/usr/bin/env node
// The command as npm links it: loads the TypeScript sources and hands the arguments over.
import { register } from 'tsx/esm/api';

register();
await import('./main.ts');
