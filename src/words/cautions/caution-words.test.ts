import { describe, expect, it } from 'vitest';
import type { Caution, CautionCode, CautionOf } from '../../flight/terms/caution.ts';
import { metresPerFoot, metresPerSecondPerKnot, radiansPerDegree } from '../../units/factors.ts';
import { aviation } from '../figures/aviation.ts';
import { type CautionSubject, cautionSentence } from './caution-words.ts';
import { remedySentence } from './remedy-words.ts';

const ft = metresPerFoot;
const kt = metresPerSecondPerKnot;
const metric = { height: 'm', distance: 'm', speed: 'km/h' } as const;
const subject: CautionSubject = {
  aircraft: { name: 'Osier 15', source: 'invented for the tests' },
  runway: { name: '24', spot: 118.4 },
};

type Facts<Code extends CautionCode> = Omit<CautionOf<Code>, 'code' | 'grade' | 'source'> &
  Partial<Pick<Caution, 'source'>>;

/** The sentence, and what would be flyable. */
function said<Code extends CautionCode>(
  code: Code,
  facts: Facts<Code>,
  units: typeof aviation | typeof metric = aviation,
) {
  const caution = { code, grade: 'beyond-good-practice', source: 'flown', ...facts } as unknown as Caution;
  return [cautionSentence(caution, subject, units), remedySentence(caution, subject, units)];
}

describe('what is said of a flight that', () => {
  it('does not come to the spot', () => {
    const beyond = (remedy: CautionOf<'beyond-reach'>['remedy']) =>
      said('beyond-reach', { value: 240.5, limit: 0, remedy })[0];
    const start = 'The spot cannot be made: at best the wheels touch 250 m from it; ';
    expect(beyond({ height: 900 * ft })).toBe(`${start}it would be made from 900 ft at the start.`);
    expect(beyond({ height: 900 * ft, wind: 8 * kt })).toBe(
      `${start}it would be made from 900 ft at the start, or in a wind of 8 kt from the same direction.`,
    );
    expect(beyond({})).toBe(`${start}neither another start nor less wind alone makes it soundly.`);
    expect(said('beyond-reach', { value: 1, limit: 0, remedy: {} })[1]).toBeUndefined();
  });

  it('has a leg that cannot be flown', () =>
    expect(said('wind-over-glide', { value: 1, limit: 0, leg: 'base' })).toEqual([
      'On base the wind is stronger than the glide: the leg cannot be flown.',
      undefined,
    ]));

  it('comes near an obstacle', () => {
    const hedge = { limit: 50 * ft, obstacle: 'hedge' };
    expect(said('obstacle-clearance', { ...hedge, how: 'above', value: 44.9 * ft })).toEqual([
      'The path passes 44 ft above the hedge; 50 ft is the least.',
      undefined,
    ]);
    expect(said('obstacle-clearance', { ...hedge, how: 'beside', value: 44.9 * ft })[0]).toBe(
      'The wing comes within 44 ft of the hedge, beside or before it; 50 ft is the least.',
    );
    const met = { ...hedge, how: 'met', value: -6.2 * ft } as const;
    expect(said('obstacle-clearance', { ...met, remedy: { spot: 'farther-in', by: 41 } })).toEqual([
      'The path meets the hedge, 7 ft below the top.',
      'With the spot 50 m farther in, the path would clear the hedge.',
    ]);
    expect(said('obstacle-clearance', { ...met, remedy: { higher: 31 * ft } })[1]).toBe(
      'A path 40 ft higher would clear the hedge.',
    );
    const near = { key: 'base-key', height: 601 * ft } as const;
    expect(said('obstacle-clearance', { ...met, remedy: { higher: 31 * ft, near } })[1]).toBe(
      'A path 40 ft higher would clear the hedge, 610 ft at the base key.',
    );
  });

  it('is too near the stall', () => {
    const margin = { value: 1.219, limit: 1.3 };
    expect(said('stall-margin', { ...margin, remedy: { bank: 37.6 * radiansPerDegree } })).toEqual([
      'In the turn the speed is 1.21 times the stall speed at that bank; it should be at least 1.30 times.',
      'It would keep the margin with the turns at 37 degrees of bank or less.',
    ]);
    expect(said('stall-margin', { ...margin, remedy: { eas: 44.2 * kt } })[1]).toBe(
      'It would keep the margin in this turn at 45 kt or more.',
    );
    expect(said('slow', { ...margin, remedy: { eas: 44.2 * kt, of: 'glide' } })).toEqual([
      'In straight flight before the round-out the speed is 1.21 times the stall speed; it should be at least 1.30 times.',
      'It would keep the margin with a glide at 45 kt or more, at this mass.',
    ]);
    expect(said('slow', { ...margin, remedy: { eas: 44.2 * kt, of: 'approach' } })[1]).toBe(
      'It would keep the margin with an approach at 45 kt or more, at this mass.',
    );
    expect(said('gust', { ...margin, over: 9.3 * kt, remedy: { eas: 48.2 * kt } })).toEqual([
      'Gusts of 10 kt over the wind leave the approach speed 1.21 times the stall speed, half of them taken off; it should be at least 1.30 times.',
      'An approach speed of 49 kt would allow for these gusts.',
    ]);
  });

  it('does not come to its approach speed', () => {
    const off = (value: number) => said('approach-speed-not-reached', { value: value * kt, limit: 45 * kt });
    expect(off(49)).toEqual([
      'The approach speed of 45 kt is not reached before the round-out: on final the speed is 4 kt more at best.',
      'A turn to final that is complete higher leaves the time to slow down to it.',
    ]);
    // Less than can be printed is still a miss.
    expect(off(44.8)).toEqual([
      'The approach speed of 45 kt is not reached before the round-out: on final the speed is 1 kt less at best.',
      'A turn to final that is complete higher leaves the time to speed up to it.',
    ]);
  });

  it('banks too much', () => {
    expect(said('bank-over-limit', { value: 52.3, limit: 44.6, turn: 'circle' })).toEqual([
      'A turn needs 52 degrees of bank; the limit of the Osier 15 is 44 degrees.',
      'It would be within limits with the circle at 44 degrees of bank or less: with more room, or in less wind.',
    ]);
    expect(said('bank-over-medium', { value: 47, limit: 45, turn: 'turns' })).toEqual([
      'A turn needs 47 degrees of bank; a medium turn has 45 degrees at most.',
      'It would be within limits with the turns at 45 degrees of bank or less: with more room, or in less wind.',
    ]);
  });

  it('is in too much wind', () => {
    const wind = { value: 13.6 * kt, limit: 9.7 * kt };
    const remedy = { most: 9.7 * kt };
    const within = 'It would be within the wind limits in 9 kt from the same direction, gusts counted.';
    expect(said('wind-over-limit', { ...wind, inGusts: false, remedy })).toEqual([
      'The wind is 14 kt; the limit of the Osier 15 is 9 kt.',
      within,
    ]);
    expect(said('crosswind-over-limit', { ...wind, inGusts: true, remedy })).toEqual([
      'The crosswind in gusts is 14 kt; the limit of the Osier 15 is 9 kt.',
      within,
    ]);
    expect(said('crosswind-over-limit', { ...wind, inGusts: true, remedy: { most: 0.6 * kt } })[1]).toBe(
      'It would be within the wind limits in a calm.',
    );
    const other = `${within} Landed the other way, the runway has this wind ahead.`;
    for (const [source, whose] of [
      ['aircraft', 'the limit of the Osier 15 is'],
      ['school-limit', "the school's limit is"],
      ['usual-tailwind', 'the most is'],
    ] as const) {
      expect(said('tailwind', { ...wind, inGusts: false, remedy, source })).toEqual([
        `The tailwind on the runway is 14 kt; ${whose} 9 kt.`,
        other,
      ]);
    }
    expect(said('tailwind', { ...wind, inGusts: true, remedy })[0]).toContain('The tailwind in gusts on the');
  });

  it('has too much mass, or too little', () => {
    expect(said('mass', { which: 'most', value: 470, limit: 450.6 })).toEqual([
      'The mass is 470 kg; the most that the Osier 15 may be flown at is 450 kg.',
      'It would be within limits at 450 kg or less.',
    ]);
    expect(said('mass', { which: 'least', value: 300, limit: 320.4 })).toEqual([
      'The mass is 300 kg; the least that the Osier 15 may be flown at is 321 kg.',
      'It would be within limits at 321 kg or more.',
    ]);
    expect(said('mass', { which: 'reference', value: 470, limit: 450 })).toEqual([
      'The mass is 470 kg, more than the 450 kg that the figures of the Osier 15 are for; its data name no greatest mass.',
      undefined,
    ]);
  });

  it('ends off the runway', () => {
    const off = (where: 'short' | 'long' | 'beside', remedy?: CautionOf<'off-runway'>['remedy']) =>
      said('off-runway', { value: 41.2, limit: 0, where, remedy });
    expect(off('short', { spot: 'farther-in', by: 41.2 })).toEqual([
      'The wheels touch 42 m before the landing end of the runway.',
      'With the spot 42 m farther in, the wheels would touch on the runway.',
    ]);
    expect(off('long')).toEqual([
      'The wheels touch 42 m beyond the end of the runway.',
      'It has to end on the runway: another height, or less wind.',
    ]);
    expect(off('beside')).toEqual([
      'The wheels touch 42 m beside the runway.',
      'It has to end on the centreline: less wind across, or another approach.',
    ]);
  });

  it('begins its landing before the runway', () => {
    const before = { value: 21, limit: 0, spot: 118.4 };
    const end = 'before the landing end of the runway, which lies 119 m before the spot.';
    expect(said('aim-before-threshold', { ...before, remedy: { spot: 'nearer-end', by: 21 } })).toEqual([
      `The round-out begins 30 m ${end}`,
      'With the spot 30 m nearer the landing end, all of the landing from the round-out on would lie on the runway.',
    ]);
    expect(said('aim-before-threshold', { ...before, aim: 11, remedy: { tooShort: true } })).toEqual([
      `The aim point lies 20 m ${end}`,
      'The runway is too short for this landing, wherever on it the spot lies.',
    ]);
  });

  it('has too little runway to roll', () => {
    const roll = (value: number, remedy: CautionOf<'landing-distance'>['remedy'] = {}) =>
      said('landing-distance', { value, limit: 291, remedy });
    expect(roll(311)).toEqual([
      'The landing roll is 320 m in this wind and air, longer than the 290 m of runway left after the touchdown.',
      'It would fit with the spot 20 m nearer the landing end of the runway.',
    ]);
    expect(roll(421)[1]).toBe('It would fit with 430 m of runway left at the touchdown.');
    // As far as the spot lies from the landing end, and no farther.
    expect(said('landing-distance', { value: 411, limit: 301, remedy: {} })[1]).toContain('110 m nearer');
    expect(roll(311, { otherWay: 181 })[1]).toBe(
      'It would fit with the spot 20 m nearer the landing end of the runway. Landed the other way, the roll would be 190 m.',
    );
    expect(roll(311, { tooShort: true })[1]).toContain('The runway is too short');
  });

  it('has a pattern that is low, unusual or far out', () => {
    expect(said('final-turn-low', { value: 243 * ft, limit: 300 * ft })).toEqual([
      'The turn to final is complete at 240 ft; it should be complete at 300 ft or higher.',
      'From a higher start the turn to final is complete higher.',
    ]);
    const usual = 'about 1,000 ft (800 to 1,200 ft) is usual, and judged best by eye.';
    expect(said('downwind-key-height', { value: 703 * ft, limit: 800 * ft })).toEqual([
      `The downwind key is flown at 700 ft; ${usual}`,
      undefined,
    ]);
    expect(said('downwind-key-height', { value: 1204 * ft, limit: 1200 * ft })[0]).toBe(
      `The downwind key is flown at 1,204 ft; ${usual}`,
    );
    expect(said('base-turn-far', { value: 911, limit: 804 })).toEqual([
      'The base turn lies 910 m past abeam, more than twice the distance of the downwind leg (800 m): the spot is hard to judge from there.',
      'A lower downwind key or a wider downwind leg brings it nearer.',
    ]);
  });

  it('needs too hard a pull', () => {
    const pull = { value: 1.424, limit: 1.3 };
    expect(said('round-out-pull', { ...pull, stalls: true, remedy: { eas: 48.2 * kt, own: 1.15 } })).toEqual([
      'The round-out needs a pull of 1.42 g, and at its speed the wing bears 1.30 g: it stalls.',
      "With an approach at 49 kt or more, at this mass, the wing bears the 1.15 g of the aircraft's data to the end of the round-out.",
    ]);
    const height = { ...pull, stalls: false, remedy: { height: 14.2 * ft, own: 1.15 } };
    expect(said('round-out-pull', height)).toEqual([
      'From its round-out height the Osier 15 needs a pull of 1.42 g to be level in time, more than the 1.30 g of its data.',
      "Begun at 15 ft, the round-out would need no more than the 1.15 g of the aircraft's data.",
    ]);
    expect(said('round-out-pull', { ...pull, stalls: false, remedy: { own: 1.15 } })[1]).toBe(
      'A flatter final or a higher round-out would need less.',
    );
  });

  it('has a page in metres', () => {
    expect(said('final-turn-low', { value: 73, limit: 300 * ft }, metric)[0]).toBe(
      'The turn to final is complete at 75 m; it should be complete at 95 m or higher.',
    );
    expect(
      said('wind-over-limit', { value: 10, limit: 8, inGusts: false, remedy: { most: 8 } }, metric),
    ).toEqual([
      'The wind is 36 km/h; the limit of the Osier 15 is 28 km/h.',
      'It would be within the wind limits in 28 km/h from the same direction, gusts counted.',
    ]);
  });
});
