import type { Root } from 'mdast';
import { visit } from 'unist-util-visit';
import type { VFile } from 'vfile';
import { fail } from '../school/yaml-source.ts';

/** Reports links that lead anywhere but to http(s), mailto or into the packet, and pictures from outside the lesson's folder. */
export function checkLinks(tree: Root, file: VFile): void {
  const pictures = new Set<string>();
  const links = new Set<string>();
  visit(tree, (node) => {
    if (node.type === 'imageReference') pictures.add(node.identifier);
    if (node.type === 'linkReference') links.add(node.identifier);
  });
  visit(tree, (node) => {
    const isPicture = node.type === 'image' || (node.type === 'definition' && pictures.has(node.identifier));
    const isLink = node.type === 'link' || (node.type === 'definition' && links.has(node.identifier));
    if (isLink && 'url' in node && !isAllowedLink(node.url)) {
      const reason = `A link cannot lead to \`${node.url}\`: write an https:// or mailto: address, or \`#heading\` for a place in the packet`;
      fail(file, reason, 'link', node.position);
    }
    if (isPicture && 'url' in node && !isOwnPicture(node.url)) {
      const reason = `A picture cannot come from \`${node.url}\`: put the file into the lesson's folder and write its name`;
      fail(file, reason, 'picture', node.position);
    }
  });
}

function isAllowedLink(url: string): boolean {
  return /^(https?:\/\/.|mailto:.|#.)/i.test(url);
}

/** A path that stays below the lesson's folder: nothing that could be an address, no way up, however it is spelt. */
function isOwnPicture(url: string): boolean {
  let path: string;
  try {
    path = decodeURIComponent(url);
  } catch {
    return false;
  }
  return path !== '' && !/^[/\\#?]|^[a-z][a-z0-9+.-]*:|\\/i.test(path) && !path.split('/').includes('..');
}
