import { fontFaceCss } from '../paper/fonts.ts';
import type { CardPaper } from './card-paper.ts';

/** How a card is set: the size of its text in pt, and the room between lines and parts, from 0 (tight) to 1. */
export interface CardSetting {
  readonly size: number;
  readonly air: number;
}

// A browser that prints aligns the cells of a row at their tops, not on one baseline: a strut as high as the largest
// figure's ascent at the head of each cell brings the baselines together.

/**
 * The style sheet of a card. Everything that is read in flight is set in `rem`, of which one is `size` pt; the foot,
 * which is not, stays at 7.4 pt.
 */
export function cardCss(paper: CardPaper, { size, air }: CardSetting): string {
  const { cssSize, width, height, margin } = paper;
  const room = { width: width - margin.inner - margin.outer, height: height - margin.top - margin.bottom };
  return `${fontFaceCss()}
@page{size:${cssSize};margin:${margin.top}mm ${margin.outer}mm ${margin.bottom}mm ${margin.inner}mm}
:root{--air:${air};--line:calc(1.12 + .08*var(--air));--gap:calc(.1rem + .4rem*var(--air))}
*{box-sizing:border-box}
html{font:${size}pt/var(--line) "IBM Plex Sans",sans-serif;color:#000;background:#fff;font-variant-numeric:lining-nums tabular-nums;print-color-adjust:exact;-webkit-text-size-adjust:100%}
body,main{margin:0;display:flex;flex-direction:column;gap:var(--gap)}
main{flex:1;justify-content:space-between}
h1,h2,p,ul,ol,dl,dt,dd{margin:0;padding:0}
b,h1,h2{font-weight:600}
abbr{text-decoration:none}
h1{font-size:1.7rem;line-height:1;letter-spacing:-.012em}
h2{font-size:1rem;line-height:var(--line)}
.figure{white-space:nowrap}
.unit{font-size:1rem;font-weight:400}

header{border-top:3pt solid #000;padding-top:calc(.1rem + .15rem*var(--air))}
.title{display:flex;justify-content:space-between;gap:4mm;align-items:flex-start}
.runway{display:flex;gap:2.4mm;align-items:center}
.runway .number{font-size:2.6rem;line-height:1;font-weight:600;letter-spacing:-.01em}
.runway p+p{line-height:var(--line)}
.wind{border-top:.5pt solid #000;margin-top:.2rem;padding:.12rem 0}
.speeds{display:flex;flex-wrap:wrap;justify-content:space-between;column-gap:3mm}
.speeds{border-top:.5pt solid #000}
.speeds>div{display:flex;gap:1.4mm;align-items:baseline}
.speeds .figure{font-size:1.4rem;line-height:1}

section{border-top:1.6pt solid #000;padding-top:.1rem}
table{border-collapse:collapse;width:100%}
th,td{font-weight:400;text-align:left;vertical-align:baseline;padding:calc(.01rem + .06rem*var(--air)) 0 calc(.01rem + .06rem*var(--air)) 2mm;line-height:var(--line)}
th:first-child{padding-left:0}
tbody tr>*,.words{border-top:.5pt solid #000}
tbody tr>*::before{content:'';display:inline-block}
tbody th{font-weight:600}
.number{text-align:right;white-space:nowrap}
.words{padding-top:.1rem}
.keys :is(th,td){padding-left:.8mm;padding-right:.6mm}
.turns h2{display:inline}
.keys .key{padding-left:0}
.keys tbody .key{white-space:nowrap}
.keys .group{text-align:center;font-weight:600;text-transform:uppercase}
.keys .opens{border-left:1.6pt solid #000}
.key-height .figure{font-size:1.5rem;line-height:1}
.mark{display:inline-block;width:.8rem;height:.8rem;border:1.2pt solid #000;margin-right:1mm}
.winds tbody th{white-space:nowrap}
.winds :is(th,td)+*{padding-left:1.4mm}
.winds .big{font-size:1.3rem;line-height:1}
.keys tbody tr>*::before{height:calc(1.32rem + .1rem*var(--air))}
.winds tbody tr>*::before{height:calc(1.14rem + .06rem*var(--air))}

.band,.beware{border:1.6pt solid #000;padding:.02rem 2mm .1rem}
.final{border-top:.5pt solid #000;padding-top:.1rem}
.keys+.final{margin-top:calc(-1*var(--gap))}
.turns tr>*{border-top:0}
.winds+.turns{border-top:.5pt solid #000;padding-top:0;margin-top:calc(-1*var(--gap))}
ol{list-style:none;counter-reset:line}
ol>li{counter-increment:line;padding-left:1.2rem;margin-top:calc(.02rem + .08rem*var(--air));line-height:calc(1.1 + .05*var(--air))}
ol>li::before{content:counter(line);display:inline-block;width:1.2rem;margin-left:-1.2rem;font-weight:600}

footer{border-top:.5pt solid #000;padding-top:1.5pt;font-size:7.4pt;line-height:9pt}
@media print{body{min-height:${room.height - 0.4}mm}}
@media screen{
body{max-width:calc(${room.width}mm + 40px);margin:0 auto;padding:20px}
html{font-size:16px}
footer{font-size:13px;line-height:1.35}
}
@media screen and (max-width:500px){
body{padding:12px 8px}
.keys table,.turns table,.winds table{font-size:13px}
.keys .key-height .figure,.winds .big{font-size:17px}
.winds tbody th{white-space:normal}
.keys tbody .key{white-space:normal}
.keys :is(th,td){padding-left:2px;padding-right:1px}
}`;
}
