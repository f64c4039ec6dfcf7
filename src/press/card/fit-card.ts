import type { Print } from '../formats/format.ts';
import type { PageDocument } from '../formats/page-document.ts';
import { UnprintableError } from '../printing/print-pdf.ts';
import { type CardInput, cardBody, cardDocument } from './card.ts';
import type { CardSetting } from './card-style.ts';

/**
 * pt: what can still be read at arm's length (common practice, no source). The heights at the keys are half as large
 * again.
 */
const smallestType = 11;

/** The largest type that fits is used; once it is the smallest, only the room between the lines shrinks. */
export const settings: readonly CardSetting[] = [
  ...[13, 12.5, 12, 11.5, smallestType].map((size) => ({ size, air: 1 })),
  { size: smallestType, air: 0.5 },
  { size: smallestType, air: 0 },
];
const tightest = settings.at(-1)!;

export interface FittedCard {
  readonly document: PageDocument;
  readonly setting: CardSetting;
}

/**
 * Prints a card in the largest type in which it is one page; nothing is left out to make it fit. Where there is no
 * browser to try sizes in, it is set in the tightest way, which fits if any does. Throws UnprintableError where even
 * the tightest way takes more than a page.
 */
export async function fitCard(print: Print, input: CardInput): Promise<FittedCard> {
  const body = cardBody(input);
  let fitted: FittedCard | undefined;
  let wrong: readonly string[] = [];
  // What fits in one setting fits in every tighter one, so halving finds the largest in three prints.
  let [from, to] = [0, settings.length];
  while (from < to) {
    const middle = Math.floor((from + to) / 2);
    const setting = settings[middle]!;
    const document = cardDocument(body, input, setting);
    const tried = await tryOn(print, document, input);
    if (tried === undefined) return { document: cardDocument(body, input, tightest), setting: tightest };
    if ('fits' in tried) {
      fitted = { document, setting };
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
  print: Print,
  document: PageDocument,
  { paper, plan }: CardInput,
): Promise<{ readonly fits: true } | { readonly wrong: readonly string[] } | undefined> {
  try {
    const pdf = await print(document);
    if (pdf === undefined) return undefined;
    if (pageCount(pdf) === 1) return { fits: true };
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
