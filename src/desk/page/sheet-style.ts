/** mm: the widths of the papers, and what is left at the sides of the sheet. */
const paperWidth: Readonly<Record<string, number>> = { a4: 210, letter: 215.9 };
const around = 4;
const mmToPx = 96 / 25.4;

/**
 * Turns a packet's style, made for paper, into that of a sheet on the screen, `width` px wide: the parts for print
 * apply, those for a screen do not. Returns the style to be added. With `asOnScreen` it is the other way round, and
 * nothing is added.
 */
export function sheetStyle(sheets: readonly CSSStyleSheet[], width: number, asOnScreen: boolean): string {
  let size = 'a4';
  let margin = '21mm 15mm 20mm 21mm';
  for (const rule of sheets.flatMap((sheet) => [...sheet.cssRules])) {
    // A rule in a frame is of the frame's own classes: it is recognized by what it has.
    if ('media' in rule && 'cssRules' in rule) setMedia(rule as CSSMediaRule, asOnScreen);
    if (/^@page\s*\{/.test(rule.cssText)) {
      const { style } = rule as CSSPageRule;
      size = style.getPropertyValue('size').toLowerCase() || size;
      margin = style.getPropertyValue('margin') || margin;
    }
  }
  if (asOnScreen) return 'body{overflow-wrap:break-word}';
  const sheet = paperWidth[size.split(' ')[0]!] ?? 210;
  const zoom = Math.min(1, width / ((sheet + 2 * around) * mmToPx));
  return `
html{zoom:${zoom.toFixed(4)};background:#e4e4e2;text-rendering:geometricPrecision}
body{position:relative;isolation:isolate;width:${sheet}mm;min-height:${sheet * 1.4}mm;margin:${around}mm auto;padding:${margin};background:#fff;outline:.3mm solid #555}
.ruled-margin{position:absolute;top:${margin.split(' ')[0]};bottom:20mm;left:calc(${leftOf(margin)} + 134mm);background:linear-gradient(transparent calc(9mm - .35mm),#8a8a8a 0) 0 0/100% 9mm}
.ruled-margin>span{display:none}
a:focus-visible,[tabindex]:focus-visible{outline:.6mm solid #000;outline-offset:.6mm}
@media (forced-colors:active){.ruled-margin{display:none}}`;
}

/** The queries as first written: each is read once, and changed in place after that. */
const written = new WeakMap<CSSMediaRule, string>();

function setMedia(rule: CSSMediaRule, asOnScreen: boolean): void {
  const query = written.get(rule) ?? rule.media.mediaText;
  written.set(rule, query);
  if (query === 'print') rule.media.mediaText = asOnScreen ? 'print' : 'all';
  else if (query.startsWith('screen')) rule.media.mediaText = asOnScreen ? query : 'not all';
}

/** The fourth length of a margin, or the one that stands for it. */
function leftOf(margin: string): string {
  const lengths = margin.split(' ');
  return lengths[3] ?? lengths[1] ?? lengths[0]!;
}
