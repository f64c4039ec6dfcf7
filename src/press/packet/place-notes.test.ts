import type { ElementContent } from 'hast';
import { toHtml } from 'hast-util-to-html';
import { h } from 'hastscript';
import { describe, expect, it } from 'vitest';
import { placeNotes } from './place-notes.ts';

const note = (text: string) => h('aside', { class: 'note' }, text);

function placed(...content: ElementContent[]): string {
  placeNotes(content);
  return toHtml({ type: 'root', children: content });
}

describe('a note of the margin', () => {
  it('stands beside the paragraph it was written after, and keeps with it', () => {
    expect(placed(h('p', 'One.'), h('p', 'Two.'), note('N'), h('p', 'Three.'))).toBe(
      '<p>One.</p><div class="noted whole"><aside class="note">N</aside><p>Two.</p></div><p>Three.</p>',
    );
  });

  it('stands beside a list, which may be cut', () => {
    expect(placed(h('ul', [h('li', 'One.')]), note('N'))).toBe(
      '<div class="noted"><aside class="note">N</aside><ul><li>One.</li></ul></div>',
    );
  });

  it('stands above the next one, where two belong to one paragraph', () => {
    expect(placed(h('p', 'One.'), note('A'), note('B'))).toBe(
      '<div class="noted whole"><aside class="note">A</aside><aside class="note">B</aside><p>One.</p></div>',
    );
  });

  it('goes with what follows after a heading, a table or a figure', () => {
    expect(placed(h('h2', 'Head'), note('N'), h('p', 'One.'))).toBe(
      '<h2>Head</h2><div class="noted whole"><aside class="note">N</aside><p>One.</p></div>',
    );
    expect(placed(h('figure'), note('N'), h('h2', 'Head'), h('p', 'One.'))).toBe(
      '<figure></figure><h2>Head</h2><div class="noted whole"><aside class="note">N</aside><p>One.</p></div>',
    );
    expect(placed(h('figure'), note('N'), h('section', [h('h2', 'Head'), h('ul')]))).toBe(
      '<figure></figure><section><h2>Head</h2><div class="noted"><aside class="note">N</aside><ul></ul></div></section>',
    );
  });

  it('stays where nothing can be beside it', () => {
    expect(placed(note('N'))).toBe('<aside class="note">N</aside>');
    expect(placed(h('figure'), note('N'), h('figure'))).toBe(
      '<figure></figure><aside class="note">N</aside><figure></figure>',
    );
  });

  it('is placed inside a block too', () => {
    expect(placed(h('section', [h('p', 'One.'), note('N')]))).toBe(
      '<section><div class="noted whole"><aside class="note">N</aside><p>One.</p></div></section>',
    );
  });
});
