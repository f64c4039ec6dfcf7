import { execFileSync } from 'node:child_process';
import { mkdir, mkdtemp, rm, symlink, truncate, writeFile } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { toHtml } from 'hast-util-to-html';
import { VFile } from 'vfile';
import { reporter } from 'vfile-reporter';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import type { PacketContext } from '../components/context.ts';
import { components } from '../components/list.ts';
import { contextOf, flyTrial } from '../components/trial-packet.ts';
import { parseLesson } from '../src/lesson/parse-lesson.ts';
import { renderLesson } from '../src/lesson/render-lesson.ts';
import { picturesIn } from '../src/press/packet/lesson-pictures.ts';
import { checkYaml } from '../src/school/check-yaml.ts';
import { settings } from '../src/school/school.ts';

// Lessons and school files written to do harm: each ends in a message of ours with its place, or in harmless text.

const context = contextOf(flyTrial());

interface Outcome {
  readonly html: string;
  readonly errors: readonly string[];
  readonly warnings: readonly string[];
}

/** Reads and renders a whole lesson file; everything that comes out is examined for what no page may hold. */
function open(value: string, folder?: string): Outcome {
  const file = new VFile({ path: 'lessons/hostile.md', value });
  const options = folder === undefined ? {} : { pictures: picturesIn(folder) };
  const lesson = parseLesson<PacketContext>(file, components, options);
  const html = toHtml(renderLesson(lesson, context, file), { allowDangerousHtml: true });
  expect(html).not.toMatch(/<(script|iframe|object|embed|style|link|meta|base|form|foreignObject)\b/i);
  expect(html).not.toMatch(/<[^>]*\s(on[a-z]+|style|srcset|srcdoc|formaction|xlink:href)\s*=/i);
  for (const [, address] of html.matchAll(/\s(?:href|src)="([^"]*)"/g)) {
    expect(address).toMatch(/^(https?:\/\/|mailto:|#|data:image\/(png|jpeg|webp|gif);base64,|[\w.?%/-]*$)/);
  }
  for (const message of file.messages) {
    expect(message.source).toBe('chalkwing');
    expect(message.line).toBeGreaterThan(0);
    expect(message.column).toBeGreaterThan(0);
    expect(message.line).toBeLessThanOrEqual(value.split(/\r\n|\r|\n/).length);
    // biome-ignore lint/suspicious/noControlCharactersInRegex: what may not reach a terminal is looked for
    expect(message.reason).not.toMatch(/[\u0000-\u0008\u000b-\u001f\u007f-\u009f\u202a-\u202e\u2066-\u2069]/);
    expect(message.reason.length).toBeLessThan(2_000);
  }
  const words = (fatal: boolean) =>
    file.messages
      .filter((message) => (message.fatal === true) === fatal)
      .map(({ line, column, ruleId, reason }) => `${line}:${column} ${ruleId} ${reason}`);
  return { html, errors: words(true), warnings: words(false) };
}

/** A body under sound front matter: it begins on line 4. */
const openBody = (body: string, folder?: string) => open(`---\ntitle: T\n---\n${body}\n`, folder);

describe('HTML in a lesson', () => {
  it.each([
    '<script>steal()</script>',
    'a <script src="https://example.org/x.js"></script> b',
    '<img src=x onerror=steal()>',
    '<svg><script>steal()</script></svg>',
    '<svg onload=steal()>',
    '<iframe src="https://example.org"></iframe>',
    '<style>.packet-cautions{display:none}</style>',
    '<a href="javascript:steal()">a</a>',
    '<span data-use="0" data-picture="0">a</span>',
    '<!--><script>steal()</script>-->',
    '<![CDATA[<script>steal()</script>]]>',
    '<?php steal() ?>',
    '<!DOCTYPE html>',
    '<math><mtext><table><mglyph><style><img src=x onerror=steal()>',
  ])('%s is left out, and named', (html) => {
    const { warnings, errors, html: page } = openBody(`Before.\n\n${html}\n\nAfter.`);
    expect(page).toContain('<p>Before.</p>');
    expect(page).toContain('<p>After.</p>');
    expect(
      [...warnings, ...errors].some((message) => /^6:\d+ html /.test(message)) || html.startsWith('<!--'),
    ).toBe(true);
  });

  it('is text where it is not HTML: references, code and braces', () => {
    const { html, errors } = openBody(
      '&lt;script&gt;a()&lt;/script&gt; `<script>` \\<b> <svg/onload=steal()>\n\n    <script>\n',
    );
    expect(errors).toEqual([]);
    expect(html).toContain('&#x3C;script>a()&#x3C;/script>');
    expect(html).toContain('<code>&#x3C;script>');
  });

  it('does not get in by way of a directive', () => {
    const { html } = openBody('::pattern{caption="<img src=x onerror=steal()>"}');
    expect(html).not.toMatch(/<img/);
    const { errors } = openBody(':key[<script>]{show="<b>"}');
    expect(errors.map((each) => each.slice(0, 3))).toEqual(['4:6', '4:1']);
  });
});

describe('addresses', () => {
  it.each([
    ['a link', '[a](javascript:steal())'],
    ['one in capitals', '[a](JaVaScRiPt:steal())'],
    ['one with a reference', '[a](&#106;avascript:steal())'],
    ['one with a line end in it', '[a](java&#10;script:steal())'],
    ['one with a tab before it', '[a](<&#9;javascript:steal()>)'],
    ['an escaped one', '[a](javascript\\:steal())'],
    ['an encoded one', '[a](%6aavascript:steal())'],
    ['data', '[a](data:text/html,steal)'],
    ['vbscript', '[a](vbscript:steal)'],
    ['a file', '[a](file:///etc/passwd)'],
    ['another host by two slashes', '[a](//example.org)'],
    ['an autolink', '<javascript:steal()>'],
    ['a reference', '[a][b]\n\n[b]: javascript:steal()'],
    ['a reference by its text alone', '[b]\n\n[b]: <javascript:steal()> "title"'],
    ['a link in a footnote', 'x[^1]\n\n[^1]: [a](javascript:steal())'],
    ['a link in a table', '| a |\n|---|\n| [a](javascript:steal()) |'],
    ['a link in a container', ':::caution\n[a](javascript:steal())\n:::'],
    ['a link around a picture', '[![a](data:,x)](javascript:steal())'],
  ])('%s is an error, and leads nowhere', (_, body) => {
    const { errors, html } = openBody(body);
    expect(
      errors.filter((message) => / (link|picture) .* cannot (lead to|come from) /.test(message)),
    ).not.toEqual([]);
    expect(html).not.toMatch(/(href|src)="(?![#"])/);
  });

  it('of the kinds that a packet may hold are kept', () => {
    const { errors, html } = openBody(
      '# A\n\n[a](https://example.org) <mailto:a@example.org> [b](#a) www.example.org',
    );
    expect(errors).toEqual([]);
    expect(html.match(/href="[^"]*"/g)).toEqual([
      'href="https://example.org"',
      'href="mailto:a@example.org"',
      'href="#a"',
      'href="http://www.example.org"',
    ]);
  });
});

describe('pictures', () => {
  let folder: string;
  let outside: string;
  // The smallest GIF: GIF89a specification (CompuServe, 1990), one pixel.
  const gif = Buffer.from('R0lGODlhAQABAIAAAAAAAP///yH5BAEAAAAALAAAAAABAAEAAAIBRAA7', 'base64');

  beforeAll(async () => {
    outside = await mkdtemp(join(tmpdir(), 'chalkwing-hostile-'));
    folder = join(outside, 'lessons');
    await mkdir(join(folder, 'views'), { recursive: true });
    await mkdir(join(folder, 'folder.png'));
    await writeFile(join(outside, 'secret.gif'), gif);
    await writeFile(join(folder, 'turn.gif'), gif);
    await writeFile(join(folder, 'turn one.gif'), gif);
    await writeFile(join(folder, 'views/final.gif'), gif);
    await writeFile(join(folder, 'false.png'), gif);
    await writeFile(join(folder, 'text.png'), '<svg onload="steal()"/>');
    await writeFile(join(folder, 'empty.png'), '');
    await writeFile(
      join(folder, 'drawing.svg'),
      '<svg xmlns="http://www.w3.org/2000/svg"><script>steal()</script></svg>',
    );
    const wide = Buffer.from(gif);
    wide.writeUInt16LE(60_000, 6);
    await writeFile(join(folder, 'wide.gif'), wide);
    await writeFile(join(folder, 'large.png'), '');
    await truncate(join(folder, 'large.png'), 2 ** 33);
    await symlink(join(outside, 'secret.gif'), join(folder, 'link.gif'));
    await symlink(outside, join(folder, 'up'));
    await symlink(join(folder, 'turn.gif'), join(folder, 'inner.gif'));
    execFileSync('mkfifo', [join(folder, 'pipe.png')]);
  });
  afterAll(() => rm(outside, { recursive: true, force: true }));

  it("of the lesson's own folder stand in the page itself", () => {
    const { html, errors } = openBody(
      '![a](turn.gif) ![b](<turn one.gif>) ![c](views/final.gif) ![d][e] ![f](inner.gif) ![g](./turn.gif)\n\n[e]: turn.gif',
      folder,
    );
    expect(errors).toEqual([]);
    const sources = [...html.matchAll(/<img src="([^"]*)" alt="([^"]*)" width="1" height="1">/g)];
    expect(sources.map(([, , alt]) => alt)).toEqual(['a', 'b', 'c', 'd', 'f', 'g']);
    for (const [, address] of sources)
      expect(address).toBe(`data:image/gif;base64,${gif.toString('base64')}`);
  });

  it.each([
    ['missing.gif', /^There is no picture `missing.gif`/],
    ['trun.gif', /did you mean `turn.gif`/],
    ['views/fnal.gif', /did you mean `views\/final.gif`/],
    ['drawing.svg', /cannot be SVG .*save it as PNG/],
    ['turn.bmp', /does not end so/],
    ['turn.gif?x', /does not end so/],
    ['school.yaml', /does not end so/],
    ['false.png', /is no PNG picture/],
    ['text.png', /is no PNG picture/],
    ['empty.png', /is no PNG picture/],
    ['wide.gif', /60000 × 1 pixels/],
    ['large.png', /is larger than 4 MiB/],
    ['folder.png', /is no file/],
    ['pipe.png', /is no file/],
    ['link.gif', /leads out of the lesson's folder/],
    ['up/secret.gif', /leads out of the lesson's folder/],
    ['../secret.gif', /cannot come from/],
    ['views/../../secret.gif', /cannot come from/],
    ['%2e%2e/secret.gif', /cannot come from/],
    ['..%2fsecret.gif', /cannot come from/],
    ['..%5csecret.gif', /cannot come from/],
    ['a%00.gif', /cannot come from/],
    ['/etc/logo.png', /cannot come from/],
    ['//example.org/a.png', /cannot come from/],
    ['https://example.org/a.png', /cannot come from/],
    ['c:/a.png', /cannot come from/],
    ['data:image/png;base64,AAAA', /cannot come from/],
    ['data:image/svg+xml,%3Csvg%20onload=steal()%3E', /cannot come from/],
    ['%', /cannot come from/],
  ])('%s is refused, with the reason at its place', (path, reason) => {
    const { errors } = openBody(`x ![a](${path})`, folder);
    expect(errors).toHaveLength(1);
    expect(errors[0]).toMatch(/^4:3 picture /);
    expect(errors[0]!.slice('4:3 picture '.length)).toMatch(reason);
  });

  it('that are refused are named once for every place of their address', () => {
    const { errors } = openBody('![a][x] ![b][x]\n\n[x]: missing.gif', folder);
    expect(errors).toEqual([expect.stringMatching(/^6:1 picture There is no picture/)]);
  });
});

describe('too much', () => {
  it.each([
    [
      'a line of 50 million characters',
      'w'.repeat(50_000_000),
      /^4:\d+ lesson-size This lesson has 50\d+ characters/,
    ],
    ['a long line', 'w'.repeat(6_000), /^4:5001 lesson-size This line is 6000 characters long/],
    ['no blank line', 'a b c d e\n'.repeat(3_000), /lesson-size .*without a blank line/],
    ['no blank line, with brackets', '[a](\n'.repeat(9_000), /lesson-size .*without a blank line/],
    ['10,000 quotes', '>'.repeat(10_000), /^4:5001 lesson-size/],
    ['1,000 quotes', '> '.repeat(1_000), /^4:1 lesson-size .*deep inside each other/],
    ['1,000 lists', '- '.repeat(1_000), /^4:1 lesson-size .*deep inside each other/],
    ['1,000 numbered lists', '1. '.repeat(1_000), /^4:1 lesson-size .*deep inside each other/],
    [
      'lists by their indentation',
      Array.from({ length: 200 }, (_, i) => `${'  '.repeat(i)}- a`).join('\n'),
      /lesson-size/,
    ],
    ['10,000 list items', '- - a\n\n'.repeat(5_000), /lesson-size .*more than 3000 list items/],
    [
      'containers of one fence',
      ':::caution\n\n'.repeat(5_000),
      /^104:1 lesson-size .*deep inside each other/,
    ],
    [
      'containers in containers',
      Array.from({ length: 60 }, (_, i) => `${':'.repeat(63 - i)}caution`).join('\n'),
      /lesson-size/,
    ],
    ['containers in quotes', '> :::caution\n'.repeat(100), /lesson-size .*deep inside each other/],
  ])('%s is refused with a message', (_, body, expected) => {
    const { errors, html } = openBody(body);
    expect(errors).toEqual([expect.stringMatching(expected)]);
    expect(html).toBe('');
  });

  const full = (piece: string) => `${piece.repeat(Math.floor(4_900 / piece.length))}\n`.repeat(3);
  it.each([
    '[',
    '[a](',
    '![',
    '[a](<',
    '*a ',
    '*a **b ',
    'a**b',
    '_',
    '~a ',
    '`',
    '<',
    '<a ',
    '<!--',
    '&#x20;',
    'a@',
    'www.',
    ':key[',
    ':for[',
    '|a',
    '[^1]',
    '[a]',
    '{',
    '::',
    ':::',
    ':::caution ',
    '\\',
    '***',
    '- ',
    '#',
    '$',
    '"',
    '](',
  ])('three lines full of %j end', (piece) => {
    openBody(full(piece));
    openBody(`| a |\n|---|\n| ${full(piece)}`);
    openBody(`:::caution\n${full(piece)}:::`);
  });

  it('emphasis or brackets that open far more often than anyone types end, and so do directives in directives', () => {
    openBody(`${'*a **b '.repeat(600)}\n${' b** a*'.repeat(600)}`);
    openBody(`${'[a '.repeat(1_500)}\n${']'.repeat(1_500)}`);
    openBody(`${':for['.repeat(900)}\n${']{class=glider}'.repeat(300)}`);
    openBody(`${'***a** '.repeat(600)}`);
  });

  it('thousands of mistakes are each named, in time', () => {
    const { errors } = openBody(':keyy[a] \n\n'.repeat(5_000));
    expect(errors).toHaveLength(5_000);
    expect(errors[4_999]).toMatch(/^10002:1 unknown-directive/);
  });
});

describe('front matter', () => {
  const openMatter = (lines: string) => open(`---\n${lines}\n---\n\nText.\n`);

  it.each([
    [
      'aliases that grow',
      `title: T\na: &a [x, x, x, x, x, x, x, x, x]\n${['b', 'c', 'd', 'e', 'f', 'g']
        .map((name, i) => `${name}: &${name} [${Array(9).fill(`*${'abcdef'[i]}`).join(', ')}]`)
        .join('\n')}`,
      / yaml The aliases .*cannot be followed/,
    ],
    ['an alias inside its own anchor', 'title: &a [*a]', / yaml | value /],
    ['brackets in brackets', `title: ${'['.repeat(1_000)}`, /^2:\d+ yaml .*too deep/],
    ['maps in maps', `title: ${'{a: '.repeat(1_000)}`, /^2:\d+ yaml .*too deep/],
    ['lists in lists', `title:\n${'- '.repeat(1_000)}x`, /lesson-size|yaml/],
    ['a tag of a language', 'title: !!js/function "steal()"', /^2:/],
    ['a key `__proto__`', 'title: T\n__proto__: { polluted: yes }', /^3:1 unknown-key/],
    ['a key `constructor`', 'title: T\nconstructor: { prototype: { polluted: yes } }', /^3:1 unknown-key/],
    ['a key `toString`', 'title: T\ntoString: x', /^3:1 unknown-key/],
    ['a merge key', 'title: T\n<<: { polluted: yes }', /^3:1 unknown-key/],
    ['an escaped character that turns the text', 'title: "T \\u202E 012"', /^2:8 hidden-character .*U\+202E/],
    ['the same, typed', 'title: T \u202e 012', /^2:8 hidden-character .*U\+202E/],
    ['an escape of a terminal', 'title: "T \\e[2J"', /^2:8 hidden-character .*U\+001B/],
    ['a NUL', 'title: "T \\0"', /^2:8 hidden-character .*U\+0000/],
    ['two documents', 'title: T\n...\ntitle: U', /^\d:\d+ yaml/],
  ])('%s is an error at its place', (_, lines, expected) => {
    const { errors } = openMatter(lines);
    expect(
      errors.some((message) => expected.test(message)),
      errors.join('\n'),
    ).toBe(true);
    expect(({} as { polluted?: unknown }).polluted).toBeUndefined();
  });
});

describe("a school's file", () => {
  it.each([
    ['deep brackets', `name: ${'['.repeat(100_000)}`, /too deep/],
    ['deep lists', `name:\n${'- '.repeat(100_000)}x`, /too deep/],
    ['a million keys', 'a: 1\n'.repeat(200_000), /more than the 500000/],
    [
      'aliases that grow',
      `name: S\na: &a [x, x, x, x, x, x, x, x, x]\n${['b', 'c', 'd', 'e', 'f', 'g']
        .map((name, i) => `${name}: &${name} [${Array(9).fill(`*${'abcdef'[i]}`).join(', ')}]`)
        .join('\n')}`,
      /cannot be followed/,
    ],
    ['a character that turns the text', 'name: S\ncautions: ["stay \\u202eabove 012"]', /U\+202E/],
    ['a file that is no UTF-8', 'name: Pr\ufffdval', /save the file as UTF-8/],
    ['prototype keys', 'name: S\n__proto__: { a: b }', /must be a plain word/],
  ])('%s is an error with its place', (_, value, expected) => {
    const file = new VFile({ path: 'lessons/school.yaml', value });
    const checked = checkYaml(file, settings);
    expect(checked && 'value' in checked).toBeFalsy();
    expect(
      file.messages.some(({ reason, line }) => expected.test(reason) && line! > 0),
      reporter(file),
    ).toBe(true);
  });
});

describe('attributes of a directive', () => {
  it.each([
    '__proto__',
    'constructor',
    'prototype',
    'toString',
    'hasOwnProperty',
    'onclick',
    'style',
    'id',
    'class',
  ])('`%s` is none, and named at its place', (name) => {
    for (const body of [`::pattern{${name}=x}`, `::pattern{a ${name}="x"}`]) {
      const { errors } = openBody(body);
      const column = body.indexOf(name) + 1;
      expect(
        errors.some(
          (each) => each.startsWith(`4:${column} directive-attribute `) && each.includes(`\`${name}\``),
        ),
      ).toBe(true);
    }
    expect(({} as { x?: unknown }).x).toBeUndefined();
  });

  it('directives named like what every object has are unknown ones', () => {
    for (const name of ['constructor', 'toString', 'hasOwnProperty']) {
      expect(openBody(`::${name}`).errors).toEqual([
        expect.stringMatching(/^4:1 unknown-directive No directive is called/),
      ]);
    }
  });
});

describe('characters', () => {
  // Unicode Standard Annex 9, table of explicit directional formatting characters: LRE, RLE, PDF, LRO, RLO; LRI, RLI, FSI, PDI.
  const turning = [...'\u202a\u202b\u202c\u202d\u202e\u2066\u2067\u2068\u2069'];
  it.each([
    ...turning.map((character) => ['one that turns the text', character]),
    ['NUL', '\0'],
    ['the escape of a terminal', '\u001b[31m'],
    ['a backspace', '\b'],
    ['a form feed', '\f'],
    ['a C1 control', '\u009b'],
    ['half of a pair', '\ud83d'],
    ['the other half', '\udc00'],
    ['one that could not be read', '\ufffd'],
  ])('%s is an error at its place', (_, character) => {
    const { errors } = openBody(`Climb to 210${character} now.`);
    expect(errors).toEqual([expect.stringMatching(/^4:13 hidden-character /)]);
  });

  it('that turn the text are found as references too, but not in code, where they are shown', () => {
    expect(openBody('Climb to &#x202E;210.').errors).toEqual([
      expect.stringMatching(/^4:10 hidden-character .*U\+202E/),
    ]);
    expect(openBody('Climb to &#8238;210.').errors).toEqual([
      expect.stringMatching(/^4:10 hidden-character .*U\+202E/),
    ]);
    expect(openBody('Type `&#x202E;`, and\n\n    &#x202E;').errors).toEqual([]);
  });

  it('of one kind are named once, and counted', () => {
    expect(openBody('a\u202eb\u202ec\n\nd\u202e').errors).toEqual([
      expect.stringMatching(/^4:2 hidden-character .*\(3 times in this lesson\)/),
    ]);
  });

  it('of every language, and emoji, are text', () => {
    const text = 'Ångström 東京 שלום 30° 5′ → ≤ 👨‍👩‍👧 e\u0301';
    const { html, errors } = openBody(text);
    expect(errors).toEqual([]);
    expect(html).toContain(`<p>${text}</p>`);
  });

  it.each([
    ['Windows', '\r\n'],
    ['old Macintosh', '\r'],
    ['Unix', '\n'],
  ])('line ends of %s, behind a byte order mark, keep every place', (_, end) => {
    const lines = ['\ufeff---', 'title: T', '---', '', 'At :key[final].', '', '::patern', '', '[a](x:y)'];
    expect(open(lines.join(end)).errors.map((message) => message.split(' ').slice(0, 2).join(' '))).toEqual([
      '7:1 unknown-directive',
      '9:1 link',
    ]);
  });

  it('a file that holds no lesson at all is told how to begin', () => {
    for (const value of ['', '\ufeff', '\0\0\0\0', '\ufffd\ufffdP\0K\0', '%PDF-1.7\n\ufffd\ufffd']) {
      expect(open(value).errors[0]).toMatch(/^1:1 (front-matter|hidden-character) /);
    }
  });
});
