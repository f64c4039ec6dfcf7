/** One declaration of a style sheet or of a `style` attribute. */
export interface Declaration {
  /** The selectors around it, the outermost first; for an attribute, the element's tag. */
  readonly selector: string;
  readonly property: string;
  readonly value: string;
}

/** Every declaration of a style sheet, without fonts: enough of CSS for what the press writes itself. */
function declarationsOf(css: string): Declaration[] {
  const found: Declaration[] = [];
  const open: string[] = [];
  let words = '';
  const end = () => {
    const at = words.indexOf(':');
    if (at > 0 && !words.trim().startsWith('@') && !open.includes('@font-face'))
      found.push({
        selector: open.join(' '),
        property: words.slice(0, at).trim(),
        value: words.slice(at + 1).trim(),
      });
    words = '';
  };
  for (const [token] of css
    .replace(/\/\*[\s\S]*?\*\//g, '')
    .matchAll(/"(?:[^"\\]|\\[\s\S])*"|'[^']*'|url\([^)]*\)|[\s\S]/g)) {
    if (token === '{') {
      open.push(words.trim());
      words = '';
    } else if (token === '}') {
      end();
      open.pop();
    } else if (token === ';') end();
    else words += token;
  }
  if (open.length > 0) throw new Error(`The style sheet does not close ${open.join(' ')}`);
  return found;
}

/** All declarations of a self-contained page, without drawings: those of its style sheets and of its elements. */
export function pageDeclarations(html: string): Declaration[] {
  const sheets = [...html.matchAll(/<style[^>]*>([\s\S]*?)<\/style>/g)];
  const elements = html
    .replace(/<(style|svg)\b[\s\S]*?<\/\1>/g, '')
    .matchAll(/<([a-z\d]+)\b[^>]*?\sstyle="([^"]*)"/g);
  return [
    ...sheets.flatMap(([, css]) => declarationsOf(css!)),
    ...[...elements].flatMap(([, tag, css]) => declarationsOf(`${tag}{${css}}`)),
  ];
}

export type ColourUse = 'text' | 'background' | 'line';

/** What a declaration colours; undefined where it has nothing to do with colour. */
export function colourUse({ property }: Declaration): ColourUse | undefined {
  if (property === 'color') return 'text';
  if (/^background(-color|-image)?$/.test(property)) return 'background';
  return /^(border|outline|column-rule|text-decoration|text-emphasis)(-[a-z]+)*$|^(box|text)-shadow$/.test(
    property,
  )
    ? 'line'
    : undefined;
}

/** The colours of a value, `#rrggbb`. */
export function coloursIn({ value }: Declaration): string[] {
  return [...value.matchAll(/#([\da-f]+)\b/gi)].map(([, digits]) => {
    const long = digits!.length === 3 ? [...digits!].map((digit) => digit + digit).join('') : digits!;
    if (long.length !== 6) throw new Error(`#${digits} is no colour of three or six digits`);
    return `#${long.toLowerCase()}`;
  });
}
