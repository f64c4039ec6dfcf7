import { describe, expect, it } from 'vitest';
import { feetAndKnots, flyTrial, renderBody } from '../trial-packet.ts';

const plan = flyTrial();
const inEdition = (body: string, edition: 'instructor' | 'student') =>
  renderBody(body, plan, feetAndKnots, edition);

describe(':::instructor', () => {
  const body = 'Before.\n\n:::instructor\nExpect :key[base-key] here.\n\nAsk.\n:::\n\nAfter.';

  it("is a note in the instructor's edition", () => {
    const { html, messages } = inEdition(body, 'instructor');
    expect(messages).toEqual([]);
    expect(html).toMatch(
      /<aside class="note instructor" style="--lines:2.5" aria-label="For the instructor"><p>Expect [\d,]+ ft here\.<\/p>\s*<p>Ask\.<\/p><\/aside>/,
    );
  });

  it("leaves no word in the student's, but a room as high", () => {
    const { html, messages } = inEdition(body, 'student');
    expect(messages).toEqual([]);
    expect(html.replace(/\n/g, '')).toBe(
      '<p>Before.</p><div class="note note-room" style="--lines:2.5" aria-hidden="true"></div><p>After.</p>',
    );
  });

  it('has more lines the more is written, also in a list', () => {
    const lines = (words: string) =>
      Number(/--lines:([\d.]+)/.exec(inEdition(`:::instructor\n${words}\n:::`, 'student').html)?.[1]);
    expect(lines('Ask.')).toBe(1);
    expect(lines('Ask about the wind before each turn, and wait for the answer. '.repeat(3))).toBeGreaterThan(
      5,
    );
    expect(lines('- Ask.\n- Wait.\n- Listen.')).toBe(3);
  });

  it('is an error where it is empty, or too large for the margin', () => {
    expect(inEdition(':::instructor\n:::', 'instructor').messages).toEqual([
      expect.stringMatching(/^4:1 `instructor` is empty/),
    ]);
    for (const edition of ['instructor', 'student'] as const) {
      expect(inEdition(':::instructor\n::keys\n:::', edition).messages).toEqual([
        '4:1 `instructor` is a note in the margin, and a table does not fit into it: put the table below the note',
      ]);
      expect(inEdition(':::instructor\n## More\n:::', edition).messages[0]).toContain('a heading');
    }
    expect(inEdition(':::instructor\n::profile\n:::', 'instructor').messages[0]).toContain('a drawing');
  });
});
