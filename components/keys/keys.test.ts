import { describe, expect, it } from 'vitest';
import { keyNames } from '../../src/words/keys/key-names.ts';
import { flyTrial, renderBody } from '../trial-packet.ts';

const plan = flyTrial();
const cells = (html: string) =>
  [...html.matchAll(/<tr><th scope="row">(.*?)<\/th>(.*?)<\/tr>/g)].map((row) => [
    row[1],
    ...[...row[2]!.matchAll(/<td[^>]*>(.*?)<\/td>/g)].map((cell) => cell[1]),
  ]);

describe('::keys', () => {
  const { html, messages } = renderBody('::keys', plan);

  it('is a table with a caption, a head and a row for each key, in the order flown', () => {
    expect(messages).toEqual([]);
    expect(html).toMatch(
      /^<table class="keys" id="keys-1"><caption><span [^>]*>Table 1<\/span> Key positions, 180° approach/,
    );
    expect(html).toContain('<thead><tr><th scope="col">Key position</th>');
    expect(cells(html).map((row) => row[0])).toEqual(plan.keys.map(({ id }) => keyNames[id]));
  });

  it('says heights, places and times of the plan', () => {
    const rows = cells(html);
    const turn = plan.keys.find(({ id }) => id === 'base-turn')!;
    expect(rows[0]).toEqual(['Downwind key', '1,000 ft', 'abeam the spot, 500 m to the left', '0 s']);
    expect(rows[1]).toEqual([
      'Base turn',
      `${Math.round(turn.height / 0.3048 / 10) * 10} ft`,
      `${Math.round(-turn.along / 10) * 10} m past abeam, 500 m to the left`,
      `${Math.round(turn.time)} s`,
    ]);
    expect(rows.at(-1)?.slice(0, 3)).toEqual(['Touchdown', '0 ft', 'at the spot']);
  });

  it('gives the aim point no time: it is not flown through', () => {
    const aim = cells(html).find((row) => row[0] === 'Aim point');
    expect(aim?.[2]).toMatch(/^\d+ m before the spot, on the centreline; the glide points here$/);
    expect(aim?.[3]).toBe('–');
  });

  it('names under it what it was computed for, and the source', () => {
    expect(html).toContain(
      '<p class="source">Computed for Osier 15, surface wind 270° 10 kt, engine idling. Source of the aircraft\'s figures: Invented for the demonstration.',
    );
  });

  it('is mirrored by a right-hand pattern, and says when the engine is stopped', () => {
    const right = renderBody('::keys', flyTrial({ circuit: 'right', power: 'stopped' })).html;
    expect(cells(right)[0]?.[2]).toBe('abeam the spot, 500 m to the right');
    expect(right).toContain('right-hand');
    expect(right).toContain('times from the moment the engine stopped');
  });

  it('says where the spot is not made', () => {
    const short = flyTrial({ height: 90 });
    expect(short.made).toBe(false);
    expect(renderBody('::keys', short).html).toContain('engine idling; the spot is not made.');
  });

  it('is numbered anew for each table', () => {
    const twice = renderBody('::keys\n\n::keys', plan).html;
    expect(twice).toContain('id="keys-2"');
    expect(twice).toContain('>Table 2</span>');
  });
});
