/** A multiple-choice question with its worked answer, as text of the page. */
export interface Exercise {
  readonly question: string;
  /** Figures that the question is about. */
  readonly table?: ExerciseTable | undefined;
  readonly choices: readonly Choice[];
  /** Index of the right choice. */
  readonly answer: number;
  /** The way to the answer, step by step; the last step is the text of the right choice. */
  readonly working: readonly string[];
}

export interface Choice {
  readonly text: string;
  /** How one arrives at a wrong choice; undefined for the right one. */
  readonly fault?: string | undefined;
}

export interface ExerciseTable {
  readonly head: readonly string[];
  /** The first cell names its row. */
  readonly rows: readonly (readonly string[])[];
}

/** An exercise before its choices are put in order. */
export interface Posed {
  readonly question: string;
  readonly table?: ExerciseTable | undefined;
  readonly right: string;
  readonly wrong: readonly Required<Choice>[];
  /** The steps before the answer itself. */
  readonly working: readonly string[];
}

/** Wrong choices beside the right one. */
const wrongChoices = 3;

/**
 * Puts the right choice among wrong ones in a random order. Undefined where fewer than three of the wrong ones differ
 * from the right one and from each other as printed: another draw may have more.
 */
export function shuffledChoices(posed: Posed, random: () => number): Exercise | undefined {
  const { question, table, right, working } = posed;
  const texts = new Set([right]);
  const wrong = shuffled(posed.wrong, random).filter(({ text }) => {
    const isNew = !texts.has(text);
    texts.add(text);
    return isNew;
  });
  if (wrong.length < wrongChoices) return undefined;
  const choices: readonly Choice[] = shuffled([{ text: right }, ...wrong.slice(0, wrongChoices)], random);
  const answer = choices.findIndex(({ fault }) => fault === undefined);
  return { question, table, choices, answer, working: [...working, right] };
}

/** Every order is equally likely: the Fisher-Yates shuffle. */
export function shuffled<T>(items: readonly T[], random: () => number): T[] {
  const order = [...items];
  for (let last = order.length - 1; last > 0; last--) {
    const other = Math.floor(random() * (last + 1));
    [order[last], order[other]] = [order[other]!, order[last]!];
  }
  return order;
}
