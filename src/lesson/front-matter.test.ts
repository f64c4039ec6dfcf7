import type { Root } from 'mdast';
import remarkFrontmatter from 'remark-frontmatter';
import remarkParse from 'remark-parse';
import { unified } from 'unified';
import { VFile } from 'vfile';
import { describe, expect, it } from 'vitest';
import { readFrontMatter } from './front-matter.ts';
import { tryLesson } from './trial-lesson.ts';

const read = (lines: string) => {
  const { lesson, messages } = tryLesson(`---\n${lines}\n---\n\nText.\n`);
  return { frontMatter: lesson.frontMatter, messages };
};

describe('front matter', () => {
  it('needs a title alone, and flies a 180 where nothing else is said', () => {
    expect(read('title: T')).toEqual({ frontMatter: { title: 'T', approach: '180' }, messages: [] });
  });

  it('reads every field, in SI units', () => {
    const { frontMatter, messages } = read(
      'title: "T: 1"\nsummary: S\napproach: 360\naircraft: osier-15\nairfield: fallow-reach\nrunway: 06\nwind: 210/12kt\n' +
        'power: stopped\nheight: 1000 ft\nspacing: 500 m\nbank: 30 deg\ntemperature: 25C\nqnh: 1008 hPa\nminutes: 45',
    );
    expect(messages).toEqual([]);
    expect(frontMatter).toMatchObject({
      title: 'T: 1',
      approach: '360',
      runway: '06',
      power: 'stopped',
      spacing: 500,
      minutes: 45,
    });
    // Exact factors: BIPM SI Brochure, 9th edition, table 8 (nautical mile, and so the knot); foot: 0.3048 m, 1959
    // agreement.
    expect(frontMatter?.height).toBeCloseTo(304.8, 9);
    expect(frontMatter?.wind?.speed).toBeCloseTo((12 * 1852) / 3600, 9);
    expect(frontMatter?.wind?.from).toBeCloseTo((210 * Math.PI) / 180, 9);
    expect(frontMatter?.bank).toBeCloseTo(Math.PI / 6, 9);
    expect(frontMatter?.temperature).toBeCloseTo(298.15, 9);
    expect(frontMatter?.qnh).toBeCloseTo(100_800, 6);
  });

  it('reports all that is wrong at once, each at its place in the lesson', () => {
    const { frontMatter, messages } = read(
      'titl: T\napproach: 270\nbank: 30\nwind: 12kt\nminutes: 2.5\npower: idl',
    );
    expect(frontMatter).toBeUndefined();
    expect(messages).toEqual([
      expect.stringMatching(/^1:1 missing-key `title` is missing/),
      expect.stringMatching(/^2:1 unknown-key `titl` .*did you mean `title`/),
      expect.stringMatching(/^3:11 value `approach`: `270` is none of `90`, `180`, `360`, `spiral`/),
      expect.stringMatching(/^4:7 value `bank`: `30` has no unit.*`30 deg`/),
      expect.stringMatching(/^5:7 value `wind`: `12kt` is not a wind/),
      expect.stringMatching(/^6:10 value `minutes`: write whole minutes/),
      expect.stringMatching(/^7:8 value `power`: .*did you mean `idle`/),
    ]);
  });

  it('names the lessons needed before and the classes of aircraft, one or several', () => {
    expect(read('title: T\nneeds: glide\nclass: weight-shift').frontMatter).toMatchObject({
      needs: ['glide'],
      class: ['weight-shift'],
    });
    expect(read('title: T\nneeds: [glide, turns]\nclass: [three-axis, glider]').frontMatter).toMatchObject({
      needs: ['glide', 'turns'],
      class: ['three-axis', 'glider'],
    });
  });

  it('says which classes there are, and what a list looks like', () => {
    expect(read('title: T\nclass: weightshift').messages).toEqual([
      expect.stringMatching(/^3:8 value `class`: `weightshift` is none of .*did you mean `weight-shift`/),
    ]);
    expect(read('title: T\nclass: [three-axis, plane]').messages).toEqual([
      expect.stringMatching(/^3:21 value `class` 2: `plane` is none of/),
    ]);
    expect(read('title: T\nneeds: { glide: yes }\nclass:').messages).toEqual([
      expect.stringMatching(/^3:8 value `needs`: here belongs a list such as `\[power-off-180\]`/),
      expect.stringMatching(
        /^4:1 missing-key `class` has no value: write it as `class: \[weight-shift, three-axis\]`/,
      ),
    ]);
  });

  it('reads the day that is asked for, the crosswind as a speed or as a share', () => {
    const day = (typed: string) => read(`title: T\nday: ${typed}`).frontMatter?.day;
    expect(day('{ most-wind: 36 km/h, most-crosswind: 50 %, least-wind: 2 m/s }')).toEqual({
      mostWind: 10,
      mostCrosswind: { share: 0.5 },
      leastWind: 2,
    });
    expect(day('{ most-crosswind: 3 m/s }')).toEqual({ mostCrosswind: 3 });
    expect(day('{ most-crosswind: 1% }')).toEqual({ mostCrosswind: { share: 0.01 } });
    expect(day('{ most-crosswind: 100 % }')).toEqual({ mostCrosswind: { share: 1 } });
    expect(day('{ least-wind: 4 kt, most-wind: 4 kt }')).toBeDefined();
  });

  it.each([
    ['', '`day` has no value: write it as `day: { most-wind: 10 kt }`'],
    ['{}', 'asks for nothing: write one or more of `most-wind`, `most-crosswind`, `least-wind`'],
    ['10 kt', 'here belong keys and values such as `{ most-wind: 10 kt }`'],
    ['{ most-wid: 10 kt }', '`most-wid` is not a key of `day`; did you mean `most-wind`'],
    ['{ most-wind: 10 }', '`10` has no unit: write a speed such as `10 kt`'],
    ['{ most-wind: 61 kt }', '(1 kt to 60 kt)'],
    ['{ most-wind: 50 % }', '`most-wind` in `day`: `50 %`: `%` is not a unit known here'],
    ['{ most-crosswind: 0 % }', '(1 % to 100 %): write it as `50 %`'],
    ['{ most-crosswind: 101 % }', '(1 % to 100 %): write it as `50 %`'],
    ['{ most-crosswind: 33.3 % }', 'write whole per cent, such as `50 %`'],
    ['{ most-crosswind: half }', "or as a share of the aircraft's own crosswind limit, `50 %`"],
    ['{ least-wind: 5 kt, most-wind: 4 kt }', '`least-wind` in `day`: is more than `most-wind`'],
  ])('says what is wrong with the day %j', (typed, advice) => {
    const { frontMatter, messages } = read(`title: T\nday: ${typed}`);
    expect(frontMatter).toBeUndefined();
    expect(messages).toEqual([expect.stringMatching(/^3:/)]);
    expect(messages[0]).toContain(advice);
  });

  it('reports YAML that cannot be read, at its place', () => {
    expect(read('title: T\nwind: [').messages[0]).toMatch(/^[34]:\d+ yaml /);
    expect(read('title: T\ntitle: U').messages).toEqual([
      expect.stringMatching(/^3:1 yaml This key stands here twice/),
    ]);
  });

  it.each([
    ['', 'begin the file with'],
    ['Text.\n', 'begin the file with'],
    ['\n---\ntitle: T\n---\n', 'begin the file with'],
    ['---\ntitle: T\n', 'is not closed'],
    ['---\n---\n', 'is empty'],
    ['---\n# only this\n---\n', 'empty'],
  ])('%j is told how to begin', (source, advice) => {
    const { lesson, messages } = tryLesson(source);
    expect(lesson.frontMatter).toBeUndefined();
    expect(messages.some((message) => message.startsWith('1:1 ') && message.includes(advice))).toBe(true);
  });

  // Fences as the Markdown plugin reads them: without a lesson's tree, the same lines are found.
  it.each([
    '---\ntitle: T\n---\n\n# A\n\n---\n\nB\n',
    '---  \r\ntitle: T\r\n---\t\r\n\r\nText.\r\n',
    '---\rtitle: T\r---\rText.',
    '---\ntitle: T\n----\n---\nText.',
    '---\ntitle: "a\n --- b"\n---',
    '---\ntitle: T\n--- # no fence\n---\n',
    '----\ntitle: T\n---\n',
    ' ---\ntitle: T\n---\n',
    '---\ntitle: T\n ---\n',
    '\uFEFF---\ntitle: T\n---\n',
  ])('ends where the Markdown plugin ends it: %j', (source) => {
    const tree = unified().use(remarkParse).use(remarkFrontmatter, ['yaml']).parse(source) as Root;
    const [node] = tree.children;
    const found = readFrontMatter(new VFile({ path: 'trial.md', value: source }));
    const lines = node?.type === 'yaml' ? node.value : undefined;
    const isRead = found?.source !== undefined;
    expect(isRead).toBe(lines !== undefined && /^title: /m.test(lines) && !/^---/m.test(lines));
  });
});
