import type { Nodes } from 'mdast';
import { visit } from 'unist-util-visit';
import { didYouMean } from '../messages/nearest-name.ts';
import type { Checked } from '../school/check-yaml.ts';
import type { HandbooksFile } from '../school/handbooks.ts';
import type { Lesson } from './parse-lesson.ts';
import { planParts } from './plan-parts.ts';

/** Checks every place that the comparison with published handbooks names against the lessons. */
export function checkHandbooks(
  { source, value }: Checked<HandbooksFile>,
  lessons: ReadonlyMap<string, Pick<Lesson<never>, 'tree' | 'uses'>>,
): void {
  value?.handbooks.forEach(({ elements }, book) => {
    elements.forEach(({ lesson: id, under }, row) => {
      if (id === undefined || under === undefined) return;
      const at = ['handbooks', book, 'elements', row];
      const lesson = lessons.get(id);
      if (!lesson) {
        source.report(`There is no lesson \`${id}\`${didYouMean(id, [...lessons.keys()])}`, 'unknown-name', [
          ...at,
          'lesson',
        ]);
        return;
      }
      const headings = headingsOf(lesson);
      if (headings.includes(under)) return;
      source.report(
        `\`${id}\` has no heading \`${under}\`${didYouMean(under, headings)} (it has: ${headings.join('; ')})`,
        'unknown-name',
        [...at, 'under'],
      );
    });
  });
}

function textOf(node: Nodes): string {
  if ('value' in node) return node.value;
  return 'children' in node ? node.children.map(textOf).join('') : '';
}

/** A lesson's own headings, and those of the parts of the lesson plan in it. */
function headingsOf({ tree, uses }: Pick<Lesson<never>, 'tree' | 'uses'>): string[] {
  const own: string[] = [];
  visit(tree, 'heading', (node) => {
    own.push(textOf(node).trim());
  });
  const parts = Object.entries(planParts)
    .filter(([name]) => uses.some(({ component }) => component.name === name))
    .map(([, heading]) => heading);
  return [...new Set([...own, ...parts])];
}
