import type { Definition, Image, ImageReference, Root } from 'mdast';
// For `hProperties` in a node's data.
import type {} from 'mdast-util-to-hast';
import { visit } from 'unist-util-visit';
import type { VFile } from 'vfile';
import { fail } from '../messages/failures.ts';
import { ownPicturePath } from './links.ts';

/** A picture as the page gets it. */
export interface FoundPicture {
  /** From the lesson's folder, as it was typed. */
  readonly path: string;
  /** A `data:` address, so that the page needs no other file. */
  readonly src: string;
  /** Pixels. */
  readonly width: number;
  readonly height: number;
}

/**
 * Looks for a picture by its path from the lesson's folder; `/` between folders, never absolute and never with `..`.
 * What it finds wrong is worded for the author.
 */
export type FindPicture = (path: string) => FoundPicture | { readonly wrong: string };

/**
 * Looks for every picture of a lesson that may be looked for (see `checkLinks`), and marks its place in the tree. One
 * that is not found is an error at its address.
 */
export function findPictures(tree: Root, file: VFile, find: FindPicture): FoundPicture[] {
  const definitions = new Map<string, Definition>();
  visit(tree, 'definition', (node) => {
    if (!definitions.has(node.identifier)) definitions.set(node.identifier, node);
  });
  const found: FoundPicture[] = [];
  const asked = new Map<string, number | undefined>();
  visit(tree, ['image', 'imageReference'], (node) => {
    const picture = node as Image | ImageReference;
    const at = picture.type === 'image' ? picture : definitions.get(picture.identifier);
    const path = at && ownPicturePath(at.url);
    if (!at || path === undefined) return;
    if (!asked.has(path)) {
      const answer = find(path);
      if ('wrong' in answer) fail(file, answer.wrong, 'picture', at.position);
      asked.set(path, 'wrong' in answer ? undefined : found.push(answer) - 1);
    }
    const place = asked.get(path);
    if (place !== undefined) picture.data = { ...picture.data, hProperties: { dataPicture: String(place) } };
  });
  return found;
}
