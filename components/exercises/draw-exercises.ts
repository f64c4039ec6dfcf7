import { randomFrom } from '../../src/flight/numerics/random.ts';
import { type Exercise, shuffled } from './exercise.ts';
import { kinds } from './kinds.ts';
import type { QuestionSetting } from './question-setting.ts';

export interface DrawnExercise extends Exercise {
  readonly kind: string;
}

/** Rounds through the kinds of question; later rounds ask the same kinds with other figures. */
const mostRounds = 8;

/**
 * `count` questions for a flight, drawn by chance from a seed: the same seed gives the same questions. Every kind
 * comes once before any comes again, and no question comes twice. Fewer where the flight does not allow so many.
 */
export function drawExercises(setting: QuestionSetting, count: number, seed: number): DrawnExercise[] {
  const random = randomFrom(seed);
  const order = shuffled(Object.entries(kinds), random);
  const drawn: DrawnExercise[] = [];
  const dry = new Set<string>();
  for (let round = 0; round < mostRounds && drawn.length < count; round++) {
    for (const [name, kind] of order) {
      // A random stream for each question: the draws of one kind leave the figures of the others alone.
      const own = randomFrom(Math.floor(random() * 2 ** 32));
      if (drawn.length === count || dry.has(name)) continue;
      const found = drawNew(kind, setting, own, drawn);
      if (found) drawn.push({ kind: name, ...found });
      else dry.add(name);
    }
  }
  return drawn;
}

function drawNew(
  { draw, tries }: (typeof kinds)[string],
  setting: QuestionSetting,
  random: () => number,
  before: readonly Exercise[],
): Exercise | undefined {
  for (let draws = 0; draws < tries; draws++) {
    const found = draw(setting, random);
    if (found && !before.some(({ question }) => question === found.question)) return found;
  }
  return undefined;
}
