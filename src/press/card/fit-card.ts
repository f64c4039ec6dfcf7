import type { Element } from 'hast';
import { type Printer, UnprintableError } from '../print-pdf.ts';
import { type CardInput, cardBody, cardHtml } from './card.ts';
import type { CardSetting } from './card-style.ts';

/** pt: what is still read at arm's length (common practice, no source). The heights at the keys are half as large again. */
export const smallestType = 11;

/** The largest type that fits is taken; then the room between the lines goes, and the type no smaller. */
export const settings: readonly CardSetting[] = [
  ...[13, 12.5, 12, 11.5, smallestType].map((size) => ({ size, air: 1 })),
  { size: smallestType, air: 0.5 },
  { size: smallestType, air: 0 },
];
const tightest = settings.at(-1)!;

export interface PrintedCard {
  readonly html: string;
  readonly pdf: Uint8Array;
  readonly setting: CardSetting;
}

/**
 * Prints a card in the largest type in which it is one page; nothing is left out to make it fit.
 * Throws UnprintableError where it is more than a page in the smallest.
 */
export async function printCard(printer: Printer, input: CardInput): Promise<PrintedCard> {
  const body = cardBody(input);
  let fitted: PrintedCard | undefined;
  let wrong: readonly string[] = [];
  // What fits in one setting fits in every tighter one: halving finds the largest in three prints.
  let [from, to] = [0, settings.length];
  while (from < to) {
    const middle = Math.floor((from + to) / 2);
    const tried = await tryOn(printer, body, input, settings[middle]!);
    if ('pdf' in tried) {
      fitted = tried;
      to = middle;
    } else {
      wrong = tried.wrong;
      from = middle + 1;
    }
  }
  if (fitted) return fitted;
  throw new UnprintableError(wrong);
}

async function tryOn(
  printer: Printer,
  body: Element,
  input: CardInput,
  setting: CardSetting,
): Promise<PrintedCard | { readonly wrong: readonly string[] }> {
  const { paper, date, plan } = input;
  const html = cardHtml(body, input, setting);
  try {
    const pdf = await printer.print(html, { paper, date });
    if (pageCount(pdf) === 1) return { html, pdf, setting };
  } catch (error) {
    if (!(error instanceof UnprintableError)) throw error;
    return { wrong: error.messages };
  }
  const full =
    `The card of ${plan.aircraft.name} is more than one page of ${paper.name} with its text at ${smallestType} pt, the ` +
    "smallest read at arm's length: shorten the engine-failure list of its file, or choose an approach and a wind with " +
    'fewer cautions.';
  return { wrong: [full] };
}

/** The card where there is no browser to try sizes in: set as tightly as any, which fits where any way does. */
export function unprintedCard(input: CardInput): string {
  return cardHtml(cardBody(input), input, tightest);
}

/**
 * Page objects (ISO 32000-1, 7.7.3.3) as the browser writes them, uncompressed. Throws where it finds none: then the PDF
 * is not built as expected.
 */
function pageCount(pdf: Uint8Array): number {
  const found =
    Buffer.from(pdf)
      .toString('latin1')
      .match(/\/Type ?\/Page\b(?!s)/g)?.length ?? 0;
  if (found === 0) throw new Error('The PDF has no page that can be counted.');
  return found;
}
