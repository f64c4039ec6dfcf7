import { type ChildProcess, spawn } from 'node:child_process';
import { cp, mkdtemp, readFile, rm, writeFile } from 'node:fs/promises';
import { createRequire } from 'node:module';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import type { AxeResults } from 'axe-core';
import { toHtml } from 'hast-util-to-html';
import type { Page } from 'puppeteer-core';
import remarkGfm from 'remark-gfm';
import remarkParse from 'remark-parse';
import remarkRehype from 'remark-rehype';
import { unified } from 'unified';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { openPage, openWindow } from './screen.ts';

/*
 * The page of `chalkwing desk` as an instructor meets it: a real browser, the real command, a copy of the lessons.
 */

const here = (path: string) => fileURLToPath(new URL(path, import.meta.url));

let home: string;
let desk: ChildProcess;
let address: string;
let browser: Awaited<ReturnType<typeof openWindow>>;
let page: Page;
const lesson = (name: string) => join(home, 'lessons', name);
const onDisk = (name: string) => readFile(lesson(name), 'utf8');

beforeAll(async () => {
  home = await mkdtemp(join(tmpdir(), 'chalkwing-page-'));
  await cp(here('../lessons'), join(home, 'lessons'), { recursive: true });
  [address, browser] = await Promise.all([startDesk(), openWindow()]);
  page = await openPage(browser.context);
  page.on('pageerror', (error) => void mistakes.push(String(error)));
  page.on('dialog', (dialog) => void dialog.accept());
});
afterAll(async () => {
  await browser?.close();
  desk?.kill();
  await rm(home, { recursive: true, force: true });
});

const mistakes: string[] = [];

function startDesk(): Promise<string> {
  const args = [here('../src/cli/chalkwing.js'), 'desk', '--school', 'lessons', '--out', 'out'];
  desk = spawn(process.execPath, args, { cwd: home, stdio: ['ignore', 'pipe', 'inherit'] });
  return new Promise((resolve, reject) => {
    let text = '';
    desk.stdout!.on('data', (part) => {
      text += part;
      if (text.includes('\n')) resolve(text.split('\n')[0]!);
    });
    desk.on('exit', reject);
  });
}

/** Opens the desk at a file, and waits for its first page. */
async function openAt(file: string, width = 1280, height = 800): Promise<void> {
  await page.setViewport({ width, height });
  await page.goto(address.replace('/?', `/?file=${file}&`));
  await page.waitForSelector('body[data-ready][data-made]');
}

const open = (file: string) =>
  page
    .click(`button[value="${file}"]`)
    .then(() =>
      page.waitForFunction((name) => document.getElementById('name')?.textContent === name, {}, file),
    );

/** Waits until the packet's frame has the words, or no longer has them. */
const pageHas = (words: string, has = true) =>
  page.waitForFunction(
    (text, wanted) => {
      const frame = document.getElementById('sheet') as HTMLIFrameElement;
      return frame.contentDocument?.body.textContent?.includes(text) === wanted;
    },
    {},
    words,
    has,
  );
/** Waits until the list of completions takes keys: the editor sends none to a list that has only just appeared. */
const completionIsOpen = () =>
  page.waitForFunction(() => {
    const list = document.querySelector<HTMLElement>('.cm-tooltip-autocomplete:has([aria-selected])');
    if (list === null) return false;
    list.dataset.since ??= `${performance.now()}`;
    // `interactionDelay` of @codemirror/autocomplete is 75 ms, on the page's own clock.
    return performance.now() - Number(list.dataset.since) > 75;
  });
/** Waits until the editor has the words: the page may have them sooner, from the disk. */
const editorHas = (words: string) =>
  page.waitForFunction(
    (text) => {
      const content = document.querySelector('.cm-content') as unknown as {
        cmTile?: { root?: { view?: { state: { doc: { toString(): string } } } } };
      } | null;
      return content?.cmTile?.root?.view?.state.doc.toString().includes(text);
    },
    {},
    words,
  );
const pageText = () =>
  page.$eval('#sheet', (frame) => (frame as HTMLIFrameElement).contentDocument!.body.textContent ?? '');
const savedIs = (words: string) =>
  page.waitForFunction((text) => document.getElementById('saved')?.textContent === text, {}, words);
const textOf = (selector: string) => page.$eval(selector, (found) => found.textContent ?? '');

async function press(...keys: string[]): Promise<void> {
  for (const combination of keys) {
    const parts = combination.split('+');
    const last = parts.pop()!;
    for (const key of parts) await page.keyboard.down(key as 'Control');
    await page.keyboard.press(last as 'Enter');
    for (const key of parts) await page.keyboard.up(key as 'Control');
  }
}

async function toEnd(): Promise<void> {
  await page.focus('.cm-content');
  await press('Control+End');
}

async function findings(): Promise<string[]> {
  const axe = await readFile(createRequire(import.meta.url).resolve('axe-core/axe.min.js'), 'utf8');
  // Through the browser's own channel: the page's policy lets in nothing that is not its own.
  await page.evaluate(axe);
  // In the frame is the packet, which `accessible.test.ts` examines; nothing can run in it.
  const { violations } = (await page.evaluate(
    'axe.run(document, { resultTypes: ["violations"], iframes: false })',
  )) as AxeResults;
  return violations
    .filter(({ impact }) => impact === 'serious' || impact === 'critical')
    .flatMap(({ id, help, nodes }) => nodes.map(({ html }) => `${id} (${help}): ${html.slice(0, 160)}`));
}

describe('an instructor at the desk', () => {
  it('writes a lesson from nothing, with a directive completed', async () => {
    await openAt('power-off-180.md');
    await page.click('#new-lesson');
    await page.keyboard.type('Trial of the evening');
    await press('Enter');
    await page.waitForFunction(
      () => document.getElementById('name')?.textContent === 'trial-of-the-evening.md',
    );
    await pageHas('Trial of the evening');
    await toEnd();
    await page.keyboard.type(':::obj');
    await completionIsOpen();
    await press('Enter');
    await page.keyboard.type('To bring the wheels down at dusk.');
    await pageHas('To bring the wheels down at dusk.');
    await savedIs('not saved');
    await press('Control+s');
    await savedIs('saved');
    expect(await onDisk('trial-of-the-evening.md')).toMatch(
      /^---\ntitle: "Trial of the evening"\napproach: "180"\n---\n\n:::objective\nTo bring the wheels down at dusk\.\n:::\n/,
    );
  });

  it('is told of a mistake below its line while the last good page stays, and mends it', async () => {
    await toEnd();
    await page.keyboard.type('\nWords before.\n\n::patern');
    await press('Escape');
    // From the whole word: on a busy machine it may be read before it is typed to the end.
    await page.waitForFunction(() =>
      document.querySelector('.said-below.error')?.textContent?.includes('patern'),
    );
    const said = await page.$eval('.said-below.error', (found) => [
      found.textContent,
      found.previousElementSibling?.textContent,
    ]);
    expect(said[0]).toContain('patern');
    expect(said[1]).toBe('::patern');
    expect(await textOf('#messages')).toMatch(/Line \d+: [^W].*patern/);
    expect(await textOf('#page-said')).toBe('The page is as it was before the error.');
    expect(await pageText()).toContain('To bring the wheels down at dusk.');
    // The first message is a warning about something else that a lesson plan should have.
    await press('Control+Home', 'F8', 'F8');
    await press('End', 'Backspace', 'Backspace', 'Backspace');
    await page.keyboard.type('tern');
    await press('Escape');
    await page.waitForFunction(() => document.querySelector('.said-below.error') === null);
    await page.waitForFunction(() =>
      (document.getElementById('sheet') as HTMLIFrameElement).contentDocument?.querySelector(
        'figure.pattern',
      ),
    );
    expect(await textOf('#page-said')).toBe('');
    await press('Control+s');
    await savedIs('saved');
  });

  it('turns to another aircraft, and every figure follows', async () => {
    await open('power-off-180.md');
    await pageHas('The 180° power-off approach');
    await pageHas('Osier 15');
    const before = await pageText();
    await page.select('#choice-aircraft', 'withy-80');
    await pageHas('Osier 15', false);
    const after = await pageText();
    const figures = (text: string) => text.match(/\d[\d,.]*\s(ft|kt|m|s)\b/g) ?? [];
    expect(after).toContain('Withy 80');
    expect(figures(after).length).toBeGreaterThan(50);
    expect(figures(after).join()).not.toBe(figures(before).join());
    await page.focus('#choice-wind');
    await page.keyboard.type('nonsense');
    await page.waitForFunction(() =>
      document.getElementById('setting-said')?.textContent?.startsWith('Wind:'),
    );
    await page.$eval('#choice-wind', (input) => {
      (input as HTMLInputElement).value = '';
    });
    await page.keyboard.type('calm');
    await pageHas('calm');
    await page.select('#choice-aircraft', '');
    await page.$eval('#choice-wind', (input) => {
      (input as HTMLInputElement).value = '';
      input.dispatchEvent(new Event('input', { bubbles: true }));
    });
    await pageHas('wind 225');
  });

  it('sees what another program writes in a file that is not changed here', async () => {
    await open('trial-of-the-evening.md');
    await toEnd();
    const text = await onDisk('trial-of-the-evening.md');
    await writeFile(lesson('trial-of-the-evening.md'), text.replace('at dusk', 'before the lamps are lit'));
    await pageHas('before the lamps are lit');
    await editorHas('before the lamps are lit');
    await savedIs('saved');
    // The cursor is where it was: at the end.
    await page.keyboard.type('\n\nLast words.');
    await press('Control+s');
    await savedIs('saved');
    expect(await onDisk('trial-of-the-evening.md')).toMatch(/before the lamps are lit[\s\S]*Last words\.$/);
  });

  it('loses nothing where another program has changed the same file', async () => {
    const name = 'trial-of-the-evening.md';
    const conflict = async (mine: string, theirs: string) => {
      await toEnd();
      await page.keyboard.type(`\n\n${mine}`);
      await savedIs('not saved');
      await writeFile(lesson(name), `${await onDisk(name)}\n\n${theirs}\n`);
      await page.waitForSelector('#both-dialog[open]');
      const both = await textOf('#both-texts');
      expect(both).toContain(mine);
      expect(both).toContain(theirs);
    };
    const closed = () => page.waitForSelector('#both-dialog:not([open])');

    await conflict('Mine the first.', 'Theirs the first.');
    await page.click('#keep-both');
    await closed();
    await savedIs('saved');
    expect(await onDisk(name)).toContain('Theirs the first.');
    expect(await onDisk('trial-of-the-evening-mine.md')).toContain('Mine the first.');

    await conflict('Mine the second.', 'Theirs the second.');
    await page.click('#take-theirs');
    await closed();
    await savedIs('saved');
    await page.focus('.cm-content');
    await press('Control+z');
    await savedIs('not saved');
    await pageHas('Mine the second.');
    await press('Control+y');
    await savedIs('saved');

    await conflict('Mine the third.', 'Theirs the third.');
    await press('Escape');
    await closed();
    await savedIs('changed by another program too');
    await page.focus('.cm-content');
    await press('Control+s');
    await page.waitForSelector('#both-dialog[open]');
    expect(await findings()).toEqual([]);
    await page.click('#keep-mine');
    await closed();
    await savedIs('saved');
    expect(await onDisk(name)).toContain('Mine the third.');
  });

  it('loses nothing by a reload', async () => {
    await toEnd();
    await page.keyboard.type('\n\nNot saved yet.');
    await pageHas('Not saved yet.');
    await page.reload();
    await page.waitForSelector('body[data-ready][data-made]');
    await pageHas('Not saved yet.');
    await savedIs('not saved');
    expect(await onDisk('trial-of-the-evening.md')).not.toContain('Not saved yet.');
    await page.focus('.cm-content');
    await press('Control+s');
    await savedIs('saved');
  });

  it('sees the pages as they are printed', async () => {
    await page.click('#as-pages');
    await page.waitForSelector('#pages canvas');
    const written = ['pdf', 'html', 'txt'].map((ending) => `out/trial-of-the-evening/osier-15.${ending}`);
    expect(await textOf('#printed-said')).toBe(`Printed: ${written.join(', ')}`);
    const canvases = await page.$$eval('#pages canvas', (found) => {
      const [first] = found as HTMLCanvasElement[];
      const { data } = first!.getContext('2d')!.getImageData(0, 0, first!.width, first!.height);
      const isInk = (_: number, at: number) => at % 4 === 0 && data[at]! < 80;
      return { count: found.length, ink: data.filter(isInk).length };
    });
    expect(canvases.count).toBeGreaterThan(2);
    expect(canvases.ink).toBeGreaterThan(1_000);
    await page.click('#as-sheet');
    await toEnd();
    await page.keyboard.type(' ');
    await page.waitForFunction(() =>
      document.getElementById('printed-said')?.textContent?.includes('Since then'),
    );
    await press('Control+s');
    await savedIs('saved');
  });

  it('needs no mouse', async () => {
    await openAt('power-off-90.md');
    const focused = () =>
      page.evaluate(() => (document.activeElement as HTMLButtonElement | null)?.value ?? '');
    for (let step = 0; step < 60 && (await focused()) !== 'crosswind-landings.md'; step += 1)
      await press('Tab');
    expect(await focused()).toBe('crosswind-landings.md');
    await press('Enter');
    await page.waitForFunction(
      () => document.getElementById('name')?.textContent === 'crosswind-landings.md',
    );
    await press('F6', 'Control+End');
    await page.keyboard.type('\n\nBy keyboard alone.\n');
    await pageHas('By keyboard alone.');
    await press('Control+s');
    await savedIs('saved');
    expect(await onDisk('crosswind-landings.md')).toContain('By keyboard alone.');
    await press('Escape', 'Tab');
    expect(
      await page.evaluate(() => document.querySelector('.cm-editor')!.contains(document.activeElement)),
    ).toBe(false);
  });

  it('runs nothing that stands in a lesson', async () => {
    await open('trial-of-the-evening.md');
    const run = "parent.document.body.dataset.ran='1'";
    await toEnd();
    await page.keyboard.type('\n\n<script>');
    await page.keyboard.type(
      `${run}</script><img src=x onerror="${run}">\n\n[a](javascript:${run})\n\nAfter it all.`,
    );
    await page.waitForFunction(
      () =>
        document.getElementById('count')?.textContent !== 'No messages' ||
        document.body.dataset.page === 'made',
    );
    // What the server removes would not run anyway: put into the frame by force, in the desk's own name. It is all
    // over once the picture has failed: its own handler is told first, then ours.
    await page.$eval(
      '#sheet',
      (frame, code) => {
        const { body } = (frame as HTMLIFrameElement).contentDocument!;
        const script = body.ownerDocument.createElement('script');
        script.textContent = code;
        const image = body.ownerDocument.createElement('img');
        image.setAttribute('onerror', code);
        const failed = new Promise<void>((resolve) => {
          image.addEventListener('error', () => resolve());
        });
        image.src = 'data:image/png,none';
        body.append(script, image);
        return failed;
      },
      run,
    );
    expect(await page.evaluate(() => document.body.dataset.ran)).toBeUndefined();
    await page.$eval('#sheet', (frame) => {
      for (const found of (frame as HTMLIFrameElement).contentDocument!.querySelectorAll(
        'body > script, body > img',
      ))
        found.remove();
    });
    await press('Control+z', 'Control+z', 'Control+z');
  });
});

describe('the page of the desk', () => {
  it('has nothing seriously wrong for axe-core, on a laptop and on a phone, and never scrolls sideways', async () => {
    for (const width of [1440, 820, 390]) {
      await openAt('faults/final.yaml', width, 844);
      expect(await findings(), `${width} px`).toEqual([]);
      for (const part of ['files', 'page', 'text']) {
        const button = await page.$(`[data-part=${part}]`);
        if (await button?.isVisible()) await button!.click();
        const over = await page.evaluate('document.documentElement.scrollWidth - window.innerWidth');
        expect(over, `${part} at ${width} px`).toBeLessThanOrEqual(0);
        if (width === 390) expect(await findings(), `${part} at 390 px`).toEqual([]);
      }
    }
  });

  it('follows a letter that is typed (the time is printed, for a quiet machine)', async () => {
    await openAt('power-off-180.md', 1440, 900);
    await page.click('.cm-line:nth-of-type(17)');
    await page.$eval('#sheet', (frame) => {
      const { body } = (frame as HTMLIFrameElement).contentDocument!;
      body.querySelector<HTMLElement>('figure.profile')!.dataset.touched = 'never';
      body.querySelector('figure.profile')!.scrollIntoView();
    });
    const scrolled = () =>
      page.$eval(
        '#sheet',
        (frame) => (frame as HTMLIFrameElement).contentDocument!.documentElement.scrollTop,
      );
    const place = await scrolled();
    const times: number[] = [];
    const served: number[] = [];
    for (const letter of 'abcdefghijklmno') {
      const { made } = await page.evaluate(() => ({ ...document.body.dataset }));
      await page.keyboard.type(letter);
      await page.waitForFunction((before) => document.body.dataset.made !== before, { polling: 5 }, made);
      const { took, server } = await page.evaluate(() => ({ ...document.body.dataset }));
      times.push(Number(took));
      served.push(Number(server));
    }
    const bare = bareTimes(await onDisk('power-off-180.md'));
    const [all, own, plain] = [median(times), median(served), median(bare)];
    process.stdout.write(
      `desk: a letter is on the page after ${all.toFixed(0)} ms (server ${own.toFixed(0)} ms); bare Markdown ${plain.toFixed(1)} ms, ratio ${(all / plain).toFixed(1)}\n`,
    );
    expect(all).toBeGreaterThan(0);
    expect(await pageText()).toContain('abcdefghijklmno');
    // Nothing else was made again, and the reader's place is the same.
    expect(place).toBeGreaterThan(0);
    expect(Math.abs((await scrolled()) - place)).toBeLessThan(40);
    const shown = () =>
      page.$eval('#sheet', (frame) => (frame as HTMLIFrameElement).contentDocument!.body.outerHTML);
    const replaced = await shown();
    expect(replaced).toContain(' data-touched="never"');
    await page.reload();
    await page.waitForSelector('body[data-ready][data-made]');
    await pageHas('abcdefghijklmno');
    expect(replaced.replace(' data-touched="never"', '')).toBe(await shown());
  });

  it('keeps the text, and says so, when the desk is closed', async () => {
    desk.kill();
    await page.waitForSelector('#lost:not([hidden])');
    expect(await textOf('#lost')).toMatch(/does not answer/);
    await page.focus('.cm-content');
    await press('Control+s');
    await page.waitForFunction(() => document.getElementById('saved')?.textContent?.startsWith('not saved'));
  });

  it('made no mistake of its own in all this', () => {
    expect(mistakes).toEqual([]);
  });
});

const median = (values: readonly number[]) => [...values].sort((a, b) => a - b)[values.length >> 1]!;

/** ms: the same text through Markdown alone. */
function bareTimes(text: string): number[] {
  const bare = unified().use(remarkParse).use(remarkGfm).use(remarkRehype);
  return Array.from({ length: 25 }, () => {
    const start = performance.now();
    toHtml(bare.runSync(bare.parse(text)));
    return performance.now() - start;
  });
}
