import type { ElementContent, Properties, Root } from 'hast';
import { visit } from 'unist-util-visit';

/** Attributes that name ids of the page, as the tree calls them, each a list of them. */
const references = [
  'ariaLabelledBy',
  'ariaDescribedBy',
  'ariaControls',
  'headers',
  'htmlFor',
  'list',
] as const;

/**
 * Puts `prefix` before every id in the content and before every mention of one, drawings included: lessons bound into one
 * document each keep ids of their own, and links inside a lesson stay in it. Works in place.
 */
export function prefixIds(content: ElementContent[], prefix: string): void {
  const root: Root = { type: 'root', children: content };
  visit(root, (node) => {
    if (node.type === 'element') prefixProperties(node.properties, prefix);
    // Our own drawings, as their SVG text; the author's HTML never comes as far as here.
    else if ((node as { type: string }).type === 'raw') {
      const raw = node as unknown as { value: string };
      raw.value = prefixMarkup(raw.value, prefix);
    }
  });
}

function prefixProperties(properties: Properties, prefix: string): void {
  if (typeof properties.id === 'string') properties.id = prefix + properties.id;
  const { href } = properties;
  if (typeof href === 'string' && /^#./.test(href)) properties.href = `#${prefix}${href.slice(1)}`;
  for (const name of references) {
    const ids = properties[name];
    if (typeof ids === 'string' || Array.isArray(ids)) {
      Object.assign(properties, { [name]: prefixList(Array.isArray(ids) ? ids.join(' ') : ids, prefix) });
    }
  }
}

function prefixMarkup(markup: string, prefix: string): string {
  return markup
    .replace(/ id="([^"]+)"/g, (_, id: string) => ` id="${prefix}${id}"`)
    .replace(/ (aria-\w+)="([^"]+)"/g, (whole, name: string, ids: string) =>
      /^aria-(labelledby|describedby|controls)$/.test(name) ? ` ${name}="${prefixList(ids, prefix)}"` : whole,
    )
    .replace(/(href="#|url\(["']?#)/g, (before) => before + prefix);
}

function prefixList(ids: string, prefix: string): string {
  return ids
    .split(/\s+/)
    .filter((id) => id !== '')
    .map((id) => prefix + id)
    .join(' ');
}
