import { describe, expect, it } from 'vitest';
import { degrees, feetAndKnots, flyTrial, knots } from '../../../components/trial-packet.ts';
import type { Caution, CautionCode } from '../../flight/terms/caution.ts';
import type { PageUnits } from '../figures/page-units.ts';
import { cautionLine, cautionNames } from './caution-line.ts';

const foot = 0.3048;
const metric = { height: 'm', distance: 'm', speed: 'km/h' } as const;
/** Without the facts that a line has no room for. */
const caution = (code: CautionCode, value: number, limit: number) =>
  ({ code, value, limit, grade: 'beyond-good-practice', source: 'flown' }) as Caution;
const line = (code: CautionCode, value: number, limit: number, units: PageUnits = feetAndKnots) =>
  cautionLine(caution(code, value, limit), {}, units).replaceAll('\u00a0', ' ');

describe('a caution in a line', () => {
  it('has what, the value and the limit', () => {
    expect(line('final-turn-low', 240 * foot, 300 * foot)).toBe(
      'turn to final complete at 240 ft, at least 300 ft',
    );
    expect(line('crosswind-over-limit', knots(13.6), knots(9))).toBe('crosswind 14 kt, at most 9 kt');
    expect(line('bank-over-medium', 52, 45)).toBe('bank 52°, at most 45°');
    expect(line('bank-over-limit', 52, 44.6)).toBe('bank 52°, at most 44°');
    expect(line('stall-margin', 1.219, 1.3)).toBe(
      'in a turn 1.21 times the stall speed, at least 1.30 times',
    );
    expect(line('mass', 470, 450)).toBe('mass 470 kg, at most 450 kg');
    expect(line('mass', 300, 320)).toBe('mass 300 kg, at least 320 kg');
    expect(line('downwind-key-height', 700 * foot, 800 * foot)).toBe(
      'downwind key at 700 ft, usual from 800 ft',
    );
    expect(line('downwind-key-height', 1300 * foot, 1200 * foot)).toBe(
      'downwind key at 1,300 ft, usual to 1,200 ft',
    );
    expect(line('off-runway', 41, 0)).toBe('touchdown 50 m off the runway');
    expect(line('landing-distance', 312, 290)).toBe('landing roll 320 m, at most 290 m');
    expect(line('wind-over-glide', 0, 0)).toBe('the wind is stronger than the glide');
    expect(line('slow', 1.219, 1.3)).toBe(
      'in straight flight 1.21 times the stall speed, at least 1.30 times',
    );
    expect(line('gust', 1.219, 1.3)).toBe('gusts: 1.21 times the stall speed, at least 1.30 times');
    expect(line('aim-before-threshold', 21, 0)).toBe('landing begins 30 m before the runway');
    expect(line('approach-speed-not-reached', knots(49), knots(45))).toBe(
      'approach speed of 45 kt not reached: 49 kt',
    );
    expect(line('approach-speed-not-reached', knots(44.4), knots(45))).toBe(
      'approach speed of 45 kt not reached: 44 kt',
    );
  });

  it('has a limit never on its unsafe side, and a digit more where the two would read alike', () => {
    expect(line('crosswind-over-limit', knots(12), knots(8.9))).toBe('crosswind 12 kt, at most 8 kt');
    expect(line('final-turn-low', 297 * foot, 300 * foot)).toBe(
      'turn to final complete at 297 ft, at least 300 ft',
    );
  });

  it('says of an obstacle by how much it is cleared, or that it is met', () => {
    expect(line('obstacle-clearance', 44.9 * foot, 50 * foot)).toBe('obstacle within 44 ft, at least 50 ft');
    expect(line('obstacle-clearance', -2, 50 * foot)).toBe('an obstacle is met, to be cleared by 50 ft');
  });

  it('has the units of the page', () => {
    expect(line('final-turn-low', 60, 300 * foot, metric)).toBe(
      'turn to final complete at 60 m, at least 95 m',
    );
    expect(line('wind-over-limit', 10, 8, metric)).toBe('wind 36 km/h, at most 28 km/h');
    const inFeet = { ...metric, distance: 'ft' } as const;
    expect(line('base-turn-far', 3021 * foot, 2640 * foot, inFeet)).toBe(
      'base turn past abeam by 3,000 ft, at most 2,600 ft',
    );
    expect(line('off-runway', 101 * foot, 0, inFeet)).toBe('touchdown 150 ft off the runway');
  });

  it('has a name of its own where there is no room for a line', () => {
    const names = Object.values(cautionNames);
    expect(new Set(names).size).toBe(names.length);
    for (const name of names) expect(name).toMatch(/^[a-z][a-z -]+$/);
  });

  it('has a line and a name for whatever a flight earns', () => {
    const plans = [
      flyTrial({ wind: { from: degrees(148), speed: knots(14) } }),
      flyTrial({ wind: { from: degrees(58), speed: knots(9) } }),
      flyTrial({ height: 90 }),
      flyTrial({ bank: degrees(58), spacing: 200, minimums: { finalTurn: 200 } }),
    ];
    const cautions = plans.flatMap((plan) => plan.cautions);
    expect(new Set(cautions.map(({ code }) => code)).size).toBeGreaterThan(3);
    for (const each of cautions) {
      expect(cautionLine(each, {}, feetAndKnots)).toMatch(/^[a-z].*[^.]$/);
      expect(cautionNames[each.code]).toMatch(/^[a-z].*[^.]$/);
    }
  });
});
