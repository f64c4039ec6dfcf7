import { mkdtemp, rm } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import puppeteer from 'puppeteer-core';
import type { TestProject } from 'vitest/node';
import { findBrowser } from '../../src/press/printing/find-browser.ts';
import { launchOptions } from '../../src/press/printing/print-pdf.ts';

declare module 'vitest' {
  export interface ProvidedContext {
    /** Where the one browser can be reached, on this machine. */
    readonly browser: string;
    /** For what is made once and read by many. */
    readonly sharedFolder: string;
  }
}

/** One browser and one folder for all tests of a run. */
export default async function share(project: TestProject): Promise<() => Promise<void>> {
  const browser = await puppeteer.launch({ ...launchOptions(await findBrowser()), pipe: false });
  const folder = await mkdtemp(join(tmpdir(), 'chalkwing-shared-'));
  project.provide('browser', browser.wsEndpoint());
  project.provide('sharedFolder', folder);
  return async () => {
    await browser.close();
    await rm(folder, { recursive: true, force: true });
  };
}
