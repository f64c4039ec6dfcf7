import { markdown, markdownLanguage } from '@codemirror/lang-markdown';
import { yaml, yamlFrontmatter } from '@codemirror/lang-yaml';
import { HighlightStyle, syntaxHighlighting } from '@codemirror/language';
import type { Extension } from '@codemirror/state';
import { tags } from '@lezer/highlight';
import type { MarkdownConfig } from '@lezer/markdown';

/** `:turn[radius]{bank=30deg}`, `::keys`, `:::caution`, and the `:::` that closes one. */
const directive = /^(:{1,3})([a-z][a-z\d-]*)(\[[^\]\n]*\])?(\{[^}\n]*\})?/;
const closing = /^:{3,}[ \t]*$/m;

/** A directive in the syntax tree of Markdown: its fixed parts stand out, the text in it does not. */
const directives: MarkdownConfig = {
  defineNodes: [
    { name: 'Directive' },
    { name: 'DirectiveName', style: tags.keyword },
    { name: 'DirectiveLabel', style: tags.labelName },
    { name: 'DirectiveAttributes', style: tags.attributeName },
  ],
  parseInline: [
    {
      name: 'Directive',
      before: 'Link',
      parse(context, next, position) {
        if (next !== 58) return -1;
        const before = position > context.offset ? context.slice(position - 1, position) : '\n';
        if (/[\w:]/.test(before)) return -1;
        const text = context.slice(position, context.end);
        const close = before === '\n' ? closing.exec(text) : null;
        if (close?.index === 0)
          return context.addElement(context.elt('DirectiveName', position, position + 3));
        const found = directive.exec(text);
        if (!found) return -1;
        const [all, colons, name, label = '', attributes = ''] = found;
        const nameEnd = position + colons!.length + name!.length;
        const labelEnd = nameEnd + label.length;
        const end = position + all.length;
        const parts = [context.elt('DirectiveName', position, nameEnd)];
        if (label) parts.push(context.elt('DirectiveLabel', nameEnd, labelEnd));
        if (attributes) parts.push(context.elt('DirectiveAttributes', labelEnd, end));
        return context.addElement(context.elt('Directive', position, end, parts));
      },
    },
  ],
};

/** Shown by weight, slant and a line below, as on the printed page; never by colour alone. */
const look = HighlightStyle.define([
  { tag: tags.heading, fontWeight: '600' },
  { tag: tags.strong, fontWeight: '600' },
  { tag: tags.emphasis, fontStyle: 'italic' },
  { tag: tags.keyword, fontWeight: '600', class: 'tok-directive' },
  { tag: tags.labelName, class: 'tok-label' },
  { tag: tags.attributeName, class: 'tok-attributes' },
  { tag: [tags.definition(tags.propertyName), tags.propertyName], fontWeight: '600' },
  { tag: tags.comment, class: 'tok-comment' },
  { tag: [tags.processingInstruction, tags.meta, tags.url], class: 'tok-mark' },
]);

/** The language of a file by its ending. */
export function languageOf(path: string): Extension {
  const language = path.endsWith('.md')
    ? yamlFrontmatter({
        content: markdown({ base: markdownLanguage, extensions: [directives], pasteURLAsLink: false }),
      })
    : yaml();
  return [language, syntaxHighlighting(look)];
}
