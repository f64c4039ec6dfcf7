import { NoBrowserError } from './find-browser.ts';
import { type Printer, type PrintOptions, UnprintableError } from './print-pdf.ts';

/** The browser ended, or gave no answer, each time it was to print this page. */
export class LostBrowserError extends Error {
  override readonly name = 'LostBrowserError';
}

/**
 * A printer that starts its browser with the first page, and another one if that ends before it is told to (killed,
 * crashed, out of memory). The page it was printing is then tried once more, in a browser that prints nothing else:
 * if that one ends too, the page itself is the cause. Throws LostBrowserError for it; any other page can still be
 * printed.
 */
export function lastingPrinter(open: () => Promise<Printer>): Omit<Printer, 'isOpen'> {
  const opened = new Set<Promise<Printer>>();
  let shared: Promise<Printer> | undefined;
  let isClosed = false;

  const begin = (): Promise<Printer> => {
    if (isClosed) throw new Error('The printer is closed.');
    const printer = open();
    opened.add(printer);
    return printer;
  };
  const end = async (printer: Promise<Printer>): Promise<void> => {
    opened.delete(printer);
    await printer.then((each) => each.close()).catch(() => undefined);
  };
  const sharedPrinter = async (): Promise<Printer> => {
    const now = shared ?? begin();
    shared = now;
    const printer = await now;
    if (printer.isOpen()) return printer;
    // Whoever sees it first starts the next one for all.
    if (shared === now) {
      shared = undefined;
      await end(now);
    }
    return sharedPrinter();
  };
  const printAlone = async (html: string, how: PrintOptions): Promise<Uint8Array> => {
    const own = begin();
    try {
      return await (await own).print(html, how);
    } finally {
      await end(own);
    }
  };

  return {
    print: async (html, how) => {
      try {
        return await (await sharedPrinter()).print(html, how);
      } catch (error) {
        if (isClosed || isSaid(error)) throw error;
      }
      try {
        return await printAlone(html, how);
      } catch (error) {
        if (isClosed || isSaid(error)) throw error;
        throw new LostBrowserError(
          `the browser ended twice while it printed this page (${(error as Error).message})`,
          { cause: error },
        );
      }
    },
    close: async () => {
      isClosed = true;
      await Promise.all([...opened].map(end));
    },
  };
}

/** The error says what is wrong, and another browser would say the same. */
function isSaid(error: unknown): boolean {
  return error instanceof UnprintableError || error instanceof NoBrowserError;
}
