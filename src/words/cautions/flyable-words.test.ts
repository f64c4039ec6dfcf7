import { describe, expect, it } from 'vitest';
import { contextOf, degrees, feetAndKnots, flyTrial, knots } from '../../../components/trial-packet.ts';
import type { PlanRequest } from '../../flight/terms/plan.ts';
import { flyableWords } from './flyable-words.ts';

function flyable(changes: Partial<PlanRequest>) {
  const plan = flyTrial(changes);
  const words = flyableWords(plan, contextOf(plan).request, feetAndKnots);
  return { plan, words: words.map((each) => each.replaceAll('\u00a0', ' ')) };
}

describe('what would be flyable', () => {
  it('is nothing of a plan that may be flown', () => expect(flyable({}).words).toEqual([]));

  it('is what its cautions say, and the least height that is sound, where one is', () => {
    const acrossTooMuch = flyable({ wind: { from: degrees(148), speed: knots(14) } });
    expect(acrossTooMuch.words).toEqual([
      'It would be within the wind limits in 9 kt from the same direction, gusts counted.',
    ]);
    const low = flyable({ minimums: { finalTurn: 300 } });
    expect(low.words).toEqual([
      'From a higher start the turn to final is complete higher.',
      expect.stringMatching(/^Sound from 1,\d\d0 ft at the downwind key\.$/),
    ]);
  });

  it('of a spiral is a higher pattern, where that is what it needs', () => {
    const { words } = flyable({ approach: 'spiral', minimums: { finalTurn: 300 } });
    expect(words.at(-1)).toMatch(
      /^Sound from 1,\d\d0 ft at the downwind key, in a pattern that is so high\.$/,
    );
    const fromTop = flyable({ approach: 'spiral', height: 200 }).words;
    expect(fromTop.at(-1)).toMatch(/^Sound from [\d,]+ ft over the spot\.$/);
  });

  it('is found once for a plan', () => {
    const { plan } = flyable({ height: 90 });
    const { request } = contextOf(plan);
    const words = flyableWords(plan, request, feetAndKnots);
    expect(words.length).toBeGreaterThan(1);
    expect(flyableWords(plan, request, feetAndKnots)).toBe(words);
  });
});
