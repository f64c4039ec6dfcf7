import { flyForms } from '../school/fly-text.ts';
import { table } from './markdown.ts';

/** One thing that a fault can change in the flight. */
export interface FlyWord {
  /** As it is typed, with a word in place of the value: `spacing: +40 %`. */
  readonly written: string;
  /** What may stand after the colon, with its range. */
  readonly takes: string;
  readonly does: string;
}

export const flyWords: readonly FlyWord[] = flyForms;

/** The section on what `fly` may say. */
export function flyWordsSection(words: readonly FlyWord[]): string[] {
  if (words.length === 0) return [];
  return [
    '### Flying a fault',
    'With `fly`, a fault is flown beside the plan, and its row says what came of it. It is put in quotes, for the colon in it:',
    table(
      ['Written', 'After the colon', 'What is changed'],
      words.map(({ written, takes, does }) => [`\`fly: "${written}"\``, takes, does]),
    ),
  ];
}
