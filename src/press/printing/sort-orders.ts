import { dirname } from 'node:path';
import type { Format } from '../formats/format.ts';
import { formats as allFormats } from '../formats/list.ts';
import { picturesIn } from '../packet/lesson-pictures.ts';
import { browserMark } from './browser-mark.ts';
import { keptMessage } from './kept-messages.ts';
import { type LedgerEntry, ledgerFile, ledgerPath, pictureMarks, removeDropped, standing } from './ledger.ts';
import type { Make, PrintOrder } from './order.ts';
import type { PageToPrint } from './print-all.ts';
import { removeStale } from './stale-files.ts';

export interface Sorting {
  /** The school's folder, where the lessons' pictures are. */
  readonly folder: string;
  readonly out: string;
  /** As `--browser` gives it. */
  readonly browser?: string | undefined;
  /** The day asked for; undefined where a page may keep the day on it. */
  readonly date: Date | undefined;
  /** Everything is printed again. */
  readonly again: boolean;
  /** All of the list where left out. */
  readonly formats?: readonly Format[] | undefined;
}

export interface Sorted {
  /** What is to be printed, in the order of the orders; each is entered in the ledger when printed. */
  readonly pages: readonly PageToPrint[];
  /** How many are left as they are; their warnings are repeated. */
  readonly unchanged: number;
}

/** Sorts what has to be printed from what is in the output folder already, with the same inputs. */
export async function sortOrders(orders: readonly PrintOrder[], sorting: Sorting): Promise<Sorted> {
  const { folder, out, browser, again, formats = allFormats } = sorting;
  const mark = await browserMark(browser);
  const date = sorting.date && dayOf(sorting.date);
  await removeStale(orders.map(({ path }) => dirname(ledgerPath(out, path))));
  const pages: PageToPrint[] = [];
  let unchanged = 0;
  for (const order of orders) {
    const key = order.key();
    const now = key && { key, date, browser: mark, findPicture: picturesIn(folder) };
    const found = now && !again ? await standing(out, order.path, now, formats) : undefined;
    if (found) {
      found.messages.forEach(order.hear);
      order.graded?.(found.grades);
      unchanged += 1;
      continue;
    }
    const make = await order.open();
    if (!make) continue;
    await removeDropped(out, order.path, formats);
    pages.push(pageOf(order, make, out, { inputs: key ?? '', browser: mark }));
  }
  return { pages, unchanged };
}

function pageOf(
  { path, date, graded }: PrintOrder,
  make: Make,
  out: string,
  from: Pick<LedgerEntry, 'inputs' | 'browser'>,
): PageToPrint {
  let found: Pick<LedgerEntry, 'messages' | 'pictures' | 'grades'> = {
    messages: [],
    pictures: {},
    grades: [],
  };
  return {
    path,
    document: async (print) => {
      const made = await make(print);
      if (made) {
        const { messages, pictures, grades = [] } = made;
        found = {
          messages: messages.map(keptMessage),
          pictures: pictureMarks(pictures),
          grades: [...grades],
        };
        graded?.(grades);
      }
      return made?.document;
    },
    alongside: (written) => ledgerFile(out, path, { ...from, ...found, date: dayOf(date) }, written),
  };
}

function dayOf(date: Date): string {
  return date.toISOString().slice(0, 10);
}
