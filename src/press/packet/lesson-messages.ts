import type { VFile } from 'vfile';
import { fail } from '../../messages/failures.ts';
import type { YamlSource } from '../../school/yaml-source.ts';
import { NotToBeFlownError, ScenarioError } from './scenario.ts';

/** Where a lesson's own setting was typed; the source is undefined where there is no front matter to point at. */
export interface Typed {
  readonly file: VFile;
  readonly source: YamlSource | undefined;
}

/** Puts the message at the front matter key it belongs to. */
export function reportScenario(error: ScenarioError, typed: Typed): void {
  const { file, source } = typed;
  const rule = ruleOf(error);
  if (source) source.report(error.message, rule, [keyAmong(error.keys, typed)]);
  else fail(file, error.message, rule);
}

/**
 * The first of the keys that was asked for, else the first that is typed in the lesson; where there is neither, the
 * first of all.
 */
export function keyAmong(
  keys: readonly string[],
  { source }: Pick<Typed, 'source'>,
  asked: Readonly<Record<string, unknown>> = {},
): string {
  const isAsked = (key: string) => asked[key] !== undefined;
  return keys.find(isAsked) ?? keys.find((key) => source?.has([key])) ?? keys[0]!;
}

/** What is wrong with what was asked for, each message with the option it belongs to, and its kind. */
export type WrongChoices = Map<string, ScenarioRule>;
type ScenarioRule = 'scenario' | 'not-to-be-flown';

function ruleOf(error: ScenarioError): ScenarioRule {
  return error instanceof NotToBeFlownError ? 'not-to-be-flown' : 'scenario';
}

export type Attempt = <Result>(make: () => Result) => Result | undefined;

/**
 * Runs something that may find a setting wrong. If it does, the message lands on the lesson or, where that setting
 * was asked for, among the wrong choices.
 *
 * @param asked how each choice was asked for, by the front matter key that it overrides
 */
export function attemptFor(
  typed: Typed,
  asked: Readonly<Record<string, string>>,
  wrongChoices: WrongChoices,
): Attempt {
  return (make) => {
    try {
      return make();
    } catch (error) {
      if (!(error instanceof ScenarioError)) throw error;
      const option = asked[keyAmong(error.keys, typed, asked)];
      // What is wrong with a name is the same for every lesson; a plan belongs to one.
      const whose = error instanceof NotToBeFlownError ? `${typed.file.stem}, ` : '';
      if (option === undefined) reportScenario(error, typed);
      else wrongChoices.set(`${option}: ${whose}${error.message}`, ruleOf(error));
      return undefined;
    }
  };
}

/** What is wrong with the lesson itself is found again for every aircraft, and said once. */
export function removeRepeats(file: VFile): void {
  const seen = new Set<string>();
  file.messages = file.messages.filter((message) => {
    const key = `${message.line}:${message.column}:${message.reason}`;
    const first = !seen.has(key);
    seen.add(key);
    return first;
  });
}
