import { h, s } from 'hastscript';
import { describe, expect, it } from 'vitest';
import { papers } from '../paper/paper.ts';
import { formats } from './list.ts';
import type { PageDocument } from './page-document.ts';

const document: PageDocument = {
  title: 'A trial',
  css: 'p{color:black}',
  body: h('body', [
    h('header', [h('h1', 'A trial')]),
    s('svg', [s('title', 'The pattern'), s('desc', 'Base key: 670 ft.')]),
    h('p', 'Hold 41 kt.'),
  ]),
  paper: papers.A4,
  date: new Date('2031-05-06'),
  onScreen: () => ({ ...document, body: h('body', [h('p', 'Hold 41 kt.'), h('script', 'move()')]) }),
};

async function written(isPrinted: boolean): Promise<Record<string, string | undefined>> {
  const asked: PageDocument[] = [];
  const print = async (page: PageDocument) => {
    asked.push(page);
    return isPrinted ? Buffer.from('%PDF') : undefined;
  };
  const files: Record<string, string | undefined> = {};
  for (const { ending, write } of formats) {
    const content = await write(document, { print });
    files[ending] = content === undefined ? undefined : Buffer.from(content).toString();
  }
  // What is printed is the packet, without what only a screen has.
  expect(asked).toEqual([document]);
  return files;
}

describe('the formats', () => {
  it('have an ending each, and the first is the printed one', () => {
    const endings = formats.map(({ ending }) => ending);
    expect(new Set(endings).size).toBe(endings.length);
    expect(endings[0]).toBe('pdf');
    for (const ending of endings) expect(ending).toMatch(/^[a-z]+$/);
  });

  it('each write the same document; the script goes to the HTML alone', async () => {
    const files = await written(true);
    expect(files.pdf).toBe('%PDF');
    expect(files.html).toMatch(
      /^<!doctype html>[\s\S]*<title>A trial<\/title><style>p\{color:black\}<\/style>/,
    );
    expect(files.html).toContain('<script>move()</script>');
    expect(files.txt).toBe('A trial\n=======\n\nDrawing: The pattern. Base key: 670 ft.\n\nHold 41 kt.\n');
  });

  it('are all written without a browser but the PDF', async () => {
    const missing = Object.entries(await written(false)).filter(([, content]) => content === undefined);
    expect(missing.map(([ending]) => ending)).toEqual(['pdf']);
  });
});
