import type { VFile } from 'vfile';
import type { Grade } from '../../flight/terms/caution.ts';
import type { YamlSource } from '../../school/yaml-source.ts';
import { keyAmong } from './lesson-messages.ts';

/** What is to be said of a plan on the lesson that it is of. */
export interface PlanMessage {
  /** A `note` is what the lesson meant, or what is worth knowing. */
  readonly severity: 'error' | 'warning' | 'note';
  readonly rule: Grade | 'shows' | 'day' | 'in-hand';
  readonly words: string;
  /** The keys of the front matter that it may come from, the likeliest first. */
  readonly keys: readonly string[];
}

/** Where it is said. */
export interface Told {
  readonly file: VFile;
  readonly source: YamlSource | undefined;
  /** By the key of the front matter that it goes before: what was asked for in place of the lesson's own. */
  readonly asked?: Readonly<Record<string, unknown>>;
}

/** Says it on the lesson's file: at the key that it comes from, unless that was asked for in another place. */
export function sayOfPlan({ severity, rule, words, keys }: PlanMessage, told: Told): void {
  const { file, source, asked = {} } = told;
  const key = keyAmong(keys, told, asked);
  const isTyped = source !== undefined && asked[key] === undefined;
  const message = isTyped
    ? source.warn(words, rule, [key])
    : file.message(words, { ruleId: rule, source: 'chalkwing' });
  message.fatal = severity === 'error' ? true : severity === 'warning' ? false : undefined;
}
