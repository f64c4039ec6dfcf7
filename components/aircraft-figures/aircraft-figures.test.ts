import { describe, expect, it } from 'vitest';
import { contextOf, flyTrial, knots, renderBody } from '../trial-packet.ts';

const plan = flyTrial();
const rowsOf = (html: string) =>
  Object.fromEntries(
    [...html.matchAll(/<tr><th scope="row">(.*?)<\/th>(.*?)<\/tr>/g)].map((row) => [
      row[1]!,
      [...row[2]!.matchAll(/<td[^>]*>(.*?)<\/td>/g)].map((cell) => cell[1]!),
    ]),
  );

describe('::aircraft-figures', () => {
  const { html, messages } = renderBody('::aircraft-figures', plan);
  const rows = rowsOf(html);

  it('gives each speed at both masses', () => {
    expect(messages).toEqual([]);
    expect(html).toContain('at 390 kg, as given');
    expect(html).toContain('at 365 kg, as flown');
    // Speeds go with the square root of the mass (FAA-H-8083-25, Aerodynamics of Flight, weight and stall speed).
    const both = (kt: number) => [`${kt} kt`, `${Math.round(kt * Math.sqrt(365 / 390))} kt`];
    expect(rows['Stall, wings level']).toEqual(both(29));
    expect(rows.Touchdown).toEqual(both(33));
    expect(rows.Approach).toEqual(both(45));
    expect(rows['Best glide, engine idling']).toEqual(both(42));
    expect(rows['Steep approach']).toEqual(both(58));
  });

  it('gives glides, turns, round-out, roll and limits, and the source', () => {
    expect(rows['Glide ratio, engine idling']).toEqual(['6.4:1']);
    expect(rows['Glide ratio, engine stopped']).toEqual(['5.7:1']);
    expect(rows['Steep approach, ratio']).toEqual(['5.2:1']);
    expect(rows['Planned bank']).toEqual(['30°']);
    expect(rows['Most bank allowed']).toEqual(['60°']);
    expect(rows['Rate of roll']).toEqual(['20° a second']);
    expect(rows['Round-out']).toEqual(['begins at 12 ft, at a load factor of 1.20']);
    expect(rows['Landing roll']).toEqual(['90 m, as given for a calm, standard air at sea level and 390 kg']);
    expect(rows['Most wind']).toEqual(['18 kt']);
    expect(rows['Most crosswind']).toEqual(['9 kt']);
    expect(html).toContain("Source of the aircraft's figures: Invented for the demonstration.");
  });

  it('gives a tailwind limit and limits of mass where the aircraft has them, each on its safe side', () => {
    expect(rows['Most tailwind']).toEqual(['no figure of its own; 5 kt is taken']);
    const { request } = contextOf(plan);
    const limited = flyTrial({
      aircraft: {
        ...request.aircraft,
        mass: { ...request.aircraft.mass, most: 449.6, least: 280.4 },
        limits: { ...request.aircraft.limits, tailwind: knots(5.7) },
      },
    });
    const given = rowsOf(renderBody('::aircraft-figures', limited).html);
    expect(given['Most mass']).toEqual(['449 kg']);
    expect(given['Least mass']).toEqual(['281 kg']);
    expect(given['Most tailwind']).toEqual(['5 kt']);
  });

  it('says beside each speed where the flap stands, where its file says so', () => {
    const { request } = contextOf(plan);
    const flap = { stall: 'up', approach: 'half', glide: 'up', steepApproach: 'full' };
    const given = rowsOf(
      renderBody('::aircraft-figures', flyTrial({ aircraft: { ...request.aircraft, flap } })).html,
    );
    expect(Object.keys(given).slice(0, 6)).toEqual([
      'Stall, wings level, flap up',
      'Touchdown',
      'Approach, flap half',
      'Best glide, engine idling, flap up',
      'Best glide, engine stopped, flap up',
      'Steep approach, flap full',
    ]);
  });

  it('prints speeds as the indicator shows them', () => {
    const { request } = contextOf(plan);
    const calibration = [
      { indicated: knots(25), equivalent: knots(28) },
      { indicated: knots(60), equivalent: knots(63) },
    ];
    const calibrated = flyTrial({ aircraft: { ...request.aircraft, calibration } });
    expect(calibrated.aircraft.speeds.stall).toBeCloseTo(knots(32), 9);
    expect(rowsOf(renderBody('::aircraft-figures', calibrated).html)['Stall, wings level']?.[0]).toBe(
      '29 kt',
    );
  });

  it('says of a fitted glide how well it meets what was measured, rounded up', () => {
    const { request } = contextOf(plan);
    const sink = (ftMin: number) => (ftMin * 0.3048) / 60;
    const points = [
      { speed: knots(36), sink: sink(660) },
      { speed: knots(42), sink: sink(640) },
      { speed: knots(48), sink: sink(740) },
      { speed: knots(54), sink: sink(860) },
    ];
    const fitted = flyTrial({ aircraft: { ...request.aircraft, glide: { idle: { points } } } });
    const residual = (fitted.aircraft.glide.idle.residual! / 0.3048) * 60;
    const shown = rowsOf(renderBody('::aircraft-figures', fitted).html);
    const within = Number(/meets within (\d+) ft\/min/.exec(shown['Glide ratio, engine idling']![0]!)?.[1]);
    expect(within).toBeGreaterThanOrEqual(residual);
    expect(within).toBeLessThan(residual + 10);
    expect(shown).not.toHaveProperty('Glide ratio, engine stopped');
  });
});
