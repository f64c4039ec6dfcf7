import { chmod, mkdtemp, rm, writeFile } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { cacheFolder, findBrowser, installedBrowser, NoBrowserError } from './find-browser.ts';

let folder = '';
let program = '';
beforeAll(async () => {
  folder = await mkdtemp(join(tmpdir(), 'find-browser-'));
  program = join(folder, 'chromium');
  await writeFile(program, '#!/bin/sh\n');
  await chmod(program, 0o755);
});
afterAll(async () => {
  await rm(folder, { recursive: true });
});

const none = {
  shipped: async () => undefined,
  puppeteer: async () => undefined,
  installed: () => undefined,
};

describe('the browser that prints', () => {
  it('is the one named, before any other', async () => {
    const shipped = async () => ({ path: 'shipped', libraries: undefined });
    const sources = { ...none, shipped };
    const found = await findBrowser({ named: program, environment: { CHALKWING_BROWSER: 'other' }, sources });
    expect(found).toMatchObject({ path: program, origin: 'named' });
    expect(await findBrowser({ environment: { CHALKWING_BROWSER: program }, sources })).toMatchObject({
      path: program,
    });
  });

  it('is not silently another one where the named one is missing', async () => {
    const sources = { ...none, installed: () => program };
    await expect(findBrowser({ named: '/no/such/browser', sources })).rejects.toThrow(
      '--browser names no program',
    );
    await expect(findBrowser({ named: folder, sources })).rejects.toThrow('--browser names no program');
    await expect(findBrowser({ environment: { CHALKWING_BROWSER: '/no' }, sources })).rejects.toThrow(
      NoBrowserError,
    );
  });

  it('is looked for in this order: shipped, puppeteer’s own, installed', async () => {
    const sources = {
      shipped: async () => ({ path: 'a', libraries: 'lib' }),
      puppeteer: async () => 'b',
      installed: () => 'c',
    };
    const environment = {};
    expect(await findBrowser({ environment, sources })).toMatchObject({ path: 'a', origin: 'shipped' });
    const second = { ...sources, shipped: none.shipped };
    expect(await findBrowser({ environment, sources: second })).toMatchObject({
      path: 'b',
      origin: 'puppeteer',
    });
    const third = { ...second, puppeteer: none.puppeteer };
    expect(await findBrowser({ environment, sources: third })).toMatchObject({
      path: 'c',
      origin: 'installed',
    });
  });

  it('gets carried libraries and our fonts in its own environment, not in ours', async () => {
    const sources = { ...none, shipped: async () => ({ path: 'a', libraries: 'carried' }) };
    const { environment } = await findBrowser({ environment: {}, sources });
    expect(environment.LD_LIBRARY_PATH).toBe('carried');
    if (process.platform === 'linux') expect(environment.FONTCONFIG_FILE).toMatch(/fonts\.conf$/);
    expect(process.env.LD_LIBRARY_PATH ?? '').not.toContain('carried');
  });

  it('is another where the shipped one can not be used, and the message says why where there is none', async () => {
    const shipped = async () => {
      throw new Error('the disk is full');
    };
    expect(
      await findBrowser({ environment: {}, sources: { ...none, shipped, installed: () => 'c' } }),
    ).toMatchObject({ path: 'c' });
    await expect(findBrowser({ environment: {}, sources: { ...none, shipped } })).rejects.toThrow(
      'the disk is full',
    );
  });

  it('where there is none, is told how to get', async () => {
    await expect(findBrowser({ environment: {}, sources: none })).rejects.toThrow(NoBrowserError);
    await expect(findBrowser({ environment: {}, sources: none })).rejects.toThrow(
      /install Chrome.*--browser PATH.*CHALKWING_BROWSER.*HTML and plain text need no browser/,
    );
  });

  it.runIf(process.platform === 'linux')('is found on the path', () => {
    expect(installedBrowser({ PATH: `/no/such:${folder}` })).toBe(program);
    expect(installedBrowser({ PATH: '/no/such' })).toBeUndefined();
    expect(installedBrowser({})).toBeUndefined();
  });

  it('is kept in the user’s cache folder', () => {
    expect(cacheFolder({ XDG_CACHE_HOME: join('x', 'cache') })).toBe(join('x', 'cache', 'chalkwing'));
  });
});
