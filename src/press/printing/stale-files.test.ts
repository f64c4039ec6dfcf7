import { randomUUID } from 'node:crypto';
import { mkdir, mkdtemp, readdir, rm, utimes, writeFile } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { expect, it } from 'vitest';
import { removeStale } from './stale-files.ts';

it('what a killed build left goes after an hour; what may still be written, and what is no such file, stays', async () => {
  const folder = await mkdtemp(join(tmpdir(), 'stale-'));
  try {
    const hoursAgo = new Date(Date.now() - 2 * 3_600_000);
    const left = `.page.pdf.${randomUUID()}`;
    const young = `.page.pdf.${randomUUID()}`;
    const others = ['page.pdf', `page.${randomUUID()}`, '.page.pdf', `.${randomUUID()}`];
    for (const name of [left, young, ...others]) {
      await writeFile(join(folder, name), 'x');
      if (name !== young) await utimes(join(folder, name), hoursAgo, hoursAgo);
    }
    const alsoFolder = `.page.pdf.${randomUUID()}`;
    await mkdir(join(folder, alsoFolder));
    await utimes(join(folder, alsoFolder), hoursAgo, hoursAgo);
    await removeStale([folder, folder, join(folder, 'nowhere')]);
    expect((await readdir(folder)).sort()).toEqual([young, ...others, alsoFolder].sort());
  } finally {
    await rm(folder, { recursive: true });
  }
});
