import type { List, Nodes } from 'mdast';
import type { VFile } from 'vfile';
import { fail } from '../messages/failures.ts';
import { lineEndAt, spanAt } from '../messages/source-place.ts';
import type { CheckedUse } from './check-directives.ts';
import type { FrontMatter } from './front-matter.ts';
import { scheduleLine } from './schedule-line.ts';

/**
 * Reports a `:::schedule` whose minutes do not add up to those of the front matter. A schedule with an item that
 * cannot be read is left to the directive itself, which names the item.
 */
export function checkSchedule(
  uses: readonly Pick<CheckedUse<never>, 'node'>[],
  frontMatter: FrontMatter | undefined,
  file: VFile,
): void {
  const minutes = frontMatter?.minutes;
  if (minutes === undefined) return;
  const source = String(file);
  for (const { node } of uses) {
    if (node.type !== 'containerDirective' || node.name !== 'schedule') continue;
    const items = node.children.filter((child): child is List => child.type === 'list');
    const times = items.flatMap(({ children }) =>
      children.map((item) => scheduleLine(plainText(item))?.minutes),
    );
    if (times.length === 0 || times.includes(undefined)) continue;
    const sum = times.reduce<number>((total, time) => total + (time ?? 0), 0);
    if (sum === minutes) continue;
    const start = node.position?.start.offset ?? 0;
    const reason = `The schedule adds up to ${sum} min, and the front matter says \`minutes: ${minutes}\`: make the two agree`;
    fail(file, reason, 'schedule-sum', spanAt(source, start, lineEndAt(source, start)));
  }
}

function plainText(node: Nodes): string {
  if (node.type === 'text') return node.value;
  return 'children' in node ? node.children.map(plainText).join('') : '';
}
