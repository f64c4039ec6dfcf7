import { h } from 'hastscript';
import { describe, expect, it } from 'vitest';
import { captionNumber, numberCaptions } from './captions.ts';
import { textOf } from './headings.ts';

describe('captions', () => {
  it('are numbered in the order of the page, figures and tables apart, and anew when the page grows', () => {
    const page = h(null, [
      h('figcaption', captionNumber('Figure')),
      h('caption', captionNumber('Table')),
      h('section', h('figcaption', captionNumber('Figure'))),
    ]);
    numberCaptions(page);
    expect(page.children.map(textOf)).toEqual(['Figure\u00a01', 'Table\u00a01', 'Figure\u00a02']);
    const longer = h(null, [h('figcaption', captionNumber('Figure')), ...page.children]);
    numberCaptions(longer);
    expect(longer.children.map(textOf)).toEqual([
      'Figure\u00a01',
      'Figure\u00a02',
      'Table\u00a01',
      'Figure\u00a03',
    ]);
  });
});
