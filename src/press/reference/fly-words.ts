import { table } from './markdown.ts';

/** One thing that a fault can change in the flight. */
export interface FlyWord {
  /** As it is typed, with what stands for a value: `spacing: +40 %`. */
  readonly written: string;
  readonly does: string;
}

/** None yet: faults are described and not flown. */
export const flyWords: readonly FlyWord[] = [];

/** The section on what `fly` may say. */
export function flyWordsSection(words: readonly FlyWord[]): string[] {
  if (words.length === 0) return [];
  return [
    '### Flying a fault',
    'With `fly`, a fault is flown beside the plan, and its row says what came of it. It is put in quotes, for the colon in it:',
    table(
      ['Written', 'What is changed'],
      words.map(({ written, does }) => [`\`fly: "${written}"\``, does]),
    ),
  ];
}
