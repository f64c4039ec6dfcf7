import type { Root } from 'mdast';
import type { Processor } from 'unified';
import type { VFile } from 'vfile';
import { fail } from '../messages/failures.ts';
import { type CheckedUse, checkDirectives } from './check-directives.ts';
import type { Component } from './component.ts';
import { directiveSyntax } from './directive-syntax.ts';
import { checkFences } from './fences.ts';
import { checkHiddenCharacters } from './hidden-characters.ts';
import { takeHtmlOut } from './html.ts';
import { tooDeep, tooMuch } from './lesson-limits.ts';
import { checkLinks } from './links.ts';
import { markUses } from './mark-uses.ts';
import { type FindPicture, type FoundPicture, findPictures } from './pictures.ts';
import { checkStraySyntax } from './stray-syntax.ts';

export interface RemarkLessonOptions<Context> {
  /** The directives there are. Rendering is left to `rehypeLesson`, so no context is needed here. */
  readonly components: readonly Component<Context>[];
  /** Looks for the author's pictures; without it they keep the address that was typed. */
  readonly pictures?: FindPicture | undefined;
}

declare module 'vfile' {
  interface DataMap {
    /** The directives that `remarkLesson` found right, in the order of the lesson. */
    directiveUses: readonly CheckedUse<never>[];
    /** The pictures that `remarkLesson` found. */
    foundPictures: readonly FoundPicture[];
  }
}

/**
 * The lesson language as a remark plugin, for any unified pipeline that begins with remark-parse.
 *
 * A directive that is right stays in the tree as a node of remark-directive (`textDirective`, `leafDirective`,
 * `containerDirective`); its checked attributes are in `file.data.directiveUses`, and by itself it becomes a `span`
 * or
 * `div` with its name in `data-directive`. Every other is turned back into the text that was typed, and a colon in
 * plain text (`6:1`, `10:30`) is never touched. HTML is removed. Mistakes are messages on the file, each with its
 * place: errors have `fatal` set, and what they are about is not to be trusted. Nothing that is typed makes it throw;
 * a lesson that is too large or too deeply nested comes out empty, with the reason.
 *
 * Front matter is not part of it: add remark-frontmatter where there is some. To have the directives rendered, put
 * `rehypeLesson` after it.
 *
 * @example
 * const file = await unified()
 *   .use(remarkParse)
 *   .use(remarkLesson, { components })
 *   .use(remarkRehype)
 *   .use(rehypeLesson, { context }) // left out: no figure, but spans and divs with `data-directive`
 *   .use(rehypeStringify)
 *   .process('The glide is 6:1; at :key[base-key] look at the spot.\n\n::pattern\n'); console.error(reporter(file));
 */
export default function remarkLesson<Context>(
  this: Processor,
  { components, pictures }: RemarkLessonOptions<Context>,
): (tree: Root, file: VFile) => undefined {
  const parser = this.parser;
  if (!parser) throw new TypeError('Put remark-parse before remarkLesson: there is no parser yet');
  const textNames = new Set(components.filter(({ form }) => form === 'text').map(({ name }) => name));
  directiveSyntax.call(this, textNames);
  this.parser = (_document, file) => {
    const written = String(file);
    const refused = tooMuch(written);
    // A byte order mark would shift every place on the first line and hide the front matter. A lone carriage return
    // ends a line for Markdown, and for YAML it does not.
    const source = refused ? '' : written.replace(/^\uFEFF/, '').replace(/\r(?!\n)/g, '\n');
    if (!refused) file.value = source;
    const tree = refused ? undefined : (parser(source, file) as Root);
    const refusal = refused ?? tooDeep(tree!);
    if (!refusal) return tree!;
    fail(file, refusal.reason, 'lesson-size', refusal.place);
    return { type: 'root', children: [] } satisfies Root;
  };

  return (tree, file) => {
    const unmatched = checkFences(tree, file);
    const uses = checkDirectives(tree, file, components);
    checkStraySyntax(tree, file, components, unmatched);
    checkHiddenCharacters(tree, file);
    checkLinks(tree, file);
    file.data.foundPictures = pictures ? findPictures(tree, file, pictures) : [];
    takeHtmlOut(tree, file);
    markUses(tree, String(file), uses);
    file.data.directiveUses = uses as readonly CheckedUse<never>[];
  };
}
