import type { Caution, CautionCode, Grade, Plan } from '../../flight/terms/plan.ts';
import type { FrontMatter } from '../../lesson/front-matter.ts';
import { gradeNames } from '../../words/cautions/grade-words.ts';
import { formatWind } from '../../words/figures/format.ts';
import type { PageUnits } from '../../words/figures/page-units.ts';

// What is said of a grade where there is room for a sentence; its name, and the words at a key, are the drawings' own.

/** The cautions of one grade. */
export function cautionsOf({ cautions }: Pick<Plan, 'cautions'>, grade: Grade): readonly Caution[] {
  return cautions.filter((caution) => caution.grade === grade);
}

/**
 * All that is said of one grade of a plan: `Osier 15, runway 24, wind 330° 14 kt: not to be flown. The crosswind is …`,
 * and what would be flyable: `flyable`, or where it is left out what the cautions say.
 */
export function gradeSentence(
  plan: Plan,
  grade: Grade,
  units: PageUnits,
  flyable: readonly string[] = [],
): string {
  const found = cautionsOf(plan, grade);
  const ways = flyable.length > 0 ? flyable : remediesOf(found);
  const sentences = [...found.map(({ message }) => message), ...ways];
  return `${settingName(plan, units)}: ${gradeNames[grade]}. ${sentences.join(' ')}`;
}

/** What would be flyable, each once. */
export function remediesOf(cautions: readonly Pick<Caution, 'remedy'>[]): string[] {
  return [...new Set(cautions.flatMap(({ remedy }) => (remedy === undefined ? [] : [remedy])))];
}

/** Which of a lesson's plans it is: `Osier 15, runway 24, wind 330° 14 kt, engine idling`. */
export function settingName({ aircraft, runway, flown, power }: Plan, units: PageUnits): string {
  const { from, speed } = flown.surfaceWind;
  const engine = power === 'idle' ? 'engine idling' : 'engine stopped';
  return `${aircraft.name}, runway ${runway.name}, wind ${formatWind(from, speed, units)}, ${engine}`;
}

/** Where a limit comes from, in a few words: without what the aircraft's file says of itself. */
export function shortSource(source: string): string {
  return source
    .replace(/;.*$/s, '')
    .replace(/^((?:aircraft|airfield)(?: and airfield)? data):.*$/s, '$1')
    .trim();
}

/** `1 packet beyond a limit of good practice, 2 not to be flown (not printed)`; undefined where there is nothing to say. */
export function countWords(counts: GradeCounts, one: string, refusedWords: string): string | undefined {
  const parts = [
    [counts.beyond, gradeNames['beyond-good-practice']],
    [counts.refused, `${gradeNames['not-to-be-flown']} (${refusedWords})`],
    [counts.shown, `${gradeNames['not-to-be-flown']} (shown as such)`],
    [counts.known, 'with something worth knowing'],
  ] as const;
  const said = parts.filter(([count]) => count > 0);
  if (said.length === 0) return undefined;
  const words = said.map(([count, what], at) =>
    at === 0 ? `${count} ${count === 1 ? one : `${one}s`} ${what}` : `${count} ${what}`,
  );
  return `${words.join(', ')}.`;
}

/** How many plans have which grade. */
export interface GradeCounts {
  readonly beyond: number;
  /** Not to be flown, and so not printed. */
  readonly refused: number;
  /** Not to be flown, of a lesson that shows such a plan. */
  readonly shown: number;
  readonly known: number;
}

/** The keys of a lesson's front matter that a caution of this grade may come from, the likeliest first. */
export function settingKeys(plan: Plan, grade: Grade): readonly (keyof FrontMatter | 'gust')[] {
  const keys = cautionsOf(plan, grade).flatMap(({ code }) => keysOf[code]);
  return [...new Set([...keys, 'wind' as const])];
}

const keysOf: Readonly<Record<CautionCode, readonly (keyof FrontMatter | 'gust')[]>> = {
  'beyond-reach': ['wind', 'height', 'spacing', 'bank'],
  'wind-over-glide': ['wind'],
  'obstacle-clearance': ['height', 'spacing', 'bank', 'wind', 'runway', 'airfield'],
  'stall-margin': ['bank', 'wind'],
  slow: ['wind', 'aircraft'],
  'approach-speed-not-reached': ['height', 'wind', 'aircraft'],
  'bank-over-limit': ['bank', 'height', 'spacing', 'wind'],
  'bank-over-medium': ['bank', 'height', 'spacing', 'wind'],
  'wind-over-limit': ['wind', 'gust'],
  'crosswind-over-limit': ['wind', 'runway', 'gust', 'airfield'],
  tailwind: ['wind', 'runway', 'airfield'],
  gust: ['gust', 'wind'],
  mass: ['aircraft'],
  'off-runway': ['runway', 'airfield', 'wind'],
  'aim-before-threshold': ['runway', 'airfield', 'wind'],
  'landing-distance': ['runway', 'airfield', 'wind', 'aircraft'],
  'final-turn-low': ['height', 'spacing', 'bank', 'wind'],
  'downwind-key-height': ['height'],
  'base-turn-far': ['wind', 'height', 'spacing'],
  'round-out-pull': ['aircraft', 'wind'],
};
