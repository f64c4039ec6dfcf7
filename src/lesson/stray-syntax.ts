import type { Root, Text } from 'mdast';
import { SKIP, visit } from 'unist-util-visit';
import type { VFile } from 'vfile';
import { fail } from '../messages/failures.ts';
import { lineEndAt, spanAt } from '../messages/source-place.ts';
import { holdsText } from './check-directives.ts';
import type { Component, Form } from './component.ts';
import { rightForm } from './directive-form.ts';
import { unknownDirective } from './unknown-directive.ts';

type Named = Pick<Component<never>, 'name' | 'form' | 'label' | 'holdsText' | 'example'>;

interface Mark {
  /** Offset of the first colon. */
  readonly start: number;
  readonly colons: number;
  /** True where there are blanks between the colons and the name. */
  readonly spaced: boolean;
  /** '' for a fence without a name. */
  readonly name: string;
  readonly end: number;
  readonly next: string;
  /** True where only the marks of its block (quote, list, heading) come before it on its line. */
  readonly atStart: boolean;
  /** True where nothing else follows on its line. */
  readonly alone: boolean;
  readonly afterWord: boolean;
}

const mark = /(?<![:\\])(:+)([ \t]*)(\p{Letter}[\p{Letter}\p{Number}_-]*)?/gu;

const blockPrefix = /^[\s>]*(?:(?:[-*+]|#+|\d+[.)]|\[[ xX]\]|\[\^[^\]]+\]:)[\s>]*)*$/;

/**
 * Finds what was meant as a directive in the running text but not read as one: the parser silently turns a directive
 * that it cannot read into a paragraph. A colon that is only a colon is left alone.
 *
 * @param unmatched offsets of fences that opened and whose closing line is therefore left over (see `checkFences`)
 */
export function checkStraySyntax(
  tree: Root,
  file: VFile,
  components: readonly Named[],
  unmatched: readonly number[],
): void {
  const source = String(file);
  const open = [...unmatched];
  visit(tree, (node) => {
    if (node.type === 'textDirective' && !holdsText(node, components)) return SKIP;
    if (node.type !== 'text') return;
    for (const found of marksIn(node, source)) {
      if (isClosingFence(found)) {
        const opening = open.findIndex((offset) => offset < found.start);
        if (opening >= 0) open.splice(opening, 1);
        else {
          const reason =
            'This `:::` closes nothing: take it out, or look above for a directive that is misspelt or already closed';
          fail(file, reason, 'directive-stray-fence', spanAt(source, found.start, found.end));
        }
        continue;
      }
      const reason = whatIsWrong(found, components);
      if (reason === undefined) continue;
      if (found.colons >= 3) open.push(found.start);
      const end = found.atStart ? lineEndAt(source, found.start) : found.end;
      fail(file, reason.text, reason.rule, spanAt(source, found.start, end));
    }
    return;
  });
}

function* marksIn(node: Text, source: string): Generator<Mark> {
  const from = node.position?.start.offset;
  const to = node.position?.end.offset;
  if (from === undefined || to === undefined) return;
  for (const match of source.slice(from, to).matchAll(mark)) {
    const [whole, colons = '', blanks = '', name = ''] = match;
    const start = from + match.index;
    const lineStart = start > 0 ? source.lastIndexOf('\n', start - 1) + 1 : 0;
    const end = name ? start + whole.length : start + colons.length;
    yield {
      start,
      colons: colons.length,
      spaced: blanks !== '' && name !== '',
      name,
      end,
      next: source[end] ?? '',
      atStart: blockPrefix.test(source.slice(lineStart, start)),
      alone:
        source
          .slice(end, lineEndAt(source, end))
          .replace(/^(\[[^\]]*\])?(\{[^}]*\})?/, '')
          .trim() === '',
      afterWord: start > 0 && /[\p{Letter}\p{Number}_]/u.test(source[start - 1] ?? ''),
    };
  }
}

function isClosingFence({ name, colons, atStart, alone }: Mark): boolean {
  return name === '' && colons >= 3 && atStart && alone;
}

function whatIsWrong(found: Mark, components: readonly Named[]): { rule: string; text: string } | undefined {
  if (found.name === '') return undefined;
  const named = components.filter(({ name }) => name === found.name);
  // For a name with two forms, the one that was more likely meant.
  const component = named.find(({ form }) => (form === 'text') === (found.colons === 1)) ?? named[0];
  const opens = found.next === '[' || found.next === '{';
  if (found.spaced) {
    const meant = found.atStart && (component ? found.colons >= 2 : found.colons >= 3 && found.alone);
    if (!meant) return undefined;
    if (!component)
      return { rule: 'unknown-directive', text: unknownDirective(found.name, formMeant(found), components) };
    return {
      rule: 'directive-syntax',
      text: `No blank may stand behind the colons; write ${rightForm(component)}`,
    };
  }
  const ownLine = found.atStart && (found.colons > 1 || (found.alone && component !== undefined));
  if (!component) {
    if (!ownLine && (!opens || found.afterWord)) return undefined;
    return { rule: 'unknown-directive', text: unknownDirective(found.name, formMeant(found), components) };
  }
  if (!ownLine && !opens && (found.colons === 1 || found.afterWord)) return undefined;
  return {
    rule: 'directive-syntax',
    text: `${complaint(found, component)}; an example: \`${component.example}\``,
  };
}

function formMeant({ colons }: Mark): Form {
  return colons === 1 ? 'text' : colons === 2 ? 'leaf' : 'container';
}

function complaint(found: Mark, component: Named): string {
  const { name, form } = component;
  const colons = { text: 1, leaf: 2, container: 3 }[form];
  const rightColons = form === 'container' ? found.colons >= colons : found.colons === colons;
  if (!rightColons) return `\`${name}\` is written ${rightForm(component)}`;
  if (form !== 'text') {
    if (!found.atStart)
      return `\`${name}\` must stand at the start of a line of its own, not in a sentence or a table`;
    return `\`${name}\` cannot be read: check that brackets and braces are closed and nothing follows them on the line`;
  }
  if (found.next === '[') return `The \`[\` of \`${name}\` is not closed by a \`]\``;
  return `\`${name}\` needs its text in brackets`;
}
