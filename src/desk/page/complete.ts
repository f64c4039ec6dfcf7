import {
  type Completion,
  type CompletionContext,
  type CompletionResult,
  snippet,
} from '@codemirror/autocomplete';
import type { EditorState } from '@codemirror/state';
import type { DirectiveWord, FileKind, Value, Word, WordsAnswer } from '../api.ts';
import { keyPlace } from './yaml-place.ts';

/** What may be typed at a place, from the words of the language and of the school. */
export function completion(kind: () => FileKind, words: () => WordsAnswer | undefined) {
  return (context: CompletionContext): CompletionResult | null => {
    const known = words();
    if (!known) return null;
    const line = context.state.doc.lineAt(context.pos);
    const before = line.text.slice(0, context.pos - line.from);
    const isHead = kind() !== 'lesson' || inFrontMatter(context.state, line.number);
    return isHead ? inYaml(context, before, kind(), known) : inLesson(context, before, known);
  };
}

function inFrontMatter({ doc }: EditorState, line: number): boolean {
  if (line === 1 || doc.line(1).text.trim() !== '---') return false;
  for (let at = 2; at < line; at += 1) if (doc.line(at).text.trim() === '---') return false;
  return doc.line(line).text.trim() !== '---';
}

/** After colons, in brackets, in braces. */
function inLesson(context: CompletionContext, before: string, words: WordsAnswer): CompletionResult | null {
  const inBraces = /:{1,3}([a-z][a-z\d-]*)(?:\[[^\]]*\])?\{([^}]*)$/.exec(before);
  if (inBraces) {
    const directive = words.directives.find(({ name }) => name === inBraces[1]);
    return directive ? inAttributes(context, inBraces[2]!, directive, words) : null;
  }
  const inLabel = /(:{1,3})([a-z][a-z\d-]*)\[([^\]]*)$/.exec(before);
  if (inLabel) {
    const found = words.directives.find((each) => each.name === inLabel[2] && each.colons === inLabel[1]);
    return found?.label ? result(context, inLabel[3]!, found.label.map(valueOption)) : null;
  }
  const name = /(^|[^\w:])(:{1,3})([a-z][a-z\d-]*)?$/.exec(before);
  if (!name) return null;
  const [, ahead, colons, typed = ''] = name;
  const isAlone = before.slice(0, before.length - colons!.length - typed.length).trim() === '';
  // One colon after a word and a space is more often just a colon: names come only with their first letter.
  if (colons === ':' && typed === '' && !context.explicit && ahead !== '' && ahead !== ' ') return null;
  const fitting = words.directives.filter((each) =>
    each.form === 'text' ? colons === ':' : isAlone && each.colons.startsWith(colons!),
  );
  return result(context, colons! + typed, fitting.map(directiveOption));
}

function inAttributes(
  context: CompletionContext,
  inside: string,
  directive: DirectiveWord,
  words: WordsAnswer,
): CompletionResult | null {
  const inValue = /([\w-]+)=(?:"([^"]*)|([^\s"]*))$/.exec(inside);
  if (inValue) {
    const word = directive.attributes.find(({ name }) => name === inValue[1]);
    const typed = (inValue[2] ?? inValue[3]!).split(/\s+/).at(-1)!;
    return word ? result(context, typed, valuesFor(word, directive.name, words)) : null;
  }
  const typed = /[\w-]*$/.exec(inside)![0];
  const used = new Set([...inside.matchAll(/([\w-]+)=/g)].map(([, name]) => name!));
  const options = unused(directive.attributes, used, (word) =>
    snippet(`${word.name}="\${${word.sample ?? word.values?.[0]?.value ?? ''}}"`),
  );
  return result(context, typed, options);
}

function inYaml(
  context: CompletionContext,
  before: string,
  kind: FileKind,
  words: WordsAnswer,
): CompletionResult | null {
  const value = /^\s*(?:- )?([\w-]+):\s+(.*)$/.exec(before);
  const { path, used } = keyPlace(context.state.doc, context.pos);
  const level = path.reduce<readonly Word[] | undefined>(
    (keys, name) => keys?.find((word) => word.name === name)?.words,
    words.keys[kind],
  );
  if (value) {
    const word = level?.find(({ name }) => name === value[1]);
    if (!word) return null;
    const quoted = /^[^"]*(?:"[^"]*"[^"]*)*"([^"]*)$/.exec(value[2]!);
    const options = valuesFor(word, kind, words);
    if (!quoted) return result(context, /[^\s,[\]]*$/.exec(value[2]!)![0], options);
    // The quotes are there already.
    const bare = options.map((option) => ({ ...option, label: option.label.replace(/^"|"$/g, '') }));
    return result(context, quoted[1]!, bare);
  }
  const key = /^\s*(?:- )?([\w-]*)$/.exec(before);
  if (!key) return null;
  const options = unused(level ?? [], used, (word) =>
    word.words || word.isList ? `${word.name}:` : `${word.name}: `,
  );
  if (options.length > 0) return result(context, key[1]!, options);
  const parent = path.at(-1);
  return parent && /^\s*- /.test(before)
    ? result(context, key[1]!, namesOf(parent, kind, words).map(valueOption))
    : null;
}

/** The words that are not there yet; `apply` is what choosing one writes. */
function unused(
  all: readonly Word[],
  used: ReadonlySet<string>,
  apply: (word: Word) => Completion['apply'],
): Completion[] {
  return all
    .filter(({ name }) => !used.has(name))
    .map((word) => ({
      label: word.name,
      detail: word.needed ? 'needed' : '',
      info: infoOf(word),
      apply: apply(word),
    }));
}

function valuesFor(word: Word, of: string, words: WordsAnswer): Completion[] {
  const names = namesOf(word.name, of, words);
  return (names.length > 0 ? names : (word.values ?? [])).map(valueOption);
}

/** Names that the school gives: what its files call an aircraft, a runway, a fault. */
function namesOf(key: string, of: string, words: WordsAnswer): Value[] {
  const named = (list: readonly { readonly id: string; readonly name: string }[]) =>
    list.map(({ id, name }) => ({ value: id, meaning: name }));
  const rows = () => named(words.faults.flatMap((table) => table.rows));
  switch (key) {
    case 'aircraft':
      return named(words.aircraft);
    case 'airfield':
      return named(words.airfields);
    case 'runway':
      return words.airfields.flatMap(({ name, runways }) =>
        runways.map((runway) => ({ value: `"${runway}"`, meaning: name })),
      );
    case 'needs':
    case 'chapters':
      return words.lessons.map((value) => ({ value }));
    case 'faults':
      return of === 'faults' ? [] : rows();
    case 'only':
      return rows();
    case 'from':
      return of === 'faults' ? named(words.faults) : [];
    case 'fly':
      return words.flies.map(({ written, does }) => ({ value: `"${written}"`, meaning: does }));
    case 'class':
      return [];
    default:
      return [];
  }
}

function result(context: CompletionContext, typed: string, options: Completion[]): CompletionResult | null {
  const unlike = new Map(options.map((option) => [option.label, option]));
  if (unlike.size === 0) return null;
  return { from: context.pos - typed.length, options: [...unlike.values()], validFor: /^[\w:"-]*$/ };
}

function valueOption({ value, meaning }: Value): Completion {
  return { label: value, detail: meaning ?? '' };
}

function directiveOption(directive: DirectiveWord): Completion {
  return {
    label: directive.colons + directive.name,
    detail: directive.group,
    info: directive.summary,
    apply: snippet(snippetFor(directive)),
  };
}

/** From snippets as most editors have them to those of this editor: without choices, and with the last place unnumbered. */
function snippetFor({ snippet: body, colons, name }: DirectiveWord): string {
  return (
    (body || colons + name)
      // biome-ignore lint/suspicious/noTemplateCurlyInString: the places of a snippet
      .replace(/\$\{(\d+)\|([^,|]*)[^}]*\|\}/g, '${$1:$2}')
      // biome-ignore lint/suspicious/noTemplateCurlyInString: the last of them
      .replace(/\$0/g, '${}')
      .replace(/\\([$}\\])/g, '$1')
  );
}

function infoOf({ summary, takes, usual }: Word): string {
  return [summary, takes, usual === undefined ? undefined : `left out: ${usual}`].filter(Boolean).join('; ');
}
