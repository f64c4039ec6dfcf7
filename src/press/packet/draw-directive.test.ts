import { toHtml } from 'hast-util-to-html';
import { describe, expect, it } from 'vitest';
import { contextOf, flyTrial, sayIn } from '../../../components/trial-packet.ts';
import { drawDirective } from './draw-directive.ts';

const plan = flyTrial();
const context = contextOf(plan);

function draw(source: string, edition: 'student' | 'instructor' = 'student') {
  const { nodes, messages } = drawDirective(source, { ...context, edition });
  const said = messages.map(({ line, column, fatal, reason }) => `${line}:${column} ${fatal} ${reason}`);
  return { html: toHtml([...nodes]).replaceAll('\u00a0', ' '), said };
}

describe('one directive alone', () => {
  it('is the figure that a lesson gets', () => {
    const { html, said } = draw('::pattern');
    expect(said).toEqual([]);
    expect(html).toMatch(/^<figure[^>]*>.*<svg.*<\/figure>$/s);
  });

  it('is no more than the words, where it stands in a sentence', () => {
    const { html, said } = draw(':key[base-key]{show=height}');
    expect(said).toEqual([]);
    expect(html).toBe(sayIn(':key[base-key]{show=height}', plan));
    expect(html).toMatch(/^\d[\d,]* ft$/);
  });

  it('has what it holds in it, with the directives there', () => {
    const { html, said } = draw(':::caution\nNot *below* :key[final]{show=height}.\n:::');
    expect(said).toEqual([]);
    expect(html).toContain(`Not <em>below</em> ${sayIn(':key[final]{show=height}', plan)}.`);
  });

  it('is nothing, and no mistake, where it is for another aircraft', () => {
    const words = (name: string) => `:::for{class=${name}}\nLower the bar.\n:::`;
    expect(draw(words('glider'))).toEqual({ html: '', said: [] });
    expect(draw(words(plan.aircraft.class)).html).toContain('Lower the bar.');
  });

  it('is that of its edition', () => {
    const note = ':::instructor\nAsk for the wind.\n:::';
    expect(draw(note).html).not.toContain('Ask for');
    expect(draw(note, 'instructor').html).toContain('Ask for the wind.');
  });

  it.each([
    ['::patern', /^1:1 true No directive is called `patern`; did you mean `::pattern`/],
    ['::pattern{colour=red}', /^1:11 true .*`colour`/],
    [':key[overhead]', /^1:1 true .*overhead/],
    ['::pattern\n\n::profile', /^3:1 true Write one directive and nothing beside it/],
    ['Look:\n\n::pattern', /^1:1 true Write one directive/],
    ['At :key[base-key] look.', /^1:1 true Write one directive/],
    ['*6:1*', /^1:1 true Write one directive/],
    ['', /^1:1 true Write one directive/],
  ])('is a message at its place where %j is typed', (source, message) => {
    const { html, said } = draw(source);
    expect(html).toBe('');
    expect(said).toEqual([expect.stringMatching(message)]);
  });
});
