import { visit } from 'unist-util-visit';
import type { VFile } from 'vfile';
import type { Lesson } from './parse-lesson.ts';
import { planParts } from './plan-parts.ts';

/** Warns of the parts of a lesson plan that the lesson lacks, neither as a directive nor under their heading. */
export function checkPlanParts({ uses, tree }: Pick<Lesson<never>, 'uses' | 'tree'>, file: VFile): void {
  const found = new Set(uses.map(({ node }) => node.name));
  visit(tree, 'heading', ({ children }) => {
    const words = children.map((child) => ('value' in child ? child.value : '')).join('');
    found.add(words.trim().toLowerCase());
  });
  const missing = Object.entries(planParts)
    .filter(([name, heading]) => !found.has(name) && !found.has(heading.toLowerCase()))
    .map(([name]) => `\`:::${name}\``);
  if (missing.length === 0) return;
  const reason = `This lesson plan has no ${missing.join(', ')}: write ${missing.length === 1 ? 'it' : 'them'}, or leave it so where the lesson is complete without`;
  const place = { line: 1, column: 1, offset: 0 };
  file.message(reason, { place, ruleId: 'plan-parts', source: 'chalkwing' });
}
