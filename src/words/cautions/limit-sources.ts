import type { Caution, LimitSource } from '../../flight/terms/caution.ts';
import type { CautionSubject } from './caution-words.ts';

/** Where the limit of a caution comes from: `aircraft data: …`, `FAA-H-8083-3, chapter 3`. */
export function limitSource({ source }: Pick<Caution, 'source'>, subject: CautionSubject): string {
  return sources[source](subject);
}

/** The same in a few words, without what the aircraft's file says about itself. */
export function shortSource(caution: Pick<Caution, 'source'>, subject: CautionSubject): string {
  return limitSource(caution, subject)
    .replace(/;.*$/s, '')
    .replace(/^((?:aircraft|airfield)(?: and airfield)? data):.*$/s, '$1')
    .trim();
}

/** The handbook that most limits of good practice come from. */
const handbook = 'FAA-H-8083-3';
/** The chapter on power-off approaches, with their heights. */
const powerOff = 'FAA-H-8083-3A, chapter 8, and FAA-H-8083-5, chapter 11';

const sources: Readonly<Record<LimitSource, (subject: CautionSubject) => string>> = {
  aircraft: ({ aircraft }) => `aircraft data: ${aircraft.source}`,
  airfield: ({ runway }) => `airfield data: runway ${runway.name}`,
  'landing-roll': ({ aircraft }) =>
    `aircraft and airfield data: ${aircraft.source}; brought to this wind, air and mass by FAA-H-8083-25 and CAT.POL.A.330(c)`,
  'school-minimum': () => "the school's own minimum",
  'school-limit': () => "the school's own limit",
  flown: () => 'flown by this plan',
  'screen-height': () => 'screen height of 50 ft: 14 CFR 25.125; aircraft handbooks use the same',
  'sideways-clearance': () =>
    'sideways the 50 ft that are kept above; in the round-out and the hold-off a wing span from the wing, 50 ft at most: a judgement of ours, no source',
  'power-off-approaches': () => powerOff,
  'usual-key-heights': () => `${powerOff}; the band about it: common practice, no source`,
  'usual-base-turn': () => 'common practice, no source',
  'aim-on-the-runway': () =>
    `the aim point: ${handbook}, chapter 9; that it and the round-out lie on the runway: common practice, no source`,
  'medium-bank': () => `${handbook}, chapter 3`,
  'approach-margin': () => `${handbook}, chapter 9`,
  'turning-margin': () => `${handbook}, chapter 9; stall speed in a turn: FAA-H-8083-25`,
  'load-at-stall': () => 'load factor at the stall: FAA-H-8083-25',
  'gust-allowance': () =>
    `${handbook}, turbulent air approach and landing: half of the gust factor is added to the approach speed`,
  'usual-tailwind': () =>
    'ICAO Doc 8168, volume I, 2.1.3: the most with which a runway may be chosen for noise; as a limit for landing: common practice, no source',
};
