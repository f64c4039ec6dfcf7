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

/**
 * Prints on the way where it has to see how a page comes out. Undefined where there is no page: a message elsewhere
 * says why.
 */
export type Make = (print: Print) => Made | undefined | Promise<Made | undefined>;

/** Something that is wanted on paper, not yet computed. */
export interface PrintOrder {
  /** Where it belongs under the output folder, without an ending: `power-off-180/osier-15`. */
  readonly path: string;
  readonly date: Date;
  /**
   * Covers everything that goes in except the date, the pictures and the browser, and is found without a flight.
   * Undefined where it cannot be made; a message elsewhere says why.
   */
  readonly key: () => string | undefined;
  /** Reads what it is made of; undefined where that has an error, which its messages name. */
  readonly open: () => Promise<Make | undefined>;
  /** Repeats a warning that it had when it was printed. */
  readonly hear: (message: KeptMessage) => void;
  /** Is told the grades of the plans in it, as soon as it is made or found unchanged. */
  readonly graded?: ((grades: readonly PlanGrade[]) => void) | undefined;
}
