import type { PrintOrder } from '../press/printing/order.ts';
import { sortOrders } from '../press/printing/sort-orders.ts';
import { exitCodes, type PrintTo, printPages } from './print-pages.ts';

/** What a command that prints orders is asked for. */
export interface PrintAsked extends PrintTo {
  /** The day asked for. */
  readonly date?: Date | undefined;
  /** Also what has not changed. */
  readonly again?: boolean | undefined;
}

/** Prints what has changed, and says how many of a `kind` were left as they were; the exit code is that of the printing. */
export async function printOrders(
  orders: readonly PrintOrder[],
  kind: string,
  folder: string,
  asked: PrintAsked,
): Promise<number> {
  const { out, browser, date, again = false } = asked;
  const { pages, unchanged } = await sortOrders(orders, { folder, out, browser, date, again });
  const printed = pages.length > 0 ? await printPages(pages, asked) : exitCodes.built;
  if (unchanged > 0) process.stdout.write(`${unchangedWords(unchanged, kind)}\n`);
  return printed;
}

function unchangedWords(count: number, kind: string): string {
  return count === 1
    ? `1 ${kind} stands as it was: nothing in it has changed.`
    : `${count} ${kind}s stand as they were: nothing in them has changed.`;
}
