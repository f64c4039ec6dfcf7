import type { Root } from 'mdast';
import remarkFrontmatter from 'remark-frontmatter';
import remarkGfm from 'remark-gfm';
import remarkParse from 'remark-parse';
import { unified } from 'unified';
import type { VFile } from 'vfile';
import { hasErrors } from '../messages/failures.ts';
import type { YamlSource } from '../school/yaml-source.ts';
import type { CheckedUse } from './check-directives.ts';
import { checkSchedule } from './check-schedule.ts';
import type { Component } from './component.ts';
import { type FrontMatter, readFrontMatter } from './front-matter.ts';
import type { FindPicture, FoundPicture } from './pictures.ts';
import remarkLesson from './remark-lesson.ts';

/** The text of a lesson as read and checked, whatever its front matter says. */
export interface CheckedText<Context> {
  readonly tree: Root;
  /** In the order of the lesson. */
  readonly uses: readonly CheckedUse<Context>[];
  readonly pictures: readonly FoundPicture[];
}

/** A lesson as read and checked; where it has errors (messages on its file with `fatal`), there is no packet. */
export interface Lesson<Context> extends CheckedText<Context> {
  /** Undefined where a message says what is wrong with it. */
  readonly frontMatter: FrontMatter | undefined;
  /** Takes messages about a key of the front matter; undefined where there is none to read. */
  readonly frontMatterSource: YamlSource | undefined;
}

/** Where to look for the author's pictures; without it they keep the address that was typed. */
export interface ParseOptions {
  readonly pictures?: FindPicture;
}

/**
 * Reads a lesson and checks everything that can be checked without computing: front matter, every directive, fences,
 * links, pictures. Each mistake becomes a message on the file, with its place; bad input never throws.
 */
export function parseLesson<Context>(
  file: VFile,
  components: readonly Component<Context>[],
  { pictures }: ParseOptions = {},
): Lesson<Context> {
  const reader = readerOf(components, pictures);
  const parsed = reader.parse(file);
  // Only a lesson that is too large to be read has an error by now; what else is wrong with it cannot be said.
  const isRead = !hasErrors(file);
  const frontMatter = isRead ? readFrontMatter(file) : undefined;
  const text = checked<Context>(reader, parsed, file);
  checkSchedule(text.uses, frontMatter?.value, file);
  return { ...text, frontMatter: frontMatter?.value, frontMatterSource: frontMatter?.source };
}

/** Reads and checks a piece of a lesson, as `parseLesson` does, without a front matter. */
export function parseText<Context>(
  file: VFile,
  components: readonly Component<Context>[],
): CheckedText<Context> {
  const reader = readerOf(components, undefined);
  return checked<Context>(reader, reader.parse(file), file);
}

function readerOf<Context>(components: readonly Component<Context>[], pictures: FindPicture | undefined) {
  return unified()
    .use(remarkParse)
    .use(remarkGfm)
    .use(remarkFrontmatter, ['yaml'])
    .use(remarkLesson<Context>, { components, pictures });
}

function checked<Context>(
  reader: ReturnType<typeof readerOf<Context>>,
  parsed: Root,
  file: VFile,
): CheckedText<Context> {
  const tree = reader.runSync(parsed, file) as Root;
  // The list is the one that the plugin made with these components.
  const uses = (file.data.directiveUses ?? []) as unknown as readonly CheckedUse<Context>[];
  return { tree, uses, pictures: file.data.foundPictures ?? [] };
}
