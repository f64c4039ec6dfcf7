import type { CautionCode, Grade } from '../../flight/terms/caution.ts';
import type { Plan } from '../../flight/terms/plan.ts';
import type { FrontMatter } from '../../lesson/front-matter.ts';
import { cautionsOf } from '../../words/cautions/grade-sentences.ts';

/** The front matter keys of a lesson that a caution of this grade may come from, the likeliest first. */
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
