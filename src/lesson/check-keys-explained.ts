import type { VFile } from 'vfile';
import { nameList } from './directive-form.ts';
import type { Lesson } from './parse-lesson.ts';

/** The directives that draw the key positions, and those that say something about one in the text. */
const drawing = ['pattern', 'profile'];
const saying = ['key', 'gate'];

/**
 * Warns, at the lesson's first drawing of the approach, of key positions in the drawing that the text says nothing
 * about.
 *
 * @param drawn ids of the key positions of the approach as flown
 */
export function checkKeysExplained(
  { uses }: Pick<Lesson<never>, 'uses'>,
  drawn: readonly string[],
  file: VFile,
): void {
  const first = uses.find(({ node }) => drawing.includes(node.name));
  if (!first) return;
  const said = new Set(uses.filter(({ node }) => saying.includes(node.name)).map(({ label }) => label));
  // The touchdown is the spot itself, which needs no figure.
  const unsaid = drawn.filter((id) => id !== 'touchdown' && !said.has(id));
  if (unsaid.length === 0) return;
  const reason = `\`${first.node.name}\` draws ${nameList(unsaid).replace(/ or (?=`[^`]*`$)/, ' and ')}, and the text never says what is done there: explain it with \`:key[${unsaid[0]}]\``;
  file.message(reason, { place: first.node.position, ruleId: 'key-unexplained', source: 'chalkwing' });
}
