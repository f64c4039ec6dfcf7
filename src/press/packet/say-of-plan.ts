import type { VFile } from 'vfile';
import type { Grade } from '../../flight/terms/caution.ts';
import type { YamlSource } from '../../school/yaml-source.ts';
import { keyAmong } from './lesson-messages.ts';

/** Something to be said about a plan, on its lesson. */
export interface PlanMessage {
  /** A `note` is something that the lesson intends, or that is worth knowing. */
  readonly severity: 'error' | 'warning' | 'note';
  readonly rule: Grade | 'shows' | 'day' | 'in-hand';
  readonly words: string;
  /** The front matter keys that it may come from, the likeliest first. */
  readonly keys: readonly string[];
}

/** Where it is said. */
export interface Told {
  readonly file: VFile;
  readonly source: YamlSource | undefined;
  /** What was asked for in place of the lesson's own, by the front matter key that it overrides. */
  readonly asked?: Readonly<Record<string, unknown>>;
}

/** Says it on the lesson's file, at the key that it comes from, unless that was asked for elsewhere. */
export function sayOfPlan({ severity, rule, words, keys }: PlanMessage, told: Told): void {
  const { file, source, asked = {} } = told;
  const key = keyAmong(keys, told, asked);
  const isTyped = source !== undefined && asked[key] === undefined;
  const message = isTyped
    ? source.warn(words, rule, [key])
    : file.message(words, { ruleId: rule, source: 'chalkwing' });
  message.fatal = severity === 'error' ? true : severity === 'warning' ? false : undefined;
}
