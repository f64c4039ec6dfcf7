import type { VFile } from 'vfile';
import type { VFileMessage } from 'vfile-message';
import {
  type Document,
  isAlias,
  isMap,
  isNode,
  isScalar,
  isSeq,
  type Node,
  parseDocument,
  visit,
} from 'yaml';
import { fail } from '../messages/failures.ts';
import { firstHidden } from '../messages/hidden-character.ts';
import { pointAt, spanAt } from '../messages/source-place.ts';

/** Where something is in the data: keys and list positions from the top. */
export type DataPath = readonly (string | number)[];

type Place = NonNullable<VFileMessage['place']>;

/** Far more than an instructor needs, far fewer than would let a small file grow huge. */
const maxAliasCount = 50;

/** Characters, and levels of data inside each other: many times what a school's file needs. */
const longest = 500_000;
const deepest = 50;

/**
 * A YAML file as plain data in which every scalar is the text that was typed (`06` stays `06`, `90` has no unit),
 * with the place of each piece for messages.
 */
export class YamlSource {
  readonly file: VFile;
  readonly data: unknown;
  readonly #document: Document;

  private constructor(file: VFile, document: Document, data: unknown) {
    this.file = file;
    this.data = data;
    this.#document = document;
  }

  /** Undefined, with messages on the file, where it is not YAML that can be checked further. */
  static open(file: VFile): YamlSource | undefined {
    const refused = tooMuch(String(file));
    if (refused) {
      fail(file, refused.reason, 'yaml', pointAt(String(file), refused.offset));
      return undefined;
    }
    const document = parseDocument(String(file).replace(/\r(?!\n)/g, '\n'), {
      schema: 'failsafe',
      prettyErrors: false,
    });
    const source = (data: unknown) => new YamlSource(file, document, data);
    const bare = source(undefined);
    for (const error of document.errors) {
      fail(file, yamlReason(error.code, error.message), 'yaml', bare.#between(error.pos[0], error.pos[1]));
    }
    for (const warning of document.warnings) {
      fail(file, warning.message, 'yaml', bare.#between(warning.pos[0], warning.pos[1]));
    }
    const readable = document.errors.every((error) => error.code === 'DUPLICATE_KEY');
    if (!readable || !bare.#keysAreSafe()) return undefined;
    bare.#reportHidden();
    if (!document.contents) {
      fail(file, 'The file is empty', 'yaml', bare.#between(0, 0));
      return undefined;
    }
    try {
      return source(document.toJS({ maxAliasCount }));
    } catch (error) {
      // yaml throws ReferenceError for too many aliases, and for one that is inside its own anchor.
      if (!(error instanceof ReferenceError)) throw error;
      const reason = `The aliases (\`*name\`) of this file cannot be followed (${error.message}): write the values out`;
      fail(file, reason, 'yaml', bare.#firstAlias());
      return undefined;
    }
  }

  /** True where something is typed at the path, even if only an empty value. */
  has(path: DataPath): boolean {
    return path.length === 0 || this.#find(path).found;
  }

  /** An error at the value, or at its key. */
  report(reason: string, ruleId: string, path: DataPath, at: 'value' | 'key' = 'value'): VFileMessage {
    return fail(this.file, reason, ruleId, this.#place(path, at));
  }

  /** A warning at the value: it does not keep the file from being used. */
  warn(reason: string, ruleId: string, path: DataPath): VFileMessage {
    return this.file.message(reason, { place: this.#place(path, 'value'), ruleId, source: 'chalkwing' });
  }

  /** The nearest place that exists: for a missing key, the key of the section it is missing from. */
  #place(path: DataPath, at: 'value' | 'key'): Place {
    if (path.length === 0) return this.#between(0, 0);
    const { found, value, key } = this.#find(path);
    if (!found) return this.#place(path.slice(0, -1), 'key');
    const empty = isScalar(value) && value.value === '' && value.range?.[0] === value.range?.[1];
    const node = at === 'key' || empty ? (key ?? value) : (value ?? key);
    const range = node?.range;
    return range ? this.#between(range[0], range[1]) : this.#between(0, 0);
  }

  #find(path: DataPath): { found: boolean; value?: Node | undefined; key?: Node | undefined } {
    let node = this.#resolve(this.#document.contents);
    let key: Node | undefined;
    for (const step of path) {
      if (isMap(node)) {
        const pair = node.items.find((item) => isScalar(item.key) && item.key.value === step);
        if (!pair) return { found: false };
        key = pair.key as Node;
        node = this.#resolve(pair.value);
      } else if (isSeq(node) && typeof step === 'number' && step < node.items.length) {
        key = undefined;
        node = this.#resolve(node.items[step]);
      } else return { found: false };
    }
    return { found: true, value: node, key };
  }

  #resolve(node: unknown): Node | undefined {
    if (isAlias(node)) return node.resolve(this.#document);
    return isNode(node) ? node : undefined;
  }

  /** `__proto__` must not reach plain objects, and a key that is not text has no name to report. */
  #keysAreSafe(): boolean {
    let safe = true;
    visit(this.#document, {
      Pair: (_, pair) => {
        if (isScalar(pair.key) && pair.key.value !== '__proto__') return;
        const range = isNode(pair.key) ? pair.key.range : undefined;
        const place = range ? this.#between(range[0], range[1]) : this.#between(0, 0);
        fail(this.file, 'A key here must be a plain word, such as `name`', 'unknown-key', place);
        safe = false;
      },
    });
    return safe;
  }

  /** However it is written: as `"\\u202E"` or as the character itself. */
  #reportHidden(): void {
    visit(this.#document, {
      Scalar: (_, { value, range }) => {
        const why = typeof value === 'string' ? firstHidden(value) : undefined;
        if (why) fail(this.file, why, 'hidden-character', this.#between(range?.[0] ?? 0, range?.[1] ?? 0));
      },
    });
  }

  #firstAlias(): Place {
    let range: readonly [number, number, number] | null | undefined;
    visit(this.#document, {
      Alias: (_, alias) => {
        range = alias.range;
        return visit.BREAK;
      },
    });
    return this.#between(range?.[0] ?? 0, range?.[1] ?? 0);
  }

  #between(from: number, to: number): Place {
    // Not yaml's own count of lines: behind some of its errors it is one short.
    return spanAt(String(this.file), from, to);
  }
}

/**
 * Why a text is too much to be read; the parser calls itself for each level of data, and breaks where they are deep.
 * Counted are brackets opened inside each other, and marks that open a level on one line; indentation opens at most
 * one level for each further column.
 */
function tooMuch(text: string): { reason: string; offset: number } | undefined {
  if (text.length > longest) {
    const reason = `This file has ${text.length} characters, more than the ${longest} that one may have`;
    return { reason, offset: 0 };
  }
  let open = 0;
  for (const { 0: found, index } of text.matchAll(/[[{\]}]|^[ \t]*(?:[-?:][ \t]+)*/gm)) {
    if (/[\]}]/.test(found)) open = Math.max(0, open - 1);
    else if (/[[{]/.test(found)) open += 1;
    if (open > deepest || found.length > 4 * deepest) {
      return { reason: 'Here the data stand too deep inside each other: take levels out', offset: index };
    }
  }
  return undefined;
}

function yamlReason(code: string, message: string): string {
  if (code === 'DUPLICATE_KEY') return 'This key stands here twice: keep one of them';
  if (code === 'TAB_AS_INDENT') return 'A tab cannot indent here: use spaces';
  return `${message} (the file cannot be read as YAML from here on)`;
}
