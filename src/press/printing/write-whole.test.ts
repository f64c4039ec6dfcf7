import { mkdir, mkdtemp, readdir, readFile, rm } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterEach, beforeEach, describe, expect, it } from 'vitest';
import { UnwrittenError, writeTogether, writeWhole } from './write-whole.ts';

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

describe('writing files that belong together', () => {
  let folder = '';
  beforeEach(async () => {
    folder = await mkdtemp(join(tmpdir(), 'write-together-'));
  });
  afterEach(async () => {
    await rm(folder, { recursive: true });
  });

  const both = (content: string) =>
    ['page.pdf', 'page.html'].map((name) => ({ path: join(folder, name), content }));

  it('puts all of them in place', async () => {
    await writeTogether(both('new'));
    expect((await readdir(folder)).sort()).toEqual(['page.html', 'page.pdf']);
  });

  it('puts none in place where one cannot be, whichever it is', async () => {
    await writeTogether(both('earlier'));
    for (const name of ['page.pdf', 'page.html']) {
      await rm(join(folder, name));
      await mkdir(join(folder, name));
      await expect(writeTogether(both('new'))).rejects.toThrow(
        new RegExp(`${name} is not written: a folder stands in its place. Rename or remove`),
      );
      const other = name === 'page.pdf' ? 'page.html' : 'page.pdf';
      expect(await readFile(join(folder, other), 'utf8')).toBe('earlier');
      expect((await readdir(folder)).sort()).toEqual(['page.html', 'page.pdf']);
      await rm(join(folder, name), { recursive: true });
      await writeTogether(both('earlier'));
    }
  });

  it('says that a file stands where a folder belongs', async () => {
    await writeWhole(join(folder, 'lesson'), 'a file');
    await expect(writeWhole(join(folder, 'lesson', 'page.html'), 'new')).rejects.toThrow(
      /page\.html is not written: a file stands where the folder `.*lesson` belongs/,
    );
  });

  it.each([
    ['ENOSPC', true, /the disk is full\. Make room, then give the same command again/],
    ['EROFS', true, /can only be read\. Name another folder with --out/],
    ['EACCES', false, /you may not write in `a`.*change the permissions, or name another folder with --out/],
    ['EPERM', false, /you may not write in `a`/],
    ['ENOENT', false, /the folder `a` cannot be made: its disk can only be read/],
  ])('%s: says what to do, and whether to go on', (code, stopsAll, said) => {
    const error = new UnwrittenError(join('a', 'page.pdf'), Object.assign(new Error('raw'), { code }));
    expect(error.message).toMatch(said);
    expect(error.message).toContain(join('a', 'page.pdf'));
    expect(error.stopsAll).toBe(stopsAll);
  });
});
