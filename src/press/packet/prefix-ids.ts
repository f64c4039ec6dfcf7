import type { ElementContent, Properties, Root } from 'hast';
import { visit } from 'unist-util-visit';

/** Attributes that refer to ids of the page, by their names in the tree; each holds a list of them. */
const references = [
  'ariaLabelledBy',
  'ariaDescribedBy',
  'ariaControls',
  'headers',
  'htmlFor',
  'list',
] as const;

/**
 * Puts `prefix` before every id in the content and before every reference to one, drawings included: lessons bound
 * into one document each keep ids of their own, and links inside a lesson stay inside it. Works in place.
 */
export function prefixIds(content: ElementContent[], prefix: string): void {
  const root: Root = { type: 'root', children: content };
  visit(root, 'element', ({ properties }) => prefixProperties(properties, prefix));
}

function prefixProperties(properties: Properties, prefix: string): void {
  if (typeof properties.id === 'string') properties.id = prefix + properties.id;
  for (const name of references) {
    const ids = properties[name];
    if (typeof ids === 'string' || Array.isArray(ids))
      Object.assign(properties, { [name]: prefixList(ids, prefix) });
  }
  for (const [name, value] of Object.entries(properties)) {
    if (typeof value !== 'string') continue;
    if (/^(href|xLinkHref)$/.test(name)) properties[name] = value.replace(/^#(?=.)/, `#${prefix}`);
    // What a drawing paints or clips with.
    else if (value.includes('url(')) properties[name] = value.replace(/url\(["']?#/g, `$&${prefix}`);
  }
}

function prefixList(ids: string | readonly (string | number)[], prefix: string): string {
  const each = typeof ids === 'string' ? ids.split(/\s+/) : ids;
  return each
    .filter((id) => id !== '')
    .map((id) => prefix + id)
    .join(' ');
}
