import type { Block, Part, Room } from '../api.ts';

/** Gives the HTML of a block that came without it. */
export type HtmlOf = (key: string) => string;

const isRoom = (part: Part): part is Room => 'parts' in part;

const nameOf = (part: Part) => (isRoom(part) ? part.open.trim() : part.key);

/**
 * Makes an element that shows `before` show `after`. What is in both is not touched, so that nothing that a reader
 * looks at, or has focus in, moves. Every part is one element. Returns the new ones.
 */
export function patchParts(
  element: Element,
  before: readonly Part[],
  after: readonly Part[],
  htmlOf: HtmlOf,
): Element[] {
  const shown = [...element.children];
  // Something else has changed the page: start again.
  if (shown.length !== before.length) {
    element.replaceChildren();
    return patchParts(element, [], after, htmlOf);
  }
  const made: Element[] = [];
  /** What is there already, by name, in order; a room keeps its element when only its parts change. */
  const kept = new Map<string, { readonly part: Part; readonly element: Element }[]>();
  before.forEach((part, at) => {
    const name = nameOf(part);
    kept.set(name, [...(kept.get(name) ?? []), { part, element: shown[at]! }]);
  });
  const wanted = after.map((part) => {
    const found = kept.get(nameOf(part))?.shift();
    if (!found) {
      const fresh = elementOf(part, element.ownerDocument, htmlOf);
      made.push(fresh);
      return fresh;
    }
    if (isRoom(part)) made.push(...patchParts(found.element, (found.part as Room).parts, part.parts, htmlOf));
    return found.element;
  });
  const staying = new Set(wanted);
  for (const child of shown) if (!staying.has(child)) child.remove();
  let next: Element | null = element.firstElementChild;
  for (const child of wanted) {
    if (child === next) next = next.nextElementSibling;
    else element.insertBefore(child, next);
  }
  return made;
}

function elementOf(part: Part, document: Document, htmlOf: HtmlOf): Element {
  // Inside a template nothing loads and nothing runs.
  const template = document.createElement('template');
  template.innerHTML = isRoom(part) ? part.open + part.close : (part.html ?? htmlOf(part.key));
  const element = document.importNode(template.content, true).firstElementChild!;
  if (isRoom(part)) patchParts(element, [], part.parts, htmlOf);
  return element;
}

/** All blocks of a part, in order. */
export function blocksOf(part: Part): Block[] {
  return isRoom(part) ? part.parts.flatMap(blocksOf) : [part];
}
