import type { Element } from 'hast';
import type { Sheet } from '../paper/paper.ts';

/** A page as a tree, with all of its style. */
export interface Page {
  readonly title: string;
  readonly css: string;
  /** More elements for its head, before the title. */
  readonly head?: readonly Element[] | undefined;
  /** The `body` element. */
  readonly body: Element;
}

/** What is wanted on paper and in every other format: a tree until one of the formats writes it. */
export interface PageDocument extends Page {
  /** The sheet that its text was set for. */
  readonly paper: Sheet;
  /** The date of its inputs. */
  readonly date: Date;
  /** What a screen gets instead, where it has more than the paper; left out, the same. */
  readonly onScreen?: (() => Page) | undefined;
}
