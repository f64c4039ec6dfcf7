import { describe, expect, it } from 'vitest';
import { contextOf, degrees, feetAndKnots, flyTrial, knots, renderBody } from '../trial-packet.ts';
import { fieldsBeside } from './fields-beside.ts';

const plan = flyTrial();
const { airfield } = contextOf(plan).request;
const otherEnd = airfield.runways.find(({ name }) => name === '06')!;
const figures = (html: string) =>
  Object.fromEntries(
    [...html.matchAll(/it gets ([\d,]+) m (up wind|down wind|ahead|back)/g)].map(([, metres, where]) => [
      where!,
      Number(metres!.replace(',', '')),
    ]),
  );

describe('::reach', () => {
  const { html, messages } = renderBody('::reach\n\n::reach{height=2000ft at=base-key}', plan);

  it('is a figure with the drawing and a numbered caption', () => {
    expect(messages).toEqual([]);
    expect(html).toMatch(/^<figure class="drawing reach" id="reach-1"><svg[^>]*role="img"/);
    expect(html).toContain(
      '>Figure 1</span> Ground that the glide gets to, engine idling, from 1,000 ft at the downwind key',
    );
    expect(html).toContain('from 2,000 ft at the base key of runway 24');
    expect(html).toContain("Source of the aircraft's figures: Invented for the demonstration.");
    const ids = [...html.matchAll(/\sid="([^"]*)"/g)].map((match) => match[1]);
    expect(new Set(ids).size).toBe(ids.length);
  });

  it('names the fields of the airfield, each as within reach or not', () => {
    const [first] = html.split('</figure>');
    for (const name of ['long pasture', 'barley stubble', 'hay meadow']) {
      expect(first).toMatch(new RegExp(`Field ${name}: (within|partly within|out of) reach, [\\d,]+ m away`));
    }
    const low = renderBody('::reach{height=200ft}', plan).html;
    expect(low).toContain('Field hay meadow: out of reach');
  });

  it('gets as far in a calm, straight on, as the glide ratio says', () => {
    // The glide ratio is the distance forward over the height lost (FAA-H-8083-3, chapter 3, glides).
    const calm = figures(
      renderBody('::reach{height=1000ft}', flyTrial({ wind: { from: 0, speed: 0 } })).html,
    );
    expect(Math.abs(calm.ahead! - 304.8 * 6.4)).toBeLessThan(12);
    expect(calm.back!).toBeLessThan(calm.ahead!);
  });

  it('gets less far up wind the stronger the wind, and less far with the engine stopped', () => {
    const far = (changes: object) => figures(renderBody('::reach', flyTrial(changes)).html);
    const [five, ten] = [5, 10].map((speed) => far({ wind: { from: degrees(270), speed: knots(speed) } }));
    expect(ten!['up wind']!).toBeLessThan(five!['up wind']!);
    expect(ten!['down wind']!).toBeGreaterThan(five!['down wind']!);
    const stopped = far({ power: 'stopped' });
    expect(stopped['up wind']!).toBeLessThan(ten!['up wind']!);
  });

  it('does not begin on the ground, or at a key that this approach has not', () => {
    expect(renderBody('::reach{at=touchdown}', plan).messages[0]).toContain('No glide begins at `touchdown`');
    expect(renderBody('::reach{at=overhead}', plan).messages[0]).toContain('has no key position `overhead`');
    expect(renderBody('::reach{height=20ft}', plan).messages[0]).toContain('100 ft to 5000 ft');
  });

  it('begins at the first key of an approach that has no downwind key', () => {
    expect(renderBody('::reach', flyTrial({ approach: '90' })).html).toContain(
      'at the base key of runway 24',
    );
  });
});

describe('the fields beside a runway', () => {
  it('are seen from the other end of the strip as they lie', () => {
    const here = fieldsBeside(contextOf(plan)).fields;
    const there = fieldsBeside(contextOf(flyTrial({ runway: otherEnd }), feetAndKnots)).fields;
    // The two spots of Fallow Reach, each 300 m in from its end of the 700 m, are 100 m apart.
    for (const [index, field] of here.entries()) {
      expect(there[index]).toMatchObject({ along: 100 - field.along, heading: field.heading });
      expect(there[index]!.across).toBeCloseTo(-field.across);
    }
  });

  it('are named and not drawn beside a runway whose place is not known', () => {
    const crossing = { ...otherEnd, name: '12', heading: degrees(118) };
    const { fields, unplaced } = fieldsBeside(contextOf(flyTrial({ runway: crossing })));
    expect(fields).toEqual([]);
    expect(unplaced).toContain('hay meadow');
    expect(renderBody('::reach', flyTrial({ runway: crossing })).html).toContain(
      'Not drawn, their place beside runway 12 not being known: long pasture',
    );
  });
});
