import type { Construct, Extension, State, TokenizeContext } from 'micromark-util-types';
import remarkDirective from 'remark-directive';
import type {} from 'remark-parse';
import type { Processor } from 'unified';
import type { ContainerDirective } from './directive-nodes.ts';

const colon = 58;
const openingBracket = 91;

/**
 * A unified plugin: remark-directive, held back so that a colon in plain text stays text.
 *
 * The plain syntax takes any `:word` for a directive, so `6:1` and `10:30` lose their digits. Here a directive in a
 * sentence is one of `textNames` with a bracket right after it, and one on a line has a name that begins with a
 * letter; nothing else is ever seen as a directive, so its own Markdown (a link, a footnote mark) is kept too.
 */
export function directiveSyntax(this: Processor, textNames: ReadonlySet<string>): void {
  remarkDirective.call(this);
  const { micromarkExtensions = [], fromMarkdownExtensions = [] } = this.data();
  micromarkExtensions.push(heldBack(micromarkExtensions.pop() ?? {}, textNames));
  fromMarkdownExtensions.push({ exit: { directiveContainerSequence: countFence } });
}

/** remark-directive's own extension, with its constructs tried only where a directive is meant. */
function heldBack({ text, flow }: Extension, textNames: ReadonlySet<string>): Extension {
  const isInSentence = (name: string, next: number | null) => next === openingBracket && textNames.has(name);
  const isOnLine = (name: string) => /^\p{Letter}/u.test(name);
  return {
    text: { [colon]: constructs(text?.[colon]).map((each) => onlyWhere(isInSentence, each)) },
    flow: { [colon]: constructs(flow?.[colon]).map((each) => onlyWhere(isOnLine, each)) },
  };
}

/** A container is closed where the parser has read a second fence for it: that is how a missing one is noticed. */
export function isClosed({ data }: ContainerDirective): boolean {
  return data?.fences === 2;
}

function countFence(this: { readonly stack: readonly object[] }): void {
  const container = this.stack.at(-1) as ContainerDirective;
  container.data = { ...container.data, fences: (container.data?.fences ?? 0) + 1 };
}

function constructs(found: Construct | Construct[] | undefined): Construct[] {
  return Array.isArray(found) ? found : found ? [found] : [];
}

type Condition = (name: string, next: number | null) => boolean;

/** The construct, tried only where the name after the colons meets the condition. */
function onlyWhere(condition: Condition, construct: Construct): Construct {
  const lookAhead: Construct = {
    partial: true,
    tokenize(effects, ok, nok): State {
      let name = '';
      const atColon: State = (code) => {
        if (code !== colon) return afterColons(code);
        effects.consume(code);
        return atColon;
      };
      const afterColons: State = (code) => {
        if (code !== null && code > 0 && /[\p{Letter}\p{Number}_-]/u.test(String.fromCharCode(code))) {
          name += String.fromCharCode(code);
          effects.consume(code);
          return afterColons;
        }
        return condition(name, code) ? ok(code) : nok(code);
      };
      return (code) => {
        effects.enter('chalkwingLookAhead');
        return atColon(code);
      };
    },
  };
  return {
    ...construct,
    tokenize(this: TokenizeContext, effects, ok, nok) {
      return effects.check(lookAhead, construct.tokenize.call(this, effects, ok, nok), nok);
    },
  };
}

declare module 'micromark-util-types' {
  interface TokenTypeMap {
    chalkwingLookAhead: 'chalkwingLookAhead';
  }
}

declare module 'mdast' {
  interface Data {
    /** For a container: how many rows of colons it has, one to open it and one to close it. */
    fences?: number;
  }
}
