import { describe, expect, it } from 'vitest';
import { papers } from '../paper/paper.ts';
import { NoBrowserError } from './find-browser.ts';
import { LostBrowserError, lastingPrinter } from './lasting-printer.ts';
import { type Printer, UnprintableError } from './print-pdf.ts';

const how = { paper: papers.A4, date: new Date(0) };

/** Browsers that the page `deadly` ends, and that one page in all, `unlucky`, finds already ended. */
function trialBrowsers() {
  const opened: string[][] = [];
  let closed = 0;
  let wasUnlucky = false;
  const open = async (): Promise<Printer> => {
    const seen: string[] = [];
    opened.push(seen);
    let isOpen = true;
    return {
      isOpen: () => isOpen,
      close: async () => {
        if (isOpen) closed += 1;
        isOpen = false;
      },
      print: async (html) => {
        seen.push(html);
        await Promise.resolve();
        if (html === 'wide') throw new UnprintableError(['too wide']);
        if (html === 'deadly' || (html === 'unlucky' && !wasUnlucky)) {
          if (html === 'unlucky') wasUnlucky = true;
          closed += 1;
          isOpen = false;
        }
        if (!isOpen) throw new Error('Target closed');
        return Buffer.from(html);
      },
    };
  };
  return { open, opened, closed: () => closed };
}

describe('a printer that lasts', () => {
  it('starts no browser before there is something to print, and one for all pages', async () => {
    const { open, opened, closed } = trialBrowsers();
    const printer = lastingPrinter(open);
    expect(opened).toHaveLength(0);
    await Promise.all(['one', 'two', 'three'].map((html) => printer.print(html, how)));
    expect(opened).toEqual([['one', 'two', 'three']]);
    await printer.close();
    expect(closed()).toBe(1);
  });

  it('prints a page again, alone, when its browser ends, and the next ones in a new one', async () => {
    const { open, opened, closed } = trialBrowsers();
    const printer = lastingPrinter(open);
    expect(String(await printer.print('unlucky', how))).toBe('unlucky');
    expect(String(await printer.print('next', how))).toBe('next');
    expect(opened).toEqual([['unlucky'], ['unlucky'], ['next']]);
    await printer.close();
    expect(closed()).toBe(3);
  });

  it('gives a page up that ends two browsers, and prints those that were printed beside it', async () => {
    const { open } = trialBrowsers();
    const printer = lastingPrinter(open);
    const [deadly, beside] = await Promise.allSettled([
      printer.print('deadly', how),
      printer.print('beside', how),
    ]);
    expect(deadly).toMatchObject({ status: 'rejected', reason: expect.any(LostBrowserError) });
    expect(deadly).toMatchObject({ reason: { message: expect.stringContaining('ended twice') } });
    expect(beside.status).toBe('fulfilled');
    expect(String(await printer.print('after', how))).toBe('after');
  });

  it('tries what is wrong with the page itself, or a missing browser, once', async () => {
    const { open, opened } = trialBrowsers();
    const printer = lastingPrinter(open);
    await expect(printer.print('wide', how)).rejects.toThrow(UnprintableError);
    expect(opened).toEqual([['wide']]);
    let asked = 0;
    const none = lastingPrinter(async () => {
      asked += 1;
      throw new NoBrowserError('none');
    });
    for (let time = 0; time < 3; time += 1)
      await expect(none.print('page', how)).rejects.toThrow(NoBrowserError);
    expect(asked).toBe(1);
    await none.close();
  });

  it('opens nothing after it was closed, also for a page that it was at', async () => {
    const { open, opened } = trialBrowsers();
    const printer = lastingPrinter(open);
    await printer.print('one', how);
    const dropped = printer.print('deadly', how);
    await Promise.all([expect(dropped).rejects.toThrow(), printer.close()]);
    await expect(printer.print('two', how)).rejects.toThrow('closed');
    expect(opened).toHaveLength(1);
  });
});
