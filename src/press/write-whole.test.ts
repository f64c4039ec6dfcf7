import { mkdir, mkdtemp, readdir, readFile, rm } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterEach, beforeEach, describe, expect, it } from 'vitest';
import { writeWhole } from './write-whole.ts';

describe('writing a packet whole', () => {
  let folder = '';
  beforeEach(async () => {
    folder = await mkdtemp(join(tmpdir(), 'write-whole-'));
  });
  afterEach(async () => {
    await rm(folder, { recursive: true });
  });

  it('makes the folder, writes text and bytes, and leaves no other file', async () => {
    await writeWhole(join(folder, 'a', 'b', 'page.html'), 'text');
    await writeWhole(join(folder, 'a', 'b', 'page.pdf'), new Uint8Array([37, 80]));
    expect((await readdir(join(folder, 'a', 'b'))).sort()).toEqual(['page.html', 'page.pdf']);
    expect(await readFile(join(folder, 'a', 'b', 'page.html'), 'utf8')).toBe('text');
    expect([...(await readFile(join(folder, 'a', 'b', 'page.pdf')))]).toEqual([37, 80]);
  });

  it('replaces an earlier file', async () => {
    await writeWhole(join(folder, 'page.html'), 'earlier');
    await writeWhole(join(folder, 'page.html'), 'new');
    expect(await readFile(join(folder, 'page.html'), 'utf8')).toBe('new');
  });

  it('keeps what was there and tidies up where it can not be replaced', async () => {
    await mkdir(join(folder, 'page.html', 'inside'), { recursive: true });
    await expect(writeWhole(join(folder, 'page.html'), 'new')).rejects.toThrow();
    expect(await readdir(folder)).toEqual(['page.html']);
    expect(await readdir(join(folder, 'page.html'))).toEqual(['inside']);
  });
});
