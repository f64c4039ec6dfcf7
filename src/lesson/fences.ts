import type { Code, Nodes, Root } from 'mdast';
import type { VFile } from 'vfile';
import { fail } from '../messages/failures.ts';
import { lineEndAt, pointAt, spanAt } from '../messages/source-place.ts';
import type { ContainerDirective } from './directive-nodes.ts';
import { isClosed } from './directive-syntax.ts';

/**
 * Reports containers that are not closed, or that open inside another with a fence as long as its own, and code
 * blocks that are not closed: each would silently swallow the rest of the lesson.
 *
 * @returns the offsets of opening fences whose closing line closes another fence instead.
 */
export function checkFences(tree: Root, file: VFile): number[] {
  const source = String(file);
  const unmatched: number[] = [];
  const check = (node: Nodes, outer: ContainerDirective | undefined): void => {
    if (node.type === 'code') checkCode(node, source, file);
    const container = node.type === 'containerDirective' ? node : undefined;
    if (container && outer && fence(outer, source).length <= fence(container, source).length) {
      fail(
        file,
        nestingReason(container, outer, source),
        'directive-nesting',
        openingLine(container, source),
      );
      unmatched.push(startOf(container));
    } else if (container && !isClosed(container)) {
      const reason = `\`${container.name}\` is never closed; end it with \`${fence(container, source)}\` on a line of its own`;
      fail(file, reason, 'directive-unclosed', openingLine(container, source));
    }
    if ('children' in node) for (const child of node.children) check(child, container ?? outer);
  };
  check(tree, undefined);
  return unmatched;
}

function nestingReason(inner: ContainerDirective, outer: ContainerDirective, source: string): string {
  const longer = ':'.repeat(fence(inner, source).length + 1);
  return (
    `\`${inner.name}\` opens while \`${outer.name}\` (line ${outer.position?.start.line}) is still open. ` +
    `Close \`${outer.name}\` with \`${fence(outer, source)}\` before it; or, where it belongs inside, give the outer ` +
    `one a longer fence: \`${longer}${outer.name}\`, and \`${longer}\` at its end`
  );
}

function startOf(node: ContainerDirective | Code): number {
  return node.position?.start.offset ?? 0;
}

function openingLine(node: ContainerDirective, source: string) {
  return spanAt(source, startOf(node), lineEndAt(source, startOf(node)));
}

function fence(node: ContainerDirective, source: string): string {
  return /^:+/.exec(source.slice(startOf(node)))?.[0] ?? ':::';
}

function checkCode(node: Code, source: string, file: VFile): void {
  const written = source.slice(startOf(node), node.position?.end.offset);
  const opening = /^(`{3,}|~{3,})/.exec(written)?.[0];
  if (!opening) return;
  const last = written.split('\n').slice(1).at(-1) ?? '';
  const closing = last.replace(/^[\s>]*/, '').trimEnd();
  if (closing.startsWith(opening) && /^(`+|~+)$/.test(closing)) return;
  const marks = `${opening.length} ${opening.startsWith('~') ? 'tildes' : 'backticks'}`;
  const reason = `This code block is never closed; end it with a line of ${marks}`;
  fail(file, reason, 'code-unclosed', pointAt(source, startOf(node)));
}
