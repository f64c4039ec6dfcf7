import type { Element } from 'hast';
import { s } from 'hastscript';

/** A drawn element and everything in it, as a tree. Reads the DOM of a browser and that of the board under Node alike. */
export function svgTree(drawn: globalThis.Element): Element {
  const attributes = Array.from(drawn.attributes, ({ name, value }) => [name, value]);
  const children = Array.from(drawn.childNodes, (child) => {
    if (child.nodeType === child.ELEMENT_NODE) return svgTree(child as globalThis.Element);
    return child.nodeType === child.TEXT_NODE ? child.nodeValue : null;
  });
  return s(drawn.nodeName, Object.fromEntries(attributes), children);
}
