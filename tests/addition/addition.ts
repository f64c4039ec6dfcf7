import type { WordsAnswer } from '../../src/desk/api.ts';
import type { House } from './house.ts';

/**
 * Something that the house promises to take in few places (DEVELOPERS.md, "To add …"). All are put in together, then
 * the types are checked, lessons built and the reference written once; each then looks for itself in what came of it.
 */
export interface Addition {
  /** As in `To add …`. */
  readonly name: string;
  readonly add: (house: House) => Promise<void>;
  /** What may be touched: new files by the folder or the file, old ones with the lines that are put into them. */
  readonly mayMake: readonly string[];
  readonly mayChange: Readonly<Record<string, number>>;
  /** Lessons to be built with it, by their ids: they use it as an instructor would. */
  readonly lessons: Readonly<Record<string, string>>;
  readonly check: (built: BuiltHouse) => Promise<void>;
}

export interface BuiltHouse {
  readonly house: House;
  /** The student's HTML of a lesson of the addition. */
  readonly packet: (lesson: string) => Promise<string>;
  /** What the desk's editor may complete. */
  readonly words: WordsAnswer;
}
