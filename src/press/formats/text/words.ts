import type { Element, ElementContent } from 'hast';
import { hasClass, textOf } from '../document-tree.ts';

const blocks = new Set(
  'article aside blockquote dd div dl dt figcaption figure footer h1 h2 h3 h4 h5 h6 header hr li main nav ol p pre section svg table ul'.split(
    ' ',
  ),
);

/** Whether it begins a line of its own. */
export function isBlock(node: ElementContent): node is Element {
  return node.type === 'element' && blocks.has(node.tagName);
}

/** Neither printed nor spoken as words: ruled lines, leaders, scripts. */
export function isSilent({ tagName, properties }: Element): boolean {
  return tagName === 'script' || tagName === 'style' || properties.ariaHidden === 'true';
}

/** The words in content, as one line. */
export function wordsOf(content: readonly ElementContent[]): string {
  return content
    .map(wordsIn)
    .join('')
    .replace(/[ \t\n]+/g, ' ')
    .replace(/ (?=[,.;:)])/g, '')
    .trim();
}

function wordsIn(node: ElementContent): string {
  if (node.type === 'text') return node.value.replaceAll('\u00ad', '');
  if (node.type !== 'element' || isSilent(node)) return '';
  if (node.tagName === 'svg') return ` ${drawingWords(node)} `;
  if (blocks.has(node.tagName)) return ` ${wordsOf(node.children)} `;
  const words = wordsOf(node.children);
  switch (node.tagName) {
    case 'br':
      return ' ';
    case 'img':
      return `Picture: ${String(node.properties.alt ?? '')}`;
    case 'small':
      return words === '' ? '' : ` (${words})`;
    case 'sup':
      return raised(node, words);
    case 'a':
      return linkWords(String(node.properties.href ?? ''), words);
    default:
      if (hasClass(node, 'caption-number')) return `${words}:`;
      return node.children.map(wordsIn).join('');
  }
}

/** A drawing as words: its title and its description. */
export function drawingWords(svg: Element): string {
  const said = (tagName: string) => {
    const found = svg.children.find((child) => child.type === 'element' && child.tagName === tagName);
    return found ? textOf(found).trim() : '';
  };
  const title = said('title');
  return `Drawing: ${/[.!?]$/.test(title) ? title : `${title}.`} ${said('desc')}`.trim();
}

const superscripts = { from: '0123456789+-−', to: '⁰¹²³⁴⁵⁶⁷⁸⁹⁺⁻⁻' } as const;

/** The number of a footnote, or a power: small raised figures have characters of their own. */
function raised({ children }: Element, words: string): string {
  if (children.some((child) => child.type === 'element' && child.tagName === 'a')) return ` [${words}]`;
  const signs = [...words].map((sign) => superscripts.to[superscripts.from.indexOf(sign)]);
  return signs.every((sign) => sign !== undefined) ? signs.join('') : `^${words}`;
}

function linkWords(href: string, words: string): string {
  const isElsewhere = /^https?:/.test(href) && href !== words;
  return isElsewhere ? `${words} (${href})` : words;
}
