import { describe, expect, it } from 'vitest';
import { feetAndKnots, flyTrial, renderBody } from '../trial-packet.ts';

const plan = flyTrial();

describe(':::student', () => {
  const body = ':::student\nYou pass the key at :key[downwind-key].\n:::';

  it('is set apart, and the same in both editions, so that their pages break alike', () => {
    const html =
      '<div class="student" role="group" aria-label="For the student"><p class="label">For the student</p><p>You pass the key at 1,000 ft.</p></div>';
    for (const edition of ['student', 'instructor'] as const)
      expect(renderBody(body, plan, feetAndKnots, edition)).toEqual({ html, messages: [] });
  });

  it('is an error where it is empty', () => {
    expect(renderBody(':::student\n:::', plan).messages).toEqual([
      expect.stringMatching(/^4:1 `student` is empty/),
    ]);
  });
});
