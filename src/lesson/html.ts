import type { Html, Root } from 'mdast';
import { visit } from 'unist-util-visit';
import type { VFile } from 'vfile';
import { fail } from '../messages/failures.ts';
import { showable } from '../messages/hidden-character.ts';

/**
 * Removes HTML, which no packet holds, with a warning; an error where it would take a directive with it, or never
 * ends. A comment goes without a message: being invisible is what it is for.
 */
export function takeHtmlOut(tree: Root, file: VFile): void {
  visit(tree, 'html', (node, index, parent) => {
    report(node, file);
    if (!parent || index === undefined) return undefined;
    parent.children.splice(index, 1);
    return index;
  });
}

function report(node: Html, file: VFile): void {
  const written = node.value.trim();
  if (written.startsWith('<!--')) {
    if (written.endsWith('-->')) return;
    if (!written.includes('-->')) {
      fail(file, 'This comment is never closed; end it with `-->`', 'html', node.position);
      return;
    }
  }
  const tag = /^<[^\n>]*>?/.exec(written)?.[0] ?? '';
  if (/(?<!:):{2,}\p{Letter}|:\p{Letter}[\p{Letter}-]*\[/u.test(written)) {
    const reason = `HTML (\`${tag}\`) is left out of the packet, and the directive in it would be too; take the HTML out`;
    fail(file, reason, 'html', node.position);
    return;
  }
  const reason = `HTML is left out of the packet (\`${tag}\` and what belongs to it); write it in Markdown`;
  file.message(showable(reason), { place: node.position, ruleId: 'html', source: 'chalkwing' });
}
