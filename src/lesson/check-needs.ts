import { didYouMean } from '../messages/nearest-name.ts';
import type { YamlSource } from '../school/yaml-source.ts';

/** What a lesson says it needs, and where messages about that belong. */
export interface Needing {
  readonly needs: readonly string[];
  readonly source: YamlSource | undefined;
}

/**
 * Checks every `needs` of a school's lessons against the lessons there are: an error at one that does not exist, and
 * at each lesson of a circle, which is spelled out.
 *
 * @param lessons all of the school's, by their ids
 */
export function checkNeeds(lessons: ReadonlyMap<string, Needing>): void {
  for (const [id, { needs, source }] of lessons) {
    needs.forEach((needed, place) => {
      const at = ['needs', place];
      if (!lessons.has(needed)) {
        const names = [...lessons.keys()].filter((name) => name !== id);
        source?.report(`There is no lesson \`${needed}\`${didYouMean(needed, names)}`, 'needs', at);
        return;
      }
      const way = wayTo(id, needed, lessons);
      if (way) source?.report(circleWords([id, ...way]), 'needs', at);
    });
  }
}

/** The shortest chain of needs from a lesson to the goal, both ends included; undefined where there is none. */
function wayTo(goal: string, from: string, lessons: ReadonlyMap<string, Needing>): string[] | undefined {
  const ways = [[from]];
  const seen = new Set([from]);
  for (let way = ways.shift(); way; way = ways.shift()) {
    const last = way.at(-1)!;
    if (last === goal) return way;
    for (const next of lessons.get(last)?.needs ?? []) {
      if (seen.has(next)) continue;
      seen.add(next);
      ways.push([...way, next]);
    }
  }
  return undefined;
}

function circleWords(circle: readonly string[]): string {
  if (circle.length === 2) return `\`${circle[0]}\` needs itself: take it out`;
  const steps = circle.slice(1).map((id, place) => `\`${circle[place]}\` needs \`${id}\``);
  return `These lessons need each other in a circle, and none can come first: ${steps.join(', ')}. Take one of these out`;
}
