import { VFile } from 'vfile';
import { describe, expect, it } from 'vitest';
import { checkNeeds, type Needing } from './check-needs.ts';
import { parseLesson } from './parse-lesson.ts';

/** What is said about lessons with these needs, by lesson. */
function saidOf(needs: Readonly<Record<string, string>>): Record<string, string[]> {
  const files = new Map<string, VFile>();
  const lessons = new Map<string, Needing>();
  for (const [id, list] of Object.entries(needs)) {
    const file = new VFile({ path: `${id}.md`, value: `---\ntitle: T\nneeds: ${list}\n---\n\nWords.\n` });
    const { frontMatter, frontMatterSource } = parseLesson(file, []);
    files.set(id, file);
    lessons.set(id, { needs: frontMatter?.needs ?? [], source: frontMatterSource });
  }
  checkNeeds(lessons);
  const said = [...files].map(([id, file]) => [
    id,
    file.messages.map(({ line, column, reason, fatal }) => `${line}:${column} ${fatal} ${reason}`),
  ]);
  return Object.fromEntries(said.filter(([, messages]) => messages!.length > 0));
}

describe('the lessons that a lesson needs', () => {
  it('may be one or several, and several may need the same', () => {
    const lessons = { glide: '[turns]', turns: '[level]', level: '[level-speed]', 'level-speed': '[start]' };
    expect(
      saidOf({ ...lessons, wind: 'level', approach: '[glide, wind]', start: '[ground]', ground: '[desk]' }),
    ).toEqual({
      ground: [expect.stringMatching(/^3:9 true There is no lesson `desk`$/)],
    });
  });

  it('must exist: the nearest name is offered', () => {
    expect(saidOf({ glide: '[turn]', turns: '[glid]' })).toMatchObject({
      glide: ['3:9 true There is no lesson `turn`; did you mean `turns`?'],
      turns: ['3:9 true There is no lesson `glid`; did you mean `glide`?'],
    });
  });

  it('must not lead back to it: the circle is spelled out, at each of its lessons', () => {
    const said = saidOf({ a: '[b]', b: '[c]', c: '[a]', d: '[a]' });
    expect(Object.keys(said)).toEqual(['a', 'b', 'c']);
    expect(said.a).toEqual([
      '3:9 true These lessons need each other in a circle, and none can come first: `a` needs `b`, `b` needs `c`, `c` needs `a`. Take one of these out',
    ]);
    expect(said.b![0]).toContain('`b` needs `c`, `c` needs `a`, `a` needs `b`.');
  });

  it('must not be the lesson itself', () => {
    expect(saidOf({ a: 'a' })).toEqual({ a: [expect.stringMatching(/true `a` needs itself: take it out$/)] });
  });
});
