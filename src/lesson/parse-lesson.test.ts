import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { trialFrontMatter, tryBody, tryLesson } from './trial-lesson.ts';

const one = (body: string) => {
  const { messages } = tryBody(body);
  expect(messages).toHaveLength(1);
  return messages[0];
};

describe('a colon in plain text', () => {
  it('stays text, byte for byte', () => {
    const text =
      'At 6:1 from 10:30, chart 1:5000, note:this, wind: light, see :key and std::vector, :smile: :: end:';
    const { html, messages } = tryBody(`${text}\n`);
    expect(messages).toEqual([]);
    expect(html.trim()).toBe(`<p>${text}</p>`);
  });

  it('keeps the Markdown that follows it', () => {
    const { html, messages } = tryBody(
      'By 10:30[^1], see:this[link](https://example.org) or 6:1*exactly*.\n\n[^1]: a:b\n',
    );
    expect(messages).toEqual([]);
    expect(html).toContain('10:30<sup>');
    expect(html).toContain('see:this<a href="https://example.org">link</a>');
    expect(html).toContain('6:1<em>exactly</em>');
  });

  it('stays text at the start of a line where a number follows', () => {
    const { html, messages } = tryBody('::1\n\n:::6\n\n:30\n');
    expect(messages).toEqual([]);
    expect(html.replace(/\s/g, '')).toBe('<p>::1</p><p>:::6</p><p>:30</p>');
  });

  it('stays text where it is escaped', () => {
    const { html, messages } = tryBody('Type \\:key[final] or \\::pattern.\n\n\\:::objective\n');
    expect(messages).toEqual([]);
    expect(html).toContain('Type :key[final] or ::pattern.');
    expect(html).toContain('<p>:::objective</p>');
  });

  it('is left alone in code', () => {
    const { html, messages } = tryBody(
      '`:key[final]` `::patern{`\n\n```\n::patern{}\n:::objectiv\n:::\n```\n\n    :::objective\n',
    );
    expect(messages).toEqual([]);
    expect(html).toContain('<code>:key[final]</code>');
    expect(html).toContain('::patern{}\n:::objectiv\n:::\n');
  });

  it('survives whatever stands around it', () => {
    const word = fc.stringMatching(/^[a-z0-9]{1,6}$/);
    const joint = fc.constantFrom(':', ': ', ' ', ' :', '::', ':::', ', ', '.');
    const sentence = fc.array(fc.tuple(word, joint), { minLength: 1, maxLength: 12 });
    fc.assert(
      fc.property(sentence, (pieces) => {
        const text = `Begin ${pieces.flat().join('')}end`;
        // A known name after two colons is clearly a directive, and `www.` a link.
        fc.pre(!/pattern|objective|standards|key|www|http/.test(text));
        const { html, messages } = tryBody(`${text}\n`);
        expect(messages).toEqual([]);
        expect(html.trim()).toBe(`<p>${text}</p>`);
      }),
      { numRuns: 200 },
    );
  });
});

describe('an unknown directive', () => {
  it('is an error with the nearest known name, in every form', () => {
    const { messages } = tryBody('::patern{}\n\n:::objectiv\nx\n:::\n\nAt :keys[final] now.\n');
    expect(messages).toEqual([
      expect.stringMatching(
        /^4:1 unknown-directive No directive is called `patern`; did you mean `::pattern`/,
      ),
      expect.stringMatching(
        /^6:1 unknown-directive No directive is called `objectiv`; did you mean `:::objective`/,
      ),
      expect.stringMatching(
        /^10:4 unknown-directive No directive is called `keys`; did you mean `:key\[…\]`/,
      ),
    ]);
  });

  it('gets those of its form where nothing is near, and the way to type a plain colon', () => {
    expect(one('::zzzzzzzz\n')).toMatch(/with `::` there are `pattern`\..*type `\\:`/);
  });

  it('does not take the closing fence of a misspelt container for a stray one', () => {
    expect(one('::: objectiv\nx\n:::\n')).toMatch(/^4:1 unknown-directive/);
    expect(one(':::objective{a=\nx\n:::\n')).toMatch(/^4:1 directive-syntax/);
  });
});

describe('a directive in the wrong form', () => {
  it.each([
    [':pattern\n', '4:1', '`::pattern` on a line of its own'],
    [':pattern{caption=x}\n', '4:1', '`::pattern` on a line of its own'],
    [':::pattern\n:::\n', '4:1', '`::pattern` on a line of its own'],
    ['See :pattern[x] here\n', '4:5', '`::pattern` on a line of its own'],
    [':objective\n', '4:1', '`:::objective` on a line of its own'],
    ['::objective\n', '4:1', '`:::objective` on a line of its own'],
    ['::key[final]\n', '4:1', '`:key[…]` in a sentence'],
    ['At ::key[final] now\n', '4:4', '`:key[…]` in a sentence'],
    ['At :key{show=height} now\n', '4:4', 'needs its text in brackets'],
    ['Look at ::pattern here\n', '4:9', 'must stand at the start of a line of its own'],
    ['| a |\n|---|\n| ::pattern |\n', '6:3', 'must stand at the start of a line of its own'],
    ['::: objective\nx\n:::\n', '4:1', 'No blank may stand behind the colons'],
  ])('%j is an error that shows the right one', (body, place, right) => {
    const message = one(body);
    expect(message?.startsWith(`${place} `)).toBe(true);
    expect(message).toContain(right);
  });
});

describe('a directive that cannot be read', () => {
  it.each([
    ['::pattern{caption=\n', '4:1'],
    ['::pattern{caption="a}\n', '4:1'],
    ['- one\n- ::pattern{caption=\n', '5:3'],
    ['> ::pattern[a\n', '4:3'],
    ['::pattern and more\n', '4:1'],
    ['text\n::pattern{a\nmore\n', '5:1'],
    ['At :key[final]{show= now\n', '4:4'],
    ['At :key[final now\n', '4:4'],
  ])('%j is an error at its place', (body, place) => {
    expect(one(body)?.startsWith(`${place} directive-syntax `)).toBe(true);
  });
});

describe('fences', () => {
  it('reports a container that is never closed', () => {
    expect(one('::::objective\nx\n')).toBe(
      '4:1 directive-unclosed `objective` is never closed; end it with `::::` on a line of its own',
    );
    expect(one('> :::objective\n> x\n\nafter\n')).toMatch(/^4:3 directive-unclosed/);
  });

  it('reports nested fences of one length once, and what would be right', () => {
    const nested = ':::objective\na\n\n:::standards\nb\n:::\n\nc\n:::\n';
    expect(one(nested)).toMatch(
      /^7:1 directive-nesting `standards` opens while `objective` \(line 4\).*`::::objective`/,
    );
  });

  it('takes an outer fence that is longer', () => {
    const { html, messages } = tryBody('::::objective\na\n\n:::standards\nb\n:::\n\nc\n::::\n');
    expect(messages).toEqual([]);
    expect(html).toContain(
      '<section class="objective"><p>a</p><section class="standards"><p>b</p></section><p>c</p></section>',
    );
  });

  it('reports a closing fence that closes nothing', () => {
    expect(one(':::objective\nx\n:::\n\n:::\n')).toMatch(/^8:1 directive-stray-fence/);
  });

  it('reports a code block or a comment that swallows the rest', () => {
    expect(one('~~~\n::pattern\n')).toMatch(/^4:1 code-unclosed .*3 tildes/);
    expect(one('<!-- note\n\n::pattern\n')).toMatch(/^4:1 html This comment is never closed/);
  });
});

describe('attributes and labels', () => {
  it('names the nearest attribute or value, at its place', () => {
    const { messages } = tryBody(
      'At :key[finl], :key[final]{shw=height}, :key[final]{show=heigth} and ::key.\n\n::pattern[x]\n',
    );
    expect(messages).toEqual([
      '4:9 directive-label `key[…]` cannot be `finl`; did you mean `final`? It can be `downwind-key`, `final` or `overhead`',
      '4:28 directive-attribute `key` has no attribute `shw`; did you mean `show`? It takes `show`',
      '4:53 directive-attribute `show` cannot be `heigth`; did you mean `height`? It can be `height` or `along`',
      expect.stringMatching(/^4:70 directive-syntax `key` is written/),
      '6:10 directive-label `pattern` takes no text in brackets; leave the brackets out',
    ]);
  });

  it('refuses an attribute given twice, and `#id` and `.class`', () => {
    const { messages } = tryBody(':key[final]{show=height show=along}\n\n::pattern{#here .big}\n');
    expect(messages).toEqual([
      '4:25 directive-attribute `show` is given twice; keep one of them',
      expect.stringMatching(/^6:11 directive-attribute `pattern` has no attribute `id`/),
      expect.stringMatching(/^6:17 directive-attribute `pattern` has no attribute `class`/),
    ]);
  });

  it('gives defaults and counts the uses of each directive', () => {
    const { lesson } = tryBody('At :key[final] and :key[final]{show=along}.\n\n::pattern\n');
    expect(
      lesson.uses.map(({ component, attributes, ordinal }) => [component.name, attributes, ordinal]),
    ).toEqual([
      ['key', { show: 'height' }, 1],
      ['key', { show: 'along' }, 2],
      ['pattern', {}, 1],
    ]);
  });
});

describe('places', () => {
  it('are right in a file with Windows line ends and a byte order mark', () => {
    const { messages } = tryLesson(
      '\uFEFF---\r\ntitle: T\r\nbnk: 30 deg\r\n---\r\n\r\nAt :key[finl].\r\n\r\n::pattern{a=\r\n',
    );
    expect(messages).toEqual([
      expect.stringMatching(/^3:1 unknown-key .*`bank`/),
      expect.stringMatching(/^6:9 directive-label/),
      expect.stringMatching(/^8:1 directive-syntax/),
    ]);
  });
});

describe('a mangled lesson', () => {
  const sound = `${trialFrontMatter}
# T :key[final]

:::objective
Land at 10:30, [there](#t-height-1), 6:1[^1].
:::

::pattern{caption="From above"}

| a | b |
|--:|:--|
| 1:2 | :key[downwind-key]{show=along} |

> ::::standards
> - one <b>two</b>
> ::::

\`\`\`
code
\`\`\`

[^1]: Note.
`;
  it('is sound before it is mangled', () => {
    const { messages } = tryLesson(sound, { final: '1', 'downwind-key': '2' });
    expect(messages.map((message) => message.split(' ')[1])).toEqual(['html', 'html']);
  });

  it('gets messages of ours, each with its place, and never throws', () => {
    const piece = fc.constantFrom(
      ':',
      '::',
      ':::',
      '::::',
      '{',
      '}',
      '[',
      ']',
      '"',
      '=',
      '#',
      '`',
      '```',
      '---',
      '\n',
      '\n\n',
      '\t',
      '    ',
      '>',
      '- ',
      '|',
      '<',
      '<!--',
      '\\',
      '&',
      ':key[',
      '::pattern',
      ':::objective',
      '{a=b',
      '\0',
      '\uFEFF',
      '\r',
      '\u{1F600}',
      '[^1]:',
      '](',
    );
    const edit = fc.record({
      at: fc.nat(sound.length),
      drop: fc.nat(12),
      put: fc.array(piece, { maxLength: 3 }),
    });
    fc.assert(
      fc.property(fc.array(edit, { minLength: 1, maxLength: 6 }), (edits) => {
        const mangled = edits.reduce(
          (text, { at, drop, put }) => text.slice(0, at) + put.join('') + text.slice(at + drop),
          sound,
        );
        const { file } = tryLesson(mangled, { final: '1' });
        for (const message of file.messages) {
          expect(message.source).toBe('chalkwing');
          expect(message.ruleId).toMatch(/^[a-z-]+$/);
          expect(message.line).toBeGreaterThan(0);
          expect(message.line).toBeLessThanOrEqual(mangled.split(/\r\n|\r|\n/).length);
          expect(message.column).toBeGreaterThan(0);
        }
      }),
      { numRuns: 250 },
    );
  });
});
