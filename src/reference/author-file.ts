import type { DirectiveGroup } from '../../components/list.ts';
import type { FlyWord } from './fly-words.ts';

/** A file for authors: its path below the folder they are written to, and what it holds. */
export interface AuthorFile {
  readonly path: string;
  readonly content: string;
}

export interface AuthorLanguage {
  readonly groups: readonly DirectiveGroup[];
  /** What `fly` of a fault may say; empty where faults are not flown. */
  readonly flyWords: readonly FlyWord[];
}
