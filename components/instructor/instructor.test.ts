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
      /<aside class="note instructor" aria-label="For the instructor"><p>Expect [\d,]+ ft here\.<\/p>\s*<p>Ask\.<\/p><\/aside>/,
    );
  });

  it("leaves nothing in the student's", () => {
    const { html, messages } = inEdition(body, 'student');
    expect(messages).toEqual([]);
    expect(html.replace(/\n/g, '')).toBe('<p>Before.</p><p>After.</p>');
  });

  it('is an error where it is empty, or too wide for the margin', () => {
    expect(inEdition(':::instructor\n:::', 'instructor').messages).toEqual([
      expect.stringMatching(/^4:1 `instructor` is empty/),
    ]);
    expect(inEdition(':::instructor\n::keys\n:::', 'instructor').messages).toEqual([
      '4:1 `instructor` is a note in the margin, and a table does not fit into it: put the table below the note',
    ]);
    expect(inEdition(':::instructor\n::profile\n:::', 'instructor').messages[0]).toContain('a drawing');
  });
});
