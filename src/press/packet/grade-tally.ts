import type { PlanGrade } from '../../flight/terms/caution.ts';
import { countWords, type GradeCounts } from '../../words/cautions/grade-sentences.ts';
import { NotToBeFlownError } from './scenario.ts';

/**
 * Counts plans by their grades, with those not to be flown counted apart from those shown as such: a command says the
 * result at its end.
 */
export class GradeTally {
  readonly #counts = { beyond: 0, refused: 0, shown: 0, known: 0 };

  /** Plans with a page. */
  add(grades: readonly PlanGrade[]): void {
    for (const grade of grades) {
      if (grade === 'not-to-be-flown') this.#counts.shown += 1;
      if (grade === 'beyond-good-practice') this.#counts.beyond += 1;
      if (grade === 'worth-knowing') this.#counts.known += 1;
    }
  }

  /** Plans not to be flown, without a page. */
  refuse(count = 1): void {
    this.#counts.refused += count;
  }

  get counts(): GradeCounts {
    return { ...this.#counts };
  }

  /** `2 packets beyond a limit of good practice, 1 not to be flown (not printed).`; undefined where all are sound. */
  words(one: string, refusedWords = 'not printed'): string | undefined {
    return countWords(this.#counts, one, refusedWords);
  }
}

/** Flies, and counts the plan where it is refused as not to be flown. */
export function countRefused<Result>(tally: GradeTally | undefined, fly: () => Result): Result {
  try {
    return fly();
  } catch (error) {
    if (error instanceof NotToBeFlownError) tally?.refuse();
    throw error;
  }
}
