import type { ElementContent } from 'hast';
import { toHtml } from 'hast-util-to-html';
import { setText } from '../formats/document-tree.ts';

/** Content as elements of the page, set as the packet sets it. It may be changed. */
export function pageElements(content: ElementContent[]): Element[] {
  setText(content);
  const template = document.createElement('template');
  template.innerHTML = toHtml(content);
  return [...template.content.children];
}

/** An element with a class and words in it. */
export function element<Tag extends keyof HTMLElementTagNameMap>(
  tag: Tag,
  className: string,
  ...children: (Node | string)[]
): HTMLElementTagNameMap[Tag] {
  const made = document.createElement(tag);
  if (className !== '') made.className = className;
  made.append(...children);
  return made;
}

/** Words set as the packet sets its own: real quotation marks, no line end between a number and its unit. */
export function setWords(value: string): string {
  const text = { type: 'text' as const, value };
  setText([text]);
  return text.value;
}
