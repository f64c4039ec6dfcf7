import { mkdtemp, readdir, readFile, rm, utimes, writeFile } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { h } from 'hastscript';
import { afterEach, beforeEach, describe, expect, it } from 'vitest';
import type { Format } from '../formats/format.ts';
import { papers } from '../paper/paper.ts';
import type { PrintOrder } from './order.ts';
import { type PrintEvent, printAll } from './print-all.ts';
import { sortOrders } from './sort-orders.ts';

const date = new Date('2031-05-06');
const plain: Format = { ending: 'plain', write: ({ title }) => `plain ${title}` };
const trial: Format = { ending: 'trial', write: async ({ title }) => Buffer.from(`trial ${title}`) };
const printed: Format = { ending: 'printed', write: () => undefined };

const order: PrintOrder = {
  path: 'one/osier-15',
  date,
  key: () => 'the same',
  open: async () => () => ({
    document: { title: 'A page', css: '', body: h('body'), paper: papers.A4, date },
    messages: [],
    pictures: [],
  }),
  hear: () => undefined,
};

describe('a format that is added to the list', () => {
  let out = '';
  beforeEach(async () => {
    out = await mkdtemp(join(tmpdir(), 'formats-'));
  });
  afterEach(() => rm(out, { recursive: true }));

  async function build(formats: readonly Format[], again = false) {
    const { pages, unchanged } = await sortOrders([order], { folder: out, out, date, again, formats });
    const told: PrintEvent[] = [];
    await printAll(pages, { out, formats, tell: (event) => void told.push(event) });
    const ends = told.filter(({ kind }) => kind !== 'begun');
    return { unchanged, ends, files: (await readdir(join(out, 'one'))).sort() };
  }
  const at = (ending: string) => join(out, 'one', `osier-15.${ending}`);

  it('is written, reported and marked in the ledger', async () => {
    const { ends, files } = await build([plain, trial]);
    expect(files).toEqual(['osier-15.plain', 'osier-15.trial']);
    expect(await readFile(at('trial'), 'utf8')).toBe('trial A page');
    expect(ends).toEqual([{ kind: 'printed', path: order.path, endings: ['plain', 'trial'] }]);
    const entry = JSON.parse(await readFile(join(out, '.printed', 'one', 'osier-15.json'), 'utf8'));
    expect(Object.keys(entry.files)).toEqual(['plain', 'trial']);
    expect(entry.files.trial.bytes).toBe('trial A page'.length);
    expect((await build([plain, trial])).unchanged).toBe(1);
  });

  it('has what stands written again: where it is new, and where its file is not as it was', async () => {
    await build([plain]);
    expect(await build([plain, trial])).toMatchObject({
      unchanged: 0,
      files: ['osier-15.plain', 'osier-15.trial'],
    });
    await writeFile(at('trial'), 'another');
    expect((await build([plain, trial])).unchanged).toBe(0);
    expect(await readFile(at('trial'), 'utf8')).toBe('trial A page');
    await rm(at('trial'));
    expect((await build([plain, trial])).unchanged).toBe(0);
  });

  it('is removed when stale: left half written, or written no more and nobody’s work', async () => {
    await build([plain, trial]);
    const half = join(out, 'one', '.osier-15.trial.01234567-89ab-cdef-0123-456789abcdef');
    await writeFile(half, 'half');
    await utimes(half, 0, 0);
    await build([plain, trial], true);
    expect((await build([plain], true)).files).toEqual(['osier-15.plain']);
    await build([plain, trial], true);
    await writeFile(at('trial'), 'somebody’s own');
    expect((await build([plain], true)).files).toEqual(['osier-15.plain', 'osier-15.trial']);
  });

  it('is written without a browser where it needs none, beside a warning of what is old', async () => {
    await build([plain]);
    await writeFile(at('printed'), 'old');
    const { ends } = await build([printed, trial]);
    expect(ends).toEqual([
      { kind: 'without-browser', path: order.path, endings: ['trial'], old: ['printed'] },
    ]);
    expect((await build([printed, trial])).unchanged).toBe(0);
  });
});
