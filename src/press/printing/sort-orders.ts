import { dirname } from 'node:path';
import { type PacketOrder, removeRepeats } from '../build.ts';
import { browserMark } from './browser-mark.ts';
import { keptMessage, sayAgain } from './kept-messages.ts';
import { ledgerFile, ledgerPath, standing } from './ledger.ts';
import type { PageToPrint } from './print-all.ts';
import { removeStale } from './stale-files.ts';

export interface Sorting {
  readonly out: string;
  /** As of `--browser`. */
  readonly browser?: string | undefined;
  /** The day asked for; undefined where a packet may keep the day that it bears. */
  readonly date: Date | undefined;
  /** Every packet is printed again. */
  readonly again: boolean;
}

export interface Sorted {
  /** What is to be printed, in the order of the orders; printed, each is entered in the ledger. */
  readonly pages: readonly PageToPrint[];
  /** How many stand as they are; their warnings are on their lessons' files again. */
  readonly unchanged: number;
}

/** Tells the packets that are to be printed from those that stand in the output folder with the same inputs. */
export async function sortOrders(orders: readonly PacketOrder[], sorting: Sorting): Promise<Sorted> {
  const { out, browser, again } = sorting;
  const mark = await browserMark(browser);
  const date = sorting.date && dayOf(sorting.date);
  await removeStale(orders.map(({ path }) => dirname(ledgerPath(out, path))));
  const pages: PageToPrint[] = [];
  for (const order of orders) {
    const key = order.key();
    const found = key && !again ? await standing(out, order.path, { key, date, browser: mark }) : undefined;
    if (found) for (const message of found.messages) sayAgain(message, order.file);
    else pages.push(pageOf(order, out, mark, key));
  }
  return { pages, unchanged: orders.length - pages.length };
}

function pageOf(order: PacketOrder, out: string, browser: string | undefined, key = ''): PageToPrint {
  const { path, paper, date, file } = order;
  let messages: ReturnType<typeof keptMessage>[] = [];
  return {
    path,
    paper,
    date,
    html: () => {
      const made = order.make();
      messages = (made?.messages ?? []).map(keptMessage);
      removeRepeats(file);
      return made && { html: made.packet.html, screen: made.packet.screen() };
    },
    alongside: (printed) =>
      ledgerFile(out, path, { inputs: key, date: dayOf(date), browser, messages }, printed),
  };
}

function dayOf(date: Date): string {
  return date.toISOString().slice(0, 10);
}
