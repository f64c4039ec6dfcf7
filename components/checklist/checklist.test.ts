import { describe, expect, it } from 'vitest';
import { keyNames } from '../../src/words/keys/key-names.ts';
import { contextOf, flyTrial, renderBody } from '../trial-packet.ts';
import { checklist } from './checklist.ts';

const plan = flyTrial();

describe('::checklist', () => {
  it("is the aircraft's own list in the order of its file, with a box before each line", () => {
    const { html, messages } = renderBody('::checklist{from=engine-failure}', plan);
    expect(messages).toEqual([]);
    const own = contextOf(plan).school.fleet.get('osier-15')!.engineFailure!;
    const lines = [
      ...html.matchAll(/<li><span class="tick-box" aria-hidden="true"[^>]*><\/span> (.*?)<\/li>/g),
    ];
    expect(lines.map((line) => line[1])).toEqual(own);
    expect(html).toContain('<ol>');
    expect(html).toContain("In the order of the aircraft's own handbook as given in its file");
    expect(html).toContain('Source: Invented for the demonstration.');
  });

  it('has beside it the keys of the stopped engine where the pages are flown with one that idles', () => {
    const stopped = flyTrial({ power: 'stopped' });
    const { html } = renderBody('::checklist', plan);
    const tens = (metres: number) => (10 * Math.round(metres / 3.048)).toLocaleString('en');
    const said = /<strong>Keys with the engine stopped<\/strong>, surface wind 270° 10 kt: (.*?)\. /.exec(
      html,
    )![1]!;
    const keys = stopped.keys.filter(({ id }) => id !== 'aim-point' && id !== 'touchdown');
    expect(said.replace(/ \(.*?\)/g, '')).toBe(
      keys.map(({ id, height }) => `${keyNames[id].toLowerCase()} ${tens(height)} ft`).join(', '),
    );
    expect(tens(stopped.keys[1]!.height)).not.toBe(tens(plan.keys[1]!.height));
    expect(html).toContain('Key heights flown with the engine idling are not for this list.');
    expect(renderBody('::checklist', stopped).html).not.toContain('stopped-keys');
  });

  it('says where the aircraft has no glide with the engine stopped', () => {
    const { glide, ...rest } = contextOf(plan).school.fleet.get('osier-15')!;
    const bare = flyTrial({ aircraft: { ...rest, glide: { idle: glide.idle } } });
    expect(renderBody('::checklist', bare).html).toContain(
      '<strong>Engine stopped: </strong>No key heights: its file gives no glide with the engine stopped. Key heights flown with the engine idling are not for this list.',
    );
  });

  it('is another one for another aircraft', () => {
    const withy = contextOf(plan).school.fleet.get('withy-80')!;
    const { html } = renderBody('::checklist', flyTrial({ aircraft: withy }));
    expect(html).toContain('Engine failure: Withy 80');
    expect(html).toContain(withy.engineFailure![0]);
  });

  it('says which key to add where the aircraft has none', () => {
    const { school, request } = contextOf(plan);
    const { engineFailure: _, ...bare } = school.fleet.get('osier-15')!;
    const context = {
      ...contextOf(plan),
      school: { ...school, fleet: new Map([['osier-15', bare]]) },
      request: { ...request, aircraft: bare },
    };
    const use = {
      attributes: { from: 'engine-failure' as const },
      label: '',
      children: [],
      ordinal: 1,
      context,
    };
    expect(() => checklist.render(use)).toThrow(
      'The Osier 15 has no checklist `engine-failure`: add the key `engine-failure` to `fleet/osier-15.yaml`',
    );
  });

  it('names the nearest list', () => {
    expect(renderBody('::checklist{from=engine-failur}', plan).messages).toEqual([
      expect.stringMatching(/did you mean `engine-failure`\?/),
    ]);
  });
});
