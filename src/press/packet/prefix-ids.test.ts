import type { ElementContent } from 'hast';
import { toHtml } from 'hast-util-to-html';
import { VFile } from 'vfile';
import { describe, expect, it } from 'vitest';
import { components } from '../../../components/list.ts';
import { contextOf, flyTrial } from '../../../components/trial-packet.ts';
import { parseLesson } from '../../lesson/parse-lesson.ts';
import { renderLesson } from '../../lesson/render-lesson.ts';
import { prefixIds } from './prefix-ids.ts';

const words = [
  '## A heading',
  'See [the heading](#a-heading), and a note.[^one]',
  '::pattern',
  '::checklist',
  '::debrief',
  ':::standards\n- Well.\n:::',
  '[^one]: The note.',
].join('\n\n');

function bound(...prefixes: readonly string[]): string {
  const plan = flyTrial();
  const children = prefixes.flatMap((prefix) => {
    const file = new VFile({ path: 'bound.md', value: `---\ntitle: Bound\n---\n${words}\n` });
    const lesson = parseLesson(file, components);
    const body = renderLesson(lesson, contextOf(plan), file).children as ElementContent[];
    prefixIds(body, prefix);
    return body;
  });
  return toHtml(children);
}

const idsOf = (html: string) => [...html.matchAll(/\sid="([^"]+)"/g)].map(([, id]) => id!);
const namedIn = (html: string) =>
  [...html.matchAll(/(?:href="#|url\(#)([^")]+)|aria-(?:labelledby|describedby)="([^"]+)"/g)].flatMap(
    ([, one, list]) => (one ?? list!).split(' ').map(decodeURIComponent),
  );

describe('lessons bound into one document', () => {
  it('would have ids twice without a prefix', () => {
    const ids = idsOf(bound('', ''));
    expect(new Set(ids).size).toBeLessThan(ids.length);
  });

  it('have every id once with one, and whatever names an id finds it in its own lesson', () => {
    const html = bound('first-', 'second-');
    const ids = idsOf(html);
    expect(ids.length).toBeGreaterThan(20);
    expect(new Set(ids).size).toBe(ids.length);
    const named = namedIn(html);
    expect(named.length).toBeGreaterThan(8);
    expect(named.filter((id) => !ids.includes(id))).toEqual([]);
    const [first] = html.split('second-');
    expect(namedIn(first!).every((id) => id.startsWith('first-'))).toBe(true);
  });
});
