import { describe, expect, it } from 'vitest';
import type { Caution } from '../src/flight/terms/caution.ts';
import { gradeOf } from '../src/flight/terms/grade.ts';
import type { Plan } from '../src/flight/terms/plan.ts';
import { flyTrial, renderBody } from './trial-packet.ts';

const sound = flyTrial();
const withCaution = (grade: Caution['grade'], at: Caution['at']): Plan => {
  const cautions: Caution[] = [{ code: 'final-turn-low', grade, at, value: 1, limit: 2, source: 'flown' }];
  return { ...sound, cautions, grade: gradeOf(cautions) };
};
const headOf = (html: string, label: string) =>
  new RegExp(`<th scope="row">(${label}.*?)</th>`).exec(html)?.[1];

describe('a limit that is passed at a key', () => {
  it.each(['keys', 'gates'])('is marked in the row of ::%s, and in no other', (table) => {
    const at = 'base-key';
    const never = renderBody(`::${table}`, withCaution('not-to-be-flown', at)).html;
    expect(headOf(never, 'Base key')).toBe(
      'Base key <span class="grade-mark not-to-be-flown">not to be flown</span>',
    );
    expect(headOf(never, 'Final')).toBe(table === 'keys' ? 'Final turn' : 'Final');
    const beyond = renderBody(`::${table}`, withCaution('beyond-good-practice', at)).html;
    expect(headOf(beyond, 'Base key')).toContain('>beyond a limit</span>');
    expect(renderBody(`::${table}`, withCaution('worth-knowing', at)).html).not.toContain('grade-mark');
    expect(renderBody(`::${table}`, sound).html).not.toContain('grade-mark');
  });
});

describe('the figures of a flight in the text', () => {
  const text = ':key[base-key] :gate[base-key]{edge=low} :ground[left] :aircraft[best-glide] :wind[surface]';
  const struck = (plan: Plan) => [...renderBody(text, plan).html.matchAll(/<s class="not-to-be-flown">/g)];

  it('are struck through where it is not to be flown, and those of aircraft and wind are not', () => {
    expect(struck(withCaution('not-to-be-flown', undefined))).toHaveLength(3);
    const { html } = renderBody(':key[base-key]', withCaution('not-to-be-flown', undefined));
    expect(html).toMatch(
      /^<p><s class="not-to-be-flown">[\d,]+ ft<span class="sr-only"> \(not to be flown\)<\/span><\/s><\/p>$/,
    );
  });

  it('stand as they are in every other plan', () => {
    for (const plan of [sound, withCaution('beyond-good-practice', 'base-key')])
      expect(struck(plan)).toEqual([]);
  });

  it('are named so under every table and drawing', () => {
    expect(renderBody('::keys', withCaution('not-to-be-flown', undefined)).html).toContain(
      'engine idling; not to be flown. Source',
    );
    expect(renderBody('::keys', sound).html).not.toContain('not to be flown');
  });
});
