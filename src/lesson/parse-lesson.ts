import type { Root } from 'mdast';
import remarkFrontmatter from 'remark-frontmatter';
import remarkGfm from 'remark-gfm';
import remarkParse from 'remark-parse';
import { unified } from 'unified';
import type { VFile } from 'vfile';
import type { YamlSource } from '../school/yaml-source.ts';
import { type CheckedUse, checkDirectives } from './check-directives.ts';
import { checkSchedule } from './check-schedule.ts';
import type { Component } from './component.ts';
import { directiveSyntax } from './directive-syntax.ts';
import { checkFences } from './fences.ts';
import { type FrontMatter, readFrontMatter } from './front-matter.ts';
import { checkHtml } from './html.ts';
import { checkLinks } from './links.ts';
import { checkStraySyntax } from './stray-syntax.ts';

/** A lesson as read and checked; where it has errors (messages on its file with `fatal`), there is no packet. */
export interface Lesson<Context> {
  /** Undefined where a message says what is wrong with it. */
  readonly frontMatter: FrontMatter | undefined;
  /** Where a message on a key of the front matter belongs; undefined where there is none to read. */
  readonly frontMatterSource: YamlSource | undefined;
  readonly tree: Root;
  /** In the order of the lesson. */
  readonly uses: readonly CheckedUse<Context>[];
}

/**
 * Reads a lesson and checks everything that can be checked without computing: front matter, every directive, fences,
 * links. Each mistake becomes a message on the file, with its place; bad input never throws.
 */
export function parseLesson<Context>(
  file: VFile,
  components: readonly Component<Context>[],
): Lesson<Context> {
  // A byte order mark would shift every place on the first line and hide the front matter.
  file.value = String(file).replace(/^\uFEFF/, '');
  const textNames = new Set(components.filter(({ form }) => form === 'text').map(({ name }) => name));
  const processor = unified()
    .use(remarkParse)
    .use(remarkGfm)
    .use(remarkFrontmatter, ['yaml'])
    .use(directiveSyntax, textNames);
  const tree = processor.parse(file);
  const frontMatter = readFrontMatter(tree, file);
  const unmatched = checkFences(tree, file);
  const uses = checkDirectives(tree, file, components);
  checkStraySyntax(tree, file, components, unmatched);
  checkSchedule(uses, frontMatter?.value, file);
  checkLinks(tree, file);
  checkHtml(tree, file);
  return { frontMatter: frontMatter?.value, frontMatterSource: frontMatter?.source, tree, uses };
}
