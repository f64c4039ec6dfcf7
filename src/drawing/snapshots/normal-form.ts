import type { Element } from 'hast';
import { svgText } from '../kit/svg-reading.ts';

// For tests: a drawing so that two of them can be compared line by line, and still be opened as a picture.

/** Attributes whose numbers are no places on the page. */
const keptAsTheyAre = /^(id|data-|font-|stroke|aria-|xmlns)/;

/** One element a line, its attributes by name, places to 0.1 mm, of a text a sentence a line. */
export function normalForm(svg: Element): string {
  let depth = 0;
  const lines: string[] = [];
  const put = (line: string) => lines.push(`${'  '.repeat(depth)}${line}`);
  for (const [, ends, name, attributes, text] of svgText(svg).matchAll(/<(\/?)([\w:]+)([^>]*)>|([^<]+)/g)) {
    if (text !== undefined) for (const sentence of sentences(text)) put(sentence);
    else if (ends === '') {
      put(`<${name}${inOrder(attributes!)}>`);
      depth++;
    } else {
      depth--;
      put(`</${name}>`);
    }
  }
  return `${lines
    .join('\n')
    .replace(/<(\w+)([^<>]*)>\n\s*<\/\1>/g, '<$1$2/>')
    .replace(/>\n\s*([^<\n]+)\n\s*<\//g, '>$1</')}\n`;
}

function inOrder(attributes: string): string {
  return [...attributes.matchAll(/ ([\w:-]+)="([^"]*)"/g)]
    .map(([, name, value]) => ` ${name}="${keptAsTheyAre.test(name!) ? value : toTenths(value!)}"`)
    .sort()
    .join('');
}

const toTenths = (text: string) =>
  text.replace(/-?\d*\.\d+/g, (number) => String(Math.round(Number(number) * 10) / 10 + 0));

const sentences = (text: string) => text.replaceAll('\u00a0', ' ').split(/(?<=\.) (?=[A-Z])/);
