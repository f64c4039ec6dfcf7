import { VFile } from 'vfile';
import { describe, expect, it } from 'vitest';
import { parseHandbooks } from '../school/handbooks.ts';
import { checkHandbooks } from './check-handbooks.ts';
import { parseLesson } from './parse-lesson.ts';
import { trialComponents } from './trial-lesson.ts';

const lesson = parseLesson(
  new VFile({ value: '---\ntitle: Gliding\n---\n## What the *wind* does\n\nText.\n\n### Near the ground\n' }),
  trialComponents,
);

function messages(rows: string): string[] {
  const value = `name: Handbooks\nsource: Ours\nhandbooks:\n  - title: A handbook\n    read: from memory\n    elements:\n${rows}`;
  const file = new VFile({ path: 'handbooks.yaml', value });
  const checked = parseHandbooks(file);
  if (checked) checkHandbooks(checked, new Map([['gliding', lesson]]));
  return file.messages.map(({ line, column, reason }) => `${line}:${column} ${reason}`);
}

describe('the comparison with published handbooks', () => {
  it('names lessons and headings that there are, of any depth, or says why it leaves an element out', () => {
    expect(
      messages(
        '      - { element: Wind, lesson: gliding, under: What the wind does }\n' +
          '      - { element: Gradient, lesson: gliding, under: Near the ground }\n' +
          '      - { element: Night, left-out: Not here. }\n',
      ),
    ).toEqual([]);
  });

  it('is told of a lesson that there is not, and of a heading', () => {
    expect(messages('      - { element: Wind, lesson: glidin, under: What the wind does }\n')).toEqual([
      expect.stringMatching(/^7:34 There is no lesson `glidin`; did you mean `gliding`/),
    ]);
    expect(messages('      - { element: Wind, lesson: gliding, under: What the winds do }\n')).toEqual([
      expect.stringMatching(
        /^7:50 `gliding` has no heading `What the winds do`; did you mean `What the wind does`/,
      ),
    ]);
  });

  it('asks for one of the two, a place or a reason', () => {
    for (const row of [
      '{ element: Wind }',
      '{ element: Wind, lesson: gliding }',
      '{ element: Wind, lesson: gliding, under: Near the ground, left-out: Not here. }',
    ]) {
      expect(messages(`      - ${row}\n`)).toEqual([
        expect.stringMatching(/say where it is treated, with `lesson` and `under`, or why it is not/),
      ]);
    }
  });
});
