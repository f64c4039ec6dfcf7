import type { Caution, LimitSource } from '../../flight/terms/caution.ts';
import { metresPerFoot } from '../../units/factors.ts';
import { formatHeight } from '../figures/format.ts';
import type { PageUnits } from '../figures/page-units.ts';
import { type CautionSubject, plain } from './caution-words.ts';

/** A source in a few words, and what there is room to add. */
interface SourceWords {
  readonly short: string;
  readonly more?: string;
}

/** Where the limit of a caution comes from: `aircraft data: …`, `FAA-H-8083-3, chapter 3`. */
export function limitSource(
  { source }: Pick<Caution, 'source'>,
  subject: CautionSubject,
  units: PageUnits,
): string {
  const { short, more = '' } = sources[source](subject, units);
  return `${short}${more}`;
}

/** The same in a few words, without what the aircraft's file says about itself. */
export function shortSource(
  { source }: Pick<Caution, 'source'>,
  subject: CautionSubject,
  units: PageUnits,
): string {
  return sources[source](subject, units).short;
}

/** The handbook that most limits of good practice come from. */
const handbook = 'FAA-H-8083-3';
/** The chapter on power-off approaches, with their heights. */
const powerOff = 'FAA-H-8083-3A, chapter 8, and FAA-H-8083-5, chapter 11';

/** m: the height of the screen that a landing is measured from. */
const screen = 50 * metresPerFoot;

const sources: Readonly<Record<LimitSource, (subject: CautionSubject, units: PageUnits) => SourceWords>> = {
  aircraft: ({ aircraft }) => ({ short: 'aircraft data', more: `: ${aircraft.source}` }),
  airfield: ({ runway }) => ({ short: 'airfield data', more: `: runway ${runway.name}` }),
  'landing-roll': ({ aircraft }) => ({
    short: 'aircraft and airfield data',
    more: `: ${aircraft.source}; brought to this wind, air and mass by FAA-H-8083-25 and CAT.POL.A.330(c)`,
  }),
  'school-minimum': () => ({ short: "the school's own minimum" }),
  'school-limit': () => ({ short: "the school's own limit" }),
  flown: () => ({ short: 'flown by this plan' }),
  'screen-height': (_, units) => ({
    short: `screen height of ${plain(formatHeight(screen, units))}: 14 CFR 25.125`,
    more: '; aircraft handbooks use the same',
  }),
  'sideways-clearance': (_, units) => {
    const height = plain(formatHeight(screen, units));
    return {
      short: `sideways the ${height} that are kept above`,
      more: `; in the round-out and the hold-off a wing span from the wing, ${height} at most: a judgement of ours, no source`,
    };
  },
  'power-off-approaches': () => ({ short: powerOff }),
  'usual-key-heights': () => ({ short: powerOff, more: '; the band about it: common practice, no source' }),
  'usual-base-turn': () => ({ short: 'common practice, no source' }),
  'aim-on-the-runway': () => ({
    short: `the aim point: ${handbook}, chapter 9`,
    more: '; that it and the round-out lie on the runway: common practice, no source',
  }),
  'medium-bank': () => ({ short: `${handbook}, chapter 3` }),
  'approach-margin': () => ({ short: `${handbook}, chapter 9` }),
  'turning-margin': () => ({
    short: `${handbook}, chapter 9`,
    more: '; stall speed in a turn: FAA-H-8083-25',
  }),
  'load-at-stall': () => ({ short: 'load factor at the stall: FAA-H-8083-25' }),
  'gust-allowance': () => ({
    short: `${handbook}, turbulent air approach and landing: half of the gust factor is added to the approach speed`,
  }),
  'usual-tailwind': () => ({
    short: 'ICAO Doc 8168, volume I, 2.1.3: the most with which a runway may be chosen for noise',
    more: '; as a limit for landing: common practice, no source',
  }),
};
