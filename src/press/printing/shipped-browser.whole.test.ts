import { execFileSync } from 'node:child_process';
import { existsSync } from 'node:fs';
import { mkdtemp, readdir, rm } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { shippedBrowser } from './shipped-browser.ts';

let cache = '';
beforeAll(async () => {
  cache = await mkdtemp(join(tmpdir(), 'shipped-browser-'));
});
afterAll(() => rm(cache, { recursive: true }));

describe.runIf(process.platform === 'linux' && process.arch === 'x64')('the shipped browser', () => {
  it('unpacks once and whole, even where two start at the same time, and starts', async () => {
    const [first, second] = await Promise.all([shippedBrowser(cache), shippedBrowser(cache)]);
    if (first === undefined) return; // The optional package is not installed here.
    expect(second).toEqual(first);
    expect(await readdir(cache)).toEqual([expect.stringMatching(/^browser-[\d.]+$/)]);
    const folders = await readdir(join(cache, (await readdir(cache))[0]!));
    expect(folders.sort()).toEqual(['chromium', 'lib']);
    expect(existsSync(join(first.path, '..', 'lib', 'libnss3.so'))).toBe(true);
    const env = { ...process.env, ...(first.libraries && { LD_LIBRARY_PATH: first.libraries }) };
    expect(execFileSync(first.path, ['--version'], { env, encoding: 'utf8' })).toMatch(/\d+\.\d+/);
  });
});
