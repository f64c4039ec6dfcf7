import type { VFileMessage } from 'vfile-message';
import type { PlanGrade } from '../../flight/terms/caution.ts';
import type { FoundPicture } from '../../lesson/pictures.ts';
import type { Print } from '../formats/format.ts';
import type { PageDocument } from '../formats/page-document.ts';
import type { KeptMessage } from './ledger.ts';

/** A page, computed, and what was found on the way. */
export interface Made {
  readonly document: PageDocument;
  /** Warnings: a page with an error is not made. */
  readonly messages: readonly VFileMessage[];
  /** Those of the lessons in it. */
  readonly pictures: readonly FoundPicture[];
  /** Of the plans in it. */
  readonly grades?: readonly PlanGrade[] | undefined;
}

/** Prints on the way where it must see how a page falls. Undefined where there is no page: what said so is a message elsewhere. */
export type Make = (print: Print) => Made | undefined | Promise<Made | undefined>;

/** Something that is wanted on paper, not yet computed. */
export interface PrintOrder {
  /** Where it belongs under the output folder, without an ending: `power-off-180/osier-15`. */
  readonly path: string;
  readonly date: Date;
  /**
   * Of all that enters but its date, its pictures and the browser, found without a flight. Undefined where it cannot be
   * made; what says so is a message elsewhere.
   */
  readonly key: () => string | undefined;
  /** Reads what it is made of; undefined where that has an error, which its messages say. */
  readonly open: () => Promise<Make | undefined>;
  /** Says a warning again that it had when it was printed. */
  readonly hear: (message: KeptMessage) => void;
  /** Is told the grades of the plans in it, as soon as it is made, or found standing as it was printed. */
  readonly graded?: ((grades: readonly PlanGrade[]) => void) | undefined;
}
