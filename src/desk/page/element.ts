/** Makes an element with its properties and its content. */
export function element<Tag extends keyof HTMLElementTagNameMap>(
  tag: Tag,
  properties: Partial<HTMLElementTagNameMap[Tag]> = {},
  ...inside: (Node | string)[]
): HTMLElementTagNameMap[Tag] {
  const made = Object.assign(document.createElement(tag), properties);
  made.append(...inside);
  return made;
}

/** An element of the page by its id, of the class that it must have. */
export function byId<Kind extends HTMLElement>(id: string, kind: new () => Kind): Kind {
  const found = document.getElementById(id);
  if (found instanceof kind) return found;
  throw new Error(`The page has no ${kind.name} \`${id}\`.`);
}

/** Words with what an author types between backquotes set as code. */
export function withCode(text: string): (Node | string)[] {
  return text.split('`').map((part, at) => (at % 2 === 1 ? element('code', {}, part) : part));
}
