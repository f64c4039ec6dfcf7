import type { Published } from './published.ts';

/** How the core computes each quantity of one topic. A topic is a heading of the page, and a family of tests. */
export interface Topic {
  readonly heading: string;
  /** What a reader must know of all its rows. */
  readonly about?: string;
  /** The topics of the rows; a quantity such as `groundspeed` belongs to this topic only within them. */
  readonly rowTopics: readonly string[];
  /** From the name of a quantity to our value, in the row's unit. */
  readonly quantities: Readonly<Record<string, (row: Published) => number | readonly number[]>>;
  /** Rows, by id, that publish a formula, which is tried at several points. */
  readonly forms?: Readonly<Record<string, (row: Published) => readonly FormPoint[]>>;
}

/** A published formula at one point, and ours there. */
export interface FormPoint {
  readonly inputs: string;
  readonly theirs: number;
  readonly ours: number;
  /** How far apart the two may be: they are different models of the same thing. */
  readonly allowed: number;
  readonly unit: string;
}
