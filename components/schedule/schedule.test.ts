import { describe, expect, it } from 'vitest';
import { flyTrial, renderBody } from '../trial-packet.ts';

const plan = flyTrial();
const rows = (html: string) =>
  [...html.matchAll(/<tr[^>]*><th scope="row"[^>]*>(.*?)<\/th><td>(.*?)<\/td><\/tr>/gs)].map(
    ([, time, what]) => [time, what!.replace(/\n/g, '')],
  );

describe(':::schedule', () => {
  it('is a table of minutes and what is done, with the total', () => {
    const { html, messages } = renderBody(
      ':::schedule\n- 20 min: briefing, **keys** from :key[downwind-key]\n- 40 min: flight\n- 15min: debriefing\n:::',
      plan,
    );
    expect(messages).toEqual([]);
    expect(html).toContain('<section class="part schedule"><h2 id="schedule">Schedule</h2>');
    expect(rows(html)).toEqual([
      ['20 min', 'briefing, <strong>keys</strong> from 1,000 ft'],
      ['40 min', 'flight'],
      ['15 min', 'debriefing'],
      ['75 min', 'in all'],
    ]);
  });

  it('reads a numbered list, items with blank lines between, and keeps what stands beside the list', () => {
    const { html, messages } = renderBody(
      ':::schedule\nOn the ground:\n\n1. 5 min: one\n\n2. 10 min: two\n\n   and more\n:::',
      plan,
    );
    expect(messages).toEqual([]);
    expect(html).toContain('<p>On the ground:</p>');
    expect(rows(html)).toEqual([
      ['5 min', 'one'],
      ['10 min', 'two<p>and more</p>'],
      ['15 min', 'in all'],
    ]);
  });

  it.each(['- briefing', '- 0 min: nothing', '- 10: briefing', '- about 10 min: briefing', '- 1.5 min: a'])(
    'says what to type in place of %j',
    (item) => {
      expect(renderBody(`:::schedule\n${item}\n:::`, plan).messages).toEqual([
        expect.stringMatching(/^4:1 `.*` has no time: begin every item with .* `- 10 min: briefing`$/),
      ]);
    },
  );
});
