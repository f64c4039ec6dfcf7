import { readFile } from 'node:fs/promises';
import { createRequire } from 'node:module';
import type { AxeResults } from 'axe-core';
import type { Page } from 'puppeteer-core';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { type HandbookPacket, handbookBook, handbookCards, handbookPackets } from './handbook-packets.ts';
import { openScreen, type Screen } from './screen.ts';

/*
 * The packets as they are on a screen, examined by axe-core with the rules of WCAG 2.0 to 2.2, levels A and AA, and
 * its own of good practice. It finds what a machine can find; it does not judge reading order and wording.
 */

const widths = { desktop: 1280, phone: 390 } as const;

let screen: Screen;
let axe: string;
let packets: readonly HandbookPacket[];

beforeAll(async () => {
  axe = await readFile(createRequire(import.meta.url).resolve('axe-core/axe.min.js'), 'utf8');
  [screen, packets] = await Promise.all([openScreen(), handbookPackets()]);
});
afterAll(() => screen?.close());

/** What is serious or critical in the page, each with the elements it was found in. */
async function findings(page: Page): Promise<string[]> {
  await page.evaluate(axe);
  const { violations } = (await page.evaluate(
    'axe.run(document, { resultTypes: ["violations"] })',
  )) as AxeResults;
  return violations
    .filter(({ impact }) => impact === 'serious' || impact === 'critical')
    .flatMap(({ id, help, nodes }) => nodes.map(({ html }) => `${id} (${help}): ${html.slice(0, 160)}`));
}

describe('axe-core', () => {
  it('finds what is seriously wrong in a page', async () => {
    const page = await screen.show(
      '<!doctype html><html><head><title>Sample</title></head><body><main><h1>One</h1><p style="color:#999;background:#fff">Pale</p><img src="data:,"></main></body></html>',
      widths.desktop,
    );
    const found = (await findings(page)).map((finding) => finding.split(' ')[0]);
    expect(found.sort()).toEqual(['color-contrast', 'html-has-lang', 'image-alt']);
  });

  it('has every aircraft and both editions before it', () => {
    expect(packets.length).toBeGreaterThanOrEqual(12);
    expect(new Set(packets.map(({ aircraft, edition }) => `${aircraft} ${edition}`)).size).toBe(6);
  });

  it.each(Object.entries(widths))(
    'finds nothing serious or critical in any lesson on a %s',
    async (_name, width) => {
      for (const { lesson, html } of packets) {
        const page = await screen.show(html, width);
        expect(await findings(page), lesson).toEqual([]);
        const overflow = await page.evaluate('document.documentElement.scrollWidth - window.innerWidth');
        expect(overflow, `${lesson} is wider than a screen of ${width} pixels`).toBeLessThanOrEqual(0);
      }
    },
  );

  let booksAndCards: Promise<Record<string, string>> | undefined;
  it.each(Object.entries(widths))(
    'finds nothing serious or critical in a whole book, or on a card, on a %s',
    async (_name, width) => {
      booksAndCards ??= Promise.all([handbookBook('osier-15'), handbookCards()]).then(([book, cards]) => ({
        book,
        ...cards,
      }));
      const pages = await booksAndCards;
      expect(Object.keys(pages)).toHaveLength(4);
      for (const [name, html] of Object.entries(pages)) {
        const page = await screen.show(html, width);
        expect(await findings(page), name).toEqual([]);
        const overflow = await page.evaluate('document.documentElement.scrollWidth - window.innerWidth');
        expect(overflow, `${name} is wider than a screen of ${width} pixels`).toBeLessThanOrEqual(0);
      }
    },
  );
});
