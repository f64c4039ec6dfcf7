import { cp, mkdtemp, readFile, rm, writeFile } from 'node:fs/promises';
import { createServer } from 'node:http';
import { tmpdir } from 'node:os';
import { dirname, join } from 'node:path';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { type ReadPdf, readPdf } from '../../../tests/pdf-reader.ts';
import { fontconfigPath, fontFaceCss } from '../paper/fonts.ts';
import { contentWidth, type PaperName, papers } from '../paper/paper.ts';
import { findBrowser } from './find-browser.ts';
import { openPrinter, type Printer, UnprintableError, withPrinter } from './print-pdf.ts';

const date = new Date('2031-05-06T07:08:09Z');
let printer: Printer;

beforeAll(async () => {
  printer = await openPrinter(await findBrowser());
});
afterAll(async () => {
  await printer.close();
});

function sample(body: string, paper: PaperName = 'A4'): string {
  const { cssSize, margin } = papers[paper];
  return `<!doctype html><html lang="en"><head><meta charset="utf-8"><title>Sample page</title><style>${fontFaceCss()}
    @page{size:${cssSize};margin:${margin.top}mm ${margin.outer}mm ${margin.bottom}mm ${margin.inner}mm}
    body{margin:0;font-family:"IBM Plex Serif"} h1,th{font-family:"IBM Plex Sans"} svg{display:block}</style></head>
    <body>${body}</body></html>`;
}

const hundredMillimetres =
  '<svg width="454" height="38" viewBox="0 0 120.12 10.054" role="img" aria-label="scale"><line x1="10" y1="5" x2="110" y2="5" stroke="#000" stroke-width="0.3"/></svg>';

async function print(body: string, paper: PaperName = 'A4'): Promise<ReadPdf> {
  return readPdf(await printer.print(sample(body, paper), { paper: papers[paper], date }));
}

describe('a printed page', () => {
  it('is tagged and titled, has its language and bookmarks from the headings', async () => {
    const pdf = await print('<h1>First</h1><p>Text.</p><h2>Second</h2><p>Text.</p>');
    expect(pdf.tagged).toBe(true);
    expect(pdf.title).toBe('Sample page');
    expect(pdf.language).toBe('en');
    expect(pdf.bookmarks).toEqual(['First', 'Second']);
    expect(pdf.pages[0]?.text).toContain('Text.');
  });

  it('carries its fonts, as outlines', async () => {
    const { pages } = await print('<h1>Sans</h1><p>Serif ≤ ≥ √ → ≈ ° ′ ″ − ×</p>');
    const fonts = pages.flatMap((page) => page.fonts);
    expect(fonts.length).toBeGreaterThan(1);
    for (const font of fonts) {
      expect(font.name).toMatch(/^[A-Z]{6}\+IBMPlex(Sans|Serif)/);
      expect(font.embedded).toBe(true);
      expect(font.type).not.toBe('Type3');
    }
    expect(pages[0]?.text).toContain('≤ ≥ √ → ≈ ° ′ ″ − ×');
  });

  it.each([
    // ISO 216 and ANSI/ASME Y14.1.
    ['A4', 210, 297],
    ['Letter', 215.9, 279.4],
  ] as const)('has the size of %s', async (paper, width, height) => {
    const { pages } = await print('<p>Text</p>', paper);
    expect(pages[0]?.width).toBeCloseTo(width, 0);
    expect(pages[0]?.height).toBeCloseTo(height, 0);
  });

  it.each(['A4', 'Letter'] as const)(
    'is to scale: 100 mm drawn are 100 mm on %s, within 0.5 %%',
    async (paper) => {
      const { pages } = await print(`<h1>Scale</h1>${hundredMillimetres}`, paper);
      const longest = Math.max(...pages[0]!.segments.map((segment) => segment.length));
      expect(longest).toBeGreaterThan(99.5);
      expect(longest).toBeLessThan(100.5);
    },
  );

  it('is byte for byte the same when it is printed again, and dated as its inputs are', async () => {
    const table = '<table><tr><th>Key</th><th>Height</th></tr><tr><th>Base</th><td>670</td></tr></table>';
    const html = sample(`<h1>Same</h1>${table}${hundredMillimetres}`);
    // This printer has printed other pages before: what it remembers of them must not show.
    const first = await printer.print(html, { paper: papers.A4, date });
    const other = await openPrinter(await findBrowser());
    try {
      const second = await other.print(html, { paper: papers.A4, date });
      expect(Buffer.compare(Buffer.from(first), Buffer.from(second))).toBe(0);
    } finally {
      await other.close();
    }
    expect(Buffer.from(first).toString('latin1')).toContain("D:20310506070809+00'00'");
  });
});

describe('a page that can not be printed', () => {
  async function messages(body: string): Promise<readonly string[]> {
    try {
      await print(body);
    } catch (error) {
      expect(error).toBeInstanceOf(UnprintableError);
      return (error as UnprintableError).messages;
    }
    throw new Error('it was printed');
  }

  it('names what is wider than the page, and by how much', async () => {
    const width = contentWidth(papers.A4) + 10;
    const found = await messages(`<p>Fine.</p><div id="broad" style="width:${width}mm">Too wide</div>`);
    expect(found).toHaveLength(1);
    expect(found[0]).toContain('<div#broad> "Too wide"');
    expect(found[0]).toMatch(/reaches 10(\.1)? mm beyond/);
  });

  it('sees a word that runs out of its paragraph, and a table too wide for its figures', async () => {
    expect((await messages(`<p>${'m'.repeat(200)}</p>`))[0]).toContain('<p> "mmm');
    const cells = Array.from({ length: 60 }, (_, index) => `<td>height${index}</td>`).join('');
    expect((await messages(`<table><tr>${cells}</tr></table>`)).length).toBeGreaterThan(0);
  });

  it('names a drawing that is higher than a page', async () => {
    const found = await messages(
      '<svg id="tower" width="100" height="1400" role="img" aria-label="Tower"></svg>',
    );
    expect(found[0]).toMatch(/<svg#tower> "Tower" is .* mm higher than a page/);
  });

  it('names a note that is higher than the room kept for it in both editions', async () => {
    const room = 'position:relative;height:20px;width:100px';
    const found = await messages(
      `<aside class="note instructor" style="${room}">${'Ask once more. '.repeat(20)}</aside>`,
    );
    expect(found[0]).toMatch(
      /<aside\.note\.instructor> "Ask once more.*" is .* mm higher than the room it has/,
    );
  });

  it('names a note that lies over a table, and one that is higher than a page', async () => {
    const found = await messages(
      '<aside class="note" style="position:absolute;top:0;left:0;width:90px">Ask.</aside><div class="table-room"><table><tr><td>A cell</td></tr></table></div>',
    );
    expect(found).toEqual([expect.stringMatching(/<aside\.note> "Ask\." lies .* mm over something else/)]);
    expect((await messages('<aside class="note" style="height:1400px">Long.</aside>'))[0]).toMatch(
      /<aside\.note> "Long\." is .* mm higher than a page/,
    );
  });

  it('does not let a request leave, and says what was asked for', async () => {
    let asked = 0;
    const server = createServer((_request, response) => {
      asked += 1;
      response.end();
    });
    await new Promise<void>((resolve) => server.listen(0, '127.0.0.1', resolve));
    const { port } = server.address() as { port: number };
    try {
      const url = `http://127.0.0.1:${port}/picture.png`;
      const found = await messages(`<img src="${url}" alt=""><link rel="stylesheet" href="${url}?style">`);
      expect(found.join('\n')).toContain(url);
      expect(asked).toBe(0);
    } finally {
      server.close();
    }
  });

  it('does not stop the next one', async () => {
    await messages(`<p>${'m'.repeat(200)}</p>`);
    expect((await print('<p>Fine.</p>')).pages).toHaveLength(1);
  });

  it('runs no script', async () => {
    const { pages } = await print(
      '<p id="a">before</p><script>document.getElementById("a").textContent="after"</script>',
    );
    expect(pages[0]?.text).toContain('before');
    expect(pages[0]?.text).not.toContain('after');
  });
});

describe.runIf(process.platform === 'linux')('on a machine without any font', () => {
  it('the page prints the same, from our own', async () => {
    const folder = await mkdtemp(join(tmpdir(), 'no-fonts-'));
    try {
      await cp(dirname(fontconfigPath), folder, { recursive: true });
      const bare = join(folder, 'fonts.conf');
      const own = await readFile(bare, 'utf8');
      await writeFile(bare, own.replace(/<dir>.*<\/dir>/g, ''));
      const found = await findBrowser();
      const html = sample('<h1>Sans</h1><p>Serif ≤ ′ 30°</p>');
      const how = { paper: papers.A4, date };
      const environment = { ...found.environment, FONTCONFIG_FILE: bare };
      const printed = await withPrinter({ ...found, environment }, (bareOne) => bareOne.print(html, how));
      expect((await readPdf(printed)).pages[0]?.text).toContain('Serif ≤ ′ 30°');
      expect(Buffer.compare(Buffer.from(printed), Buffer.from(await printer.print(html, how)))).toBe(0);
    } finally {
      await rm(folder, { recursive: true });
    }
  });
});

describe('a printer', () => {
  it('is closed after use, and after an error too', async () => {
    const found = await findBrowser();
    const page = sample('<p>Text</p>');
    const how = { paper: papers.A4, date };
    let kept: Printer | undefined;
    await expect(
      withPrinter(found, async (opened) => {
        kept = opened;
        throw new Error('something else went wrong');
      }),
    ).rejects.toThrow('something else went wrong');
    await expect(kept!.print(page, how)).rejects.toThrow();
  });

  it('takes several prints at once, one after the other', async () => {
    const pages = ['one', 'two', 'three'].map((word) => sample(`<p>${word}</p>`));
    const printed = await Promise.all(pages.map((html) => printer.print(html, { paper: papers.A4, date })));
    const texts = await Promise.all(printed.map(async (pdf) => (await readPdf(pdf)).pages[0]?.text));
    expect(texts).toEqual(['one', 'two', 'three']);
  });

  it.runIf(process.platform === 'linux')('that is no browser is an error with the way out', async () => {
    const sources = { path: '/bin/true', origin: 'named', environment: {} } as const;
    await expect(openPrinter(sources)).rejects.toThrow('/bin/true does not start as a browser; name another');
  });
});
