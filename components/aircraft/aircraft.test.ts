import { describe, expect, it } from 'vitest';
import { degrees, flyTrial, knots, renderBody, sayIn } from '../trial-packet.ts';

const plan = flyTrial();

describe(':aircraft[…]', () => {
  it('says the figures of the aircraft', () => {
    const say = (name: string) => sayIn(`:aircraft[${name}]`, plan);
    expect(say('name')).toBe('Osier 15');
    expect(say('glide-ratio')).toBe('6.4:1');
    expect(say('bank')).toBe('30°');
    expect(say('round-out-height')).toBe('12 ft');
    expect(say('mass')).toBe('365 kg');
    expect(say('landing-roll')).toBe('90 m');
    expect(say('wind-limit')).toBe('18 kt');
    expect(say('crosswind-limit')).toBe('9 kt');
  });

  it('says a tailwind limit where there is one, and what to do where there is none', () => {
    const limits = { ...plan.aircraft.limits, tailwind: knots(5.8) };
    const limited = { ...plan, aircraft: { ...plan.aircraft, limits } };
    expect(sayIn(':aircraft[tailwind-limit]', limited)).toBe('5 kt');
    expect(renderBody(':aircraft[tailwind-limit]', plan).messages.join()).toMatch(
      /Osier 15 has no tailwind limit: write `tailwind` in `limits` of its file/,
    );
  });

  it('brings the speeds to the mass of the day', () => {
    // Speeds go with the square root of the mass (FAA-H-8083-25, Aerodynamics of Flight, weight and stall speed).
    const speedAt = (kt: number) => `${Math.round(kt * Math.sqrt(365 / 390))} kt`;
    expect(sayIn(':aircraft[best-glide]', plan)).toBe(speedAt(42));
    expect(sayIn(':aircraft[approach]', plan)).toBe(speedAt(45));
    expect(sayIn(':aircraft[touchdown]', plan)).toBe(speedAt(33));
    expect(sayIn(':aircraft[stall]', plan)).toBe(speedAt(29));
    expect(sayIn(':aircraft[stall]', flyTrial({ mass: 390 }))).toBe('29 kt');
    expect(sayIn(':aircraft[steep-approach]', plan)).toBe(speedAt(58));
    expect(sayIn(':aircraft[steep-ratio]', plan)).toBe('5.2:1');
  });

  it('has no steep approach where the aircraft has none, and says what to do', () => {
    const without = { ...plan, aircraft: { ...plan.aircraft, steepApproach: undefined } };
    expect(renderBody(':aircraft[steep-ratio]', without).messages.join()).toMatch(
      /Osier 15 has no steep approach: write `steep-approach` in its file/,
    );
  });

  it('takes the glide of the power setting that is flown', () => {
    expect(sayIn(':aircraft[glide-ratio]', flyTrial({ power: 'stopped' }))).toBe('5.7:1');
    expect(sayIn(':aircraft[power]', flyTrial({ power: 'stopped' }))).toBe('stopped');
    expect(sayIn(':aircraft[power]', plan)).toBe('idling');
  });

  it('raises the stall speed in the planned bank', () => {
    // FAA-H-8083-25, Aerodynamics of Flight, load factors in steep turns: 2 g at 60 degrees, and the stall speed
    // grows with the square root of the load factor: 50 kt unaccelerated, 71 kt (the handbook: "about 40 percent").
    const steep = { ...plan, flown: { ...plan.flown, stallSpeed: knots(50), bank: degrees(60) } };
    expect(sayIn(':aircraft[stall-in-turn]', steep)).toBe('71 kt');
    const level = { ...plan, flown: { ...plan.flown, stallSpeed: knots(50), bank: 0 } };
    expect(sayIn(':aircraft[stall-in-turn]', level)).toBe('50 kt');
  });

  it('lists what it can say', () => {
    expect(renderBody('At :aircraft[best-glde].', plan).messages).toEqual([
      expect.stringMatching(/^4:14 .*did you mean `best-glide`\? It can be `name`, `best-glide`/),
    ]);
  });
});
