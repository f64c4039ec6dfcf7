import type { Root } from 'mdast';
import { visit } from 'unist-util-visit';
import type { VFile } from 'vfile';
import { fail } from '../messages/failures.ts';

/**
 * Reports links that lead anywhere but to http(s), mailto or into the packet, and pictures from outside the lesson's
 * folder; each loses its address, so that no page made from the tree has it.
 */
export function checkLinks(tree: Root, file: VFile): void {
  const pictures = new Set<string>();
  const links = new Set<string>();
  visit(tree, (node) => {
    if (node.type === 'imageReference') pictures.add(node.identifier);
    if (node.type === 'linkReference') links.add(node.identifier);
  });
  visit(tree, (node) => {
    const url = 'url' in node ? node.url : '';
    const isPicture = node.type === 'image' || (node.type === 'definition' && pictures.has(node.identifier));
    const isLink = node.type === 'link' || (node.type === 'definition' && links.has(node.identifier));
    if (isLink && !isAllowedLink(url)) {
      node.url = '';
      const reason = `A link cannot lead to \`${url}\`: write an https:// or mailto: address, or \`#heading\` for a place in the packet`;
      fail(file, reason, 'link', node.position);
    }
    if (isPicture && ownPicturePath(url) === undefined) {
      node.url = '';
      const reason = `A picture cannot come from \`${url}\`: put the file into the lesson's folder and write its name`;
      fail(file, reason, 'picture', node.position);
    }
  });
}

function isAllowedLink(url: string): boolean {
  return /^(https?:\/\/.|mailto:.|#.)/i.test(url);
}

/**
 * The path of a picture that stays below the lesson's folder; undefined for anything that could be an address or a way
 * up, however it is spelt.
 */
export function ownPicturePath(url: string): string | undefined {
  let path: string;
  try {
    path = decodeURIComponent(url);
  } catch {
    return undefined;
  }
  if (path === '' || /^[/\\#?]|^[a-z][a-z0-9+.-]*:|[\\\0]/i.test(path)) return undefined;
  return path.split('/').includes('..') ? undefined : path;
}
