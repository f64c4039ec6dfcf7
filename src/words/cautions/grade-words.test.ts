import { describe, expect, it } from 'vitest';
import type { Caution, Grade, LimitSource } from '../../flight/terms/caution.ts';
import type { KeyId } from '../../flight/terms/key.ts';
import type { Plan } from '../../flight/terms/plan.ts';
import { metresPerFoot, metresPerSecondPerKnot, radiansPerDegree } from '../../units/factors.ts';
import { aviation } from '../figures/aviation.ts';
import { cautionsOf, countWords, gradeSentence, remediesOf, settingName } from './grade-sentences.ts';
import { cautionSentences, keyGrade, markNote, markWords } from './grade-words.ts';
import { limitSource, shortSource } from './limit-sources.ts';

const low = (grade: Grade, feet: number, at?: KeyId): Caution => ({
  code: 'final-turn-low',
  ...{ grade, at, source: 'power-off-approaches', value: feet * metresPerFoot, limit: 300 * metresPerFoot },
});
const cautions = [
  low('worth-knowing', 290, 'downwind-key'),
  low('beyond-good-practice', 240, 'final'),
  low('not-to-be-flown', 100, 'base-key'),
  low('beyond-good-practice', 200, 'base-key'),
];
const plan = {
  aircraft: { name: 'Osier 15', source: 'invented; for the tests' },
  runway: { name: '24', spot: 100 },
  flown: { surfaceWind: { from: 210 * radiansPerDegree, speed: 12 * metresPerSecondPerKnot } },
  power: 'idle',
  keys: (['downwind-key', 'base-key', 'final'] as const).map((id) => ({ id })),
  cautions,
} as unknown as Plan;
const complete = (feet: number) =>
  `The turn to final is complete at ${feet} ft; it should be complete at 300 ft or higher.`;

describe('the cautions of a plan', () => {
  it('are marked at their keys by the gravest of them, and what is only worth knowing is not', () => {
    expect(keyGrade(plan, 'base-key')).toBe('not-to-be-flown');
    expect(keyGrade(plan, 'final')).toBe('beyond-good-practice');
    expect(keyGrade(plan, 'downwind-key')).toBeUndefined();
    expect(keyGrade(plan, 'touchdown')).toBeUndefined();
    expect(markWords).toEqual({
      'not-to-be-flown': 'not to be flown',
      'beyond-good-practice': 'beyond a limit',
    });
  });

  it('have their squares explained where there are any', () => {
    const thin = ' Thin square: beyond a limit of good practice.';
    expect(markNote(plan)).toBe(` Heavy square: not to be flown.${thin}`);
    expect(markNote({ ...plan, cautions: [cautions[1]!] })).toBe(thin);
    expect(markNote({ ...plan, cautions: [cautions[0]!] })).toBe('');
  });

  it('are told the gravest first', () => {
    expect(cautionSentences(plan, aviation)).toEqual([
      `Not to be flown: ${complete(100)}`,
      `Beyond a limit of good practice: ${complete(240)}`,
      `Beyond a limit of good practice: ${complete(200)}`,
    ]);
  });

  it('of one grade are told with the setting, and what would be flyable once', () => {
    const higher = 'From a higher start the turn to final is complete higher.';
    const setting = 'Osier 15, runway 24, wind 210°\u00a012\u00a0kt, engine idling';
    expect(settingName(plan, aviation)).toBe(setting);
    expect(settingName({ ...plan, power: 'stopped' }, aviation)).toMatch(/, engine stopped$/);
    expect(cautionsOf(plan, 'worth-knowing')).toEqual([cautions[0]]);
    expect(remediesOf(cautions, plan, aviation)).toEqual([higher]);
    expect(gradeSentence(plan, 'beyond-good-practice', aviation)).toBe(
      `${setting}: beyond a limit of good practice. ${complete(240)} ${complete(200)} ${higher}`,
    );
    expect(gradeSentence(plan, 'not-to-be-flown', aviation, ['Begin higher.'])).toBe(
      `${setting}: not to be flown. ${complete(100)} Begin higher.`,
    );
  });
});

describe('how many plans have which grade', () => {
  const none = { beyond: 0, refused: 0, shown: 0, known: 0 };
  it('is told in one sentence, without those of which there are none', () => {
    expect(countWords(none, 'packet', 'not printed')).toBeUndefined();
    expect(countWords({ ...none, beyond: 1 }, 'packet', 'not printed')).toBe(
      '1 packet beyond a limit of good practice.',
    );
    expect(countWords({ beyond: 2, refused: 1, shown: 3, known: 4 }, 'packet', 'not printed')).toBe(
      '2 packets beyond a limit of good practice, 1 not to be flown (not printed), 3 not to be flown (shown as such), 4 with something worth knowing.',
    );
  });
});

describe('where a limit comes from', () => {
  const of = (source: LimitSource) => limitSource({ source }, plan, aviation);
  const short = (source: LimitSource) => shortSource({ source }, plan, aviation);
  it('is the data of the aircraft or the airfield, in short without what they say of themselves', () => {
    expect(of('aircraft')).toBe('aircraft data: invented; for the tests');
    expect(short('aircraft')).toBe('aircraft data');
    expect(of('airfield')).toBe('airfield data: runway 24');
    expect(short('airfield')).toBe('airfield data');
    expect(of('landing-roll')).toMatch(
      /^aircraft and airfield data: invented; for the tests; brought to this wind/,
    );
    expect(short('landing-roll')).toBe('aircraft and airfield data');
  });
  it('is a publication with its chapter, or says that it has no source', () => {
    expect(of('medium-bank')).toBe('FAA-H-8083-3, chapter 3');
    expect(of('turning-margin')).toBe('FAA-H-8083-3, chapter 9; stall speed in a turn: FAA-H-8083-25');
    expect(short('turning-margin')).toBe('FAA-H-8083-3, chapter 9');
    expect(of('usual-key-heights')).toBe(
      `${of('power-off-approaches')}; the band about it: common practice, no source`,
    );
    expect(of('usual-base-turn')).toBe('common practice, no source');
    expect(of('sideways-clearance')).toContain('no source');
    expect(of('power-off-approaches')).toBe('FAA-H-8083-3A, chapter 8, and FAA-H-8083-5, chapter 11');
    expect(of('aim-on-the-runway')).toMatch(/^the aim point: FAA-H-8083-3, chapter 9; .* no source$/);
    expect(of('approach-margin')).toBe('FAA-H-8083-3, chapter 9');
    expect(of('load-at-stall')).toBe('load factor at the stall: FAA-H-8083-25');
    expect(of('gust-allowance')).toMatch(
      /^FAA-H-8083-3, turbulent air approach and landing: half of the gust/,
    );
    expect(of('usual-tailwind')).toMatch(/^ICAO Doc 8168, volume I, 2\.1\.3: .* common practice, no source$/);
    expect(short('screen-height')).toBe('screen height of 50 ft: 14 CFR 25.125');
  });
  it('is the school, or the plan itself', () => {
    expect(of('school-minimum')).toBe("the school's own minimum");
    expect(of('school-limit')).toBe("the school's own limit");
    expect(of('flown')).toBe('flown by this plan');
  });
});
