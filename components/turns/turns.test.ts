import { describe, expect, it } from 'vitest';
import { degrees, flyTrial, renderBody } from '../trial-packet.ts';

const plan = flyTrial();
const rows = (html: string) =>
  [...html.matchAll(/<tr><th scope="row">(.*?)<\/th>(.*?)<\/tr>/g)].map((row) => [
    row[1]!,
    ...[...row[2]!.matchAll(/<td[^>]*>(.*?)<\/td>/g)].map((cell) => cell[1]!),
  ]);

describe('::turns', () => {
  const { html, messages } = renderBody('::turns{banks="20deg 30deg 45deg"}', plan);

  it('is a drawing to scale and a table', () => {
    expect(messages).toEqual([]);
    expect(html).toMatch(/^<figure class="drawing turns" id="turns-1"><svg[^>]*role="img"/);
    expect(html).toMatch(/Turning circles of Osier 15 in a glide, still air, scale 1:[\d,]+\./);
    expect(html).toContain(
      '>Table 1</span> What a turn takes of Osier 15 in a glide at 41 kt, in still air; the last column is rounded down.',
    );
    expect(rows(html).map(([bank]) => bank)).toEqual(['20°', '30°', '45°']);
  });

  it('has the load factors of the published chart', () => {
    // FAA-H-8083-25, Aerodynamics of Flight, load factors in turns: 1.06 at 20, 1.15 at 30, 1.41 at 45 degrees.
    expect(rows(html).map((row) => row[1])).toEqual(['1.06', '1.15', '1.41']);
  });

  it('has the radius and the time of the published formulas', () => {
    // FAA-H-8083-25, Aerodynamics of Flight: radius V^2/(11.26 tan bank) ft, rate 1,091 tan bank/V degrees a second, V in kt
    // true. They are for level flight: over the ground a glide at 6.4:1 turns a little tighter.
    const knotsTrue = ((plan.flown.glideSpeed * 3600) / 1852) * Math.sqrt(1.225 / plan.air.density) * 1.015;
    for (const [bank, , radius, , half, , whole] of rows(html)) {
      const tan = Math.tan(degrees(Number.parseFloat(bank!)));
      const level = (knotsTrue ** 2 / (11.26 * tan)) * 0.3048;
      expect(Math.abs(Number.parseFloat(radius!) - level)).toBeLessThan(5 + 0.05 * level);
      const seconds = 360 / ((1091 * tan) / knotsTrue);
      expect(Math.abs(Number.parseFloat(whole!) - seconds)).toBeLessThan(1);
      expect(Math.abs(Number.parseFloat(half!) - seconds / 2)).toBeLessThan(1);
    }
  });

  it('loses about the length of the path over the glide ratio, and twice as much in a whole turn', () => {
    for (const [, , , half, , whole] of rows(html)) {
      expect(Math.abs(Number.parseFloat(whole!) - 2 * Number.parseFloat(half!))).toBeLessThanOrEqual(10);
    }
    const [shallow] = rows(html);
    const path = 2 * Math.PI * Number.parseFloat(shallow![2]!);
    const lost = Number.parseFloat(shallow![5]!) * 0.3048;
    expect(path / lost).toBeGreaterThan(5.5);
    expect(path / lost).toBeLessThan(6.4);
  });

  it('says the stall speed, and where the margin over it is under 1.3', () => {
    for (const [bank, , , , , , , stall, margin] of rows(html)) {
      const knots =
        (plan.flown.stallSpeed * 3600) / 1852 / Math.sqrt(Math.cos(degrees(Number.parseFloat(bank!))));
      expect(Number.parseFloat(stall!)).toBe(Math.round(knots));
      const times = (plan.flown.glideSpeed * 3600) / 1852 / knots;
      expect(Number.parseFloat(margin!)).toBeLessThanOrEqual(times);
      expect(times - Number.parseFloat(margin!)).toBeLessThan(0.01);
      expect(margin!.includes('under 1.3')).toBe(times < 1.3);
    }
    expect(rows(html).at(-1)!.at(-1)).toContain('under 1.3');
  });

  it('leaves out a bank that is over the limit or stalled, and says so', () => {
    const some = renderBody('::turns{banks="30deg 70deg"}', plan);
    expect(rows(some.html).map(([bank]) => bank)).toEqual(['30°']);
    expect(some.html).toContain('Left out, being over its limit or stalled at that speed: 70°.');
    expect(renderBody('::turns{banks=70deg}', plan).messages[0]).toContain('write smaller ones');
  });

  it('takes banks with their unit, and no more than fit side by side', () => {
    expect(renderBody('::turns{banks="20"}', plan).messages[0]).toContain('deg');
    expect(renderBody('::turns{banks="0deg"}', plan).messages[0]).toContain('no bank to turn at');
    expect(renderBody('::turns{banks="1deg 2deg 3deg 4deg 5deg 6deg"}', plan).messages[0]).toContain(
      '1 to 5 banks',
    );
    expect(rows(renderBody('::turns', plan).html)).toHaveLength(3);
  });
});
