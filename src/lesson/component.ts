import type { ElementContent, Root } from 'hast';
import type { z } from 'zod';

/** How a directive is written: `:name[text]{…}` in a sentence, `::name{…}` on a line, `:::name … :::` around blocks. */
export type Form = 'text' | 'leaf' | 'container';

/**
 * What becomes of a directive on a screen when the student sets another wind or height. `made-again`: what it prints
 * follows from the flight alone, and no answer is in it. `answered`: its printed questions are answered there, with
 * what it prints for the instructor. `unchanged`: it is the same in every setting.
 */
export type OnScreen = 'made-again' | 'answered' | 'unchanged';

/**
 * A directive of the lesson language. `Context` is what the pages are computed for: the lesson room hands it through
 * without looking into it. A folder in `components/` has one definition for each form: a name may have two.
 */
export interface Component<Context, Attributes extends z.ZodType = z.ZodType> {
  readonly name: string;
  readonly form: Form;
  /** One line for the author's reference page and the editor's completion. */
  readonly summary: string;
  /** What may be written in braces, with defaults; kebab-case keys, string input. */
  readonly attributes: Attributes;
  /** What may be written in brackets, for a directive that takes a label; undefined where it takes none. */
  readonly label?: z.ZodType<string>;
  /** For a directive in a sentence: its brackets hold lesson text, which comes rendered as `children`. */
  readonly holdsText?: boolean;
  /** Left undefined: a directive on a line of its own stays as printed, and the page says so. */
  readonly onScreen?: OnScreen;
  /** For a drawing whose attribute `faults` names faults to draw over it: of any kind, or of the landing alone. */
  readonly drawsFaults?: 'any' | 'of-the-landing';
  /** True where it prints the planned flight itself: where that is not to be flown, each of its captions says so. */
  readonly isOfTheFlight?: boolean;
  /** As an author would type it. */
  readonly example: string;
  /**
   * Makes the page's content. Throws `DirectiveError` for what only the figures can show to be wrong (a key position
   * this approach does not have); it is reported at the directive's place in the lesson. A method, not a function
   * property: otherwise definitions with different attributes could not be in one list.
   */
  render(use: Use<Context, z.output<Attributes>>): ElementContent[];
  /**
   * False where the content of the directive is not for this packet. It is then left out before anything in it is
   * rendered, because a figure in it may be one that this flight does not have. Left undefined: it is for every
   * packet.
   */
  isFor?(use: Pick<Use<Context, z.output<Attributes>>, 'attributes' | 'context'>): boolean;
  /**
   * Runs once over the whole page of a lesson that uses the directive, when all of it is there: for words taken from
   * another place of the lesson, before it or after it.
   */
  finish?(page: Root): void;
}

/** One use of a directive in a lesson. */
export interface Use<Context, Attributes> {
  readonly attributes: Attributes;
  /** The text in brackets, '' where there is none. */
  readonly label: string;
  /** The rendered and sanitized content of a container, or of one that `holdsText`; empty for the others. */
  readonly children: ElementContent[];
  readonly context: Context;
  /** Counts from 1 the uses of this directive in the lesson: for ids that are unique in the page. */
  readonly ordinal: number;
}

/** What is wrong with a use of a directive, and what to type instead. */
export class DirectiveError extends Error {
  override readonly name = 'DirectiveError';
}

/** Gives a definition its attribute types. */
export function defineComponent<Context, Attributes extends z.ZodType>(
  component: Component<Context, Attributes>,
): Component<Context, Attributes> {
  return component;
}
