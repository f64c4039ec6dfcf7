import type { ElementContent, Root } from 'hast';
import { toHtml } from 'hast-util-to-html';
import { toHast } from 'mdast-util-to-hast';
import { VFile } from 'vfile';
import { describe, expect, it } from 'vitest';
import { parseLesson } from './parse-lesson.ts';
import { type MarkOutput, placeUses } from './rehype-lesson.ts';
import { type Trial, trialComponents } from './trial-lesson.ts';

const context: Trial = { 'downwind-key': '1,000 ft', final: '300 ft' };

function place(body: string, mark?: MarkOutput<Trial>): string {
  const file = new VFile({ path: 'trial.md', value: `---\ntitle: Trial\n---\n${body}\n` });
  const lesson = parseLesson(file, trialComponents);
  const tree = toHast(lesson.tree, { clobberPrefix: '' }) as Root;
  return toHtml(placeUses({ tree, uses: lesson.uses, pictures: [] }, context, file, mark)).trim();
}

describe('what a use of a directive rendered', () => {
  const body = ':::objective\nAt :key[final].\n:::\n\nFrom :key[downwind-key], :key[overhead].\n\n::pattern';

  it('can be marked with its place among the uses, whatever it stands in', () => {
    const html = place(body, (output, { component }, at) => {
      if (component.form === 'container') return output;
      const properties = { dataUse: `${at} ${component.name}` };
      return output.map(
        (node): ElementContent =>
          node.type === 'text' ? { type: 'element', tagName: 'span', properties, children: [node] } : node,
      );
    });
    expect(html).toBe(
      [
        '<section class="objective"><p>At <span data-use="1 key">height 300 ft</span>.</p></section>',
        // The third is not for this flight: nothing was rendered that could be marked.
        '<p>From <span data-use="2 key">height 1,000 ft</span>, .</p>',
        '<svg onload="drawn(1)"></svg>',
      ].join('\n'),
    );
  });

  it('is left as it is where nobody marks it', () => {
    expect(place(body)).not.toContain('data-');
  });
});
