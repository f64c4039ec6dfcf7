import { describe, expect, it } from 'vitest';
import { feetAndKnots, flyTrial, renderBody } from '../trial-packet.ts';

const plan = flyTrial();

describe(':::student', () => {
  const body = ':::student\nYou pass the key at :key[downwind-key].\n:::';

  it("stands in the student's edition", () => {
    expect(renderBody(body, plan, feetAndKnots, 'student')).toEqual({
      html: '<div class="student"><p>You pass the key at 1,000 ft.</p></div>',
      messages: [],
    });
  });

  it("leaves nothing in the instructor's", () => {
    expect(renderBody(body, plan, feetAndKnots, 'instructor')).toEqual({ html: '', messages: [] });
  });

  it('is an error where it is empty', () => {
    expect(renderBody(':::student\n:::', plan).messages).toEqual([
      expect.stringMatching(/^4:1 `student` is empty/),
    ]);
  });
});
