import { readFileSync } from 'node:fs';
import { fileURLToPath } from 'node:url';

/** One face of the press: a static woff2 file (variable fonts would be embedded in a PDF as Type 3). */
export interface Face {
  readonly family: 'IBM Plex Sans' | 'IBM Plex Serif';
  readonly style: 'normal' | 'italic';
  /** CSS weight. */
  readonly weight: 400 | 600;
  /** Absolute path of the font file. */
  readonly path: string;
}

/** Headings, tables, labels and drawings. */
const sansFamily = 'IBM Plex Sans';
/** Running text. */
const serifFamily = 'IBM Plex Serif';

function face(family: Face['family'], weight: Face['weight'], style: Face['style'], file: string): Face {
  return { family, weight, style, path: fileURLToPath(new URL(`./fonts/${file}`, import.meta.url)) };
}

/** Every face that a page may use; SIL Open Font License, `fonts/OFL.txt`. */
export const faces = {
  serif: face(serifFamily, 400, 'normal', 'IBMPlexSerif-Regular.woff2'),
  serifItalic: face(serifFamily, 400, 'italic', 'IBMPlexSerif-Italic.woff2'),
  serifBold: face(serifFamily, 600, 'normal', 'IBMPlexSerif-SemiBold.woff2'),
  sans: face(sansFamily, 400, 'normal', 'IBMPlexSans-Regular.woff2'),
  sansBold: face(sansFamily, 600, 'normal', 'IBMPlexSans-SemiBold.woff2'),
} as const satisfies Record<string, Face>;

/** The fontconfig file that shows our fonts to a browser on a machine without any. */
export const fontconfigPath = fileURLToPath(new URL('./fonts/fonts.conf', import.meta.url));

let css: string | undefined;

/**
 * `@font-face` rules with the fonts inside, so that a page opens the same without a network and without other files
 * beside it.
 */
export function fontFaceCss(): string {
  css ??= Object.values(faces).map(fontFaceRule).join('\n');
  return css;
}

// Bold text uses the semi-bold: 600 to 900 all map to it, so that the browser never makes up a bold of its own.
function fontFaceRule({ family, style, weight, path }: Face): string {
  const data = readFileSync(path).toString('base64');
  const weights = weight === 400 ? '400' : '600 900';
  return (
    `@font-face{font-family:"${family}";font-style:${style};font-weight:${weights};` +
    `src:url(data:font/woff2;base64,${data}) format("woff2")}`
  );
}
