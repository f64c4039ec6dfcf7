import type { VFile } from 'vfile';
import type { Edition } from '../../../components/context.ts';
import type { School } from '../../school/school.ts';
import type { GradeTally } from '../packet/grade-tally.ts';
import type { Attempt, WrongChoices } from '../packet/lesson-messages.ts';
import type { LessonText } from '../packet/lesson-text.ts';
import type { Choices, Scenario } from '../packet/scenario.ts';
import type { PaperName } from '../paper/paper.ts';

/** What every volume of a book is made from. */
export interface BookSource {
  readonly school: School;
  readonly title: string;
  readonly choices: Choices;
  /** How each choice was asked for, by the front matter key that it overrides. */
  readonly asked: Readonly<Record<string, string>>;
  readonly date: Date;
  readonly version: string;
  /** Like that of `PacketSource`. */
  readonly common: unknown;
  /** Counts the chapters by the grades of their plans, in every volume. */
  readonly tally?: GradeTally | undefined;
}

export interface Book extends BookSource {
  /** By name, in the order of the book. */
  readonly lessons: ReadonlyMap<string, LessonText>;
  /** Files with messages: the lessons, and pages that the school did not write. Grows while volumes are made. */
  readonly files: VFile[];
  /** Grows likewise. */
  readonly wrongChoices: WrongChoices;
}

export interface Volume {
  /** Where it belongs under the output folder, without an ending. */
  readonly path: string;
  /** Each has all the chapters that are for its class. */
  readonly aircraft: readonly string[];
  readonly edition: Edition;
  readonly paper: PaperName;
  /** Called where there will be no such volume because a chapter is missing: what is wrong is among the messages. */
  readonly refused: () => void;
}

/** What is bound for one aircraft. */
export interface Leaves {
  readonly id: string;
  /** The pages about the aircraft. */
  readonly own: { readonly scenario: Scenario; readonly attempt: Attempt };
  readonly chapters: readonly {
    readonly lesson: string;
    readonly scenario: Scenario;
    /** Counted through the volume. */
    readonly number: number;
  }[];
}
