import { describe, expect, it } from 'vitest';
import { tryBody } from './trial-lesson.ts';

describe('a rendered lesson', () => {
  it('holds GFM tables with directives in their cells', () => {
    const { html, messages } = tryBody('| key | height |\n|:--|--:|\n| D:K | :key[downwind-key] |\n');
    expect(messages).toEqual([]);
    expect(html).toContain('<th align="right">height</th>');
    expect(html).toContain('<td align="left">D:K</td>\n<td align="right">height 1,000 ft</td>');
  });

  it('holds footnotes, also from inside a container', () => {
    const { html, messages } = tryBody(':::objective\nA[^n].\n:::\n\n[^n]: At :key[final].\n');
    expect(messages).toEqual([]);
    expect(html).toContain('<sup><a href="#fn-n" id="fnref-n"');
    expect(html).toContain('<li id="fn-n">\n<p>At height 300 ft. ');
  });

  it('gives headings stable ids from their words, and no two the same', () => {
    const { html } = tryBody(
      '# Über 30° of bank: why?\n\n## Keys :key[final]\n\n## Plan\n\n## Plan\n\n## !\n',
    );
    expect([...html.matchAll(/id="([^"]*)"/g)].map((match) => match[1])).toEqual([
      'über-30-of-bank-why',
      'keys-height-300-ft',
      'plan',
      'plan-2',
      'section',
    ]);
  });

  it("lets a directive's own markup through, and none of the author's", () => {
    const { html, messages } = tryBody(
      '::pattern\n\n<svg onload="bad()"></svg>\n\na <img src=x onerror=bad()> b\n\n::pattern\n',
    );
    expect(html).toContain('<svg onload="drawn(1)"></svg>');
    expect(html).toContain('<svg onload="drawn(2)"></svg>');
    expect(html).not.toContain('bad');
    expect(messages).toEqual([
      expect.stringMatching(/^6:1 html HTML is left out of the packet/),
      expect.stringMatching(/^6:21 html HTML is left out of the packet/),
      expect.stringMatching(/^8:3 html HTML is left out of the packet/),
    ]);
  });

  it('leaves a comment out without a word', () => {
    const { html, messages } = tryBody('<!-- ask the tower: 10:30 ::pattern -->\n\nx\n');
    expect(messages).toEqual([]);
    expect(html.trim()).toBe('<p>x</p>');
  });

  it('reports HTML that would take a directive along', () => {
    const { messages, file } = tryBody('<div>\n::pattern\n</div>\n');
    expect(messages).toEqual([expect.stringMatching(/^4:1 html .*the directive in it would be too/)]);
    expect(file.messages[0]?.fatal).toBe(true);
  });

  it('reports links that lead astray and pictures from elsewhere', () => {
    const { messages, html } = tryBody(
      '[a](javascript:x) [b](other.html) [c](https://example.org) <x@example.org> [d][d]\n\n' +
        '![a](turn.png) ![b](../x.png) ![c](http://example.org/x.png) ![d](%2e%2e/x.png) ![e](data:image/png;base64,AA)\n\n' +
        '[d]: file:///etc/hosts\n',
    );
    expect(messages.map((message) => message.split(' ').slice(0, 2).join(' '))).toEqual([
      '4:1 link',
      '4:19 link',
      '6:16 picture',
      '6:31 picture',
      '6:62 picture',
      '6:81 picture',
      '8:1 link',
    ]);
    expect(html).not.toContain('javascript');
    expect(html).not.toContain('file:');
    expect(html).toContain('<a href="mailto:x@example.org">');
  });

  it('reports a link to a heading that is not there', () => {
    const { messages } = tryBody('## The plan\n\n[x](#the-plan) [y](#the-plam)\n');
    expect(messages).toEqual([
      '6:16 link Nothing in this lesson is called `#the-plam`; did you mean `the-plan`?',
    ]);
  });

  it("turns what a directive finds wrong into a message at the directive's place", () => {
    const { messages, file } = tryBody('> At :key[overhead], then :key[final].\n');
    expect(messages).toEqual(['4:6 directive-key This approach has no `overhead`']);
    expect(file.messages[0]?.fatal).toBe(true);
  });

  it('reports a figure that is not a number, and hides no mistake of our own', () => {
    expect(tryBody('At :key[final].\n', { final: 'NaN' }).messages).toEqual([
      '4:4 directive-key `key` cannot be made for this flight: NaN cannot be printed',
    ]);
    expect(() => tryBody('At :key[final].\n', { final: 'broken' })).toThrow(TypeError);
  });
});
