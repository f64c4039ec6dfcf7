import type { VFile } from 'vfile';
import { fail, type YamlSource } from '../school/yaml-source.ts';
import { ScenarioError } from './scenario.ts';

/** Where a lesson's own setting was typed: undefined source where it has no front matter to point at. */
export interface Typed {
  readonly file: VFile;
  readonly source: YamlSource | undefined;
}

/** The message stands at the key of the front matter that it belongs to. */
export function reportScenario(error: ScenarioError, { file, source }: Typed): void {
  if (source) source.report(error.message, 'scenario', [error.key]);
  else fail(file, error.message, 'scenario');
}

export type Attempt = <Result>(make: () => Result) => Result | undefined;

/**
 * Runs what may find a setting wrong; where it does, the message lands on the lesson, or, where that setting was asked
 * for, among the wrong choices.
 *
 * @param asked how each choice was asked for, by the key of the front matter that it goes before
 */
export function attemptFor(
  typed: Typed,
  asked: Readonly<Record<string, string>>,
  wrongChoices: Set<string>,
): Attempt {
  return (make) => {
    try {
      return make();
    } catch (error) {
      if (!(error instanceof ScenarioError)) throw error;
      const option = asked[error.key];
      if (option === undefined) reportScenario(error, typed);
      else wrongChoices.add(`${option}: ${error.message}`);
      return undefined;
    }
  };
}

/** What is wrong with the lesson itself is found anew for every aircraft, and said once. */
export function removeRepeats(file: VFile): void {
  const seen = new Set<string>();
  file.messages = file.messages.filter((message) => {
    const key = `${message.line}:${message.column}:${message.reason}`;
    const first = !seen.has(key);
    seen.add(key);
    return first;
  });
}
