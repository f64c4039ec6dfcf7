import { fontFaceCss } from '../paper/fonts.ts';
import { furnitureBoxes, type PageFurniture, pageSize, sheetCss } from '../paper/page-style.ts';
import { contentHeight, type Paper } from '../paper/paper.ts';

/** The lines outside the text on the pages of one chapter. */
export interface RunningTitle extends PageFurniture {
  /** The name of its pages. */
  readonly page: string;
}

/** The style sheet of a book: that of a packet, with running titles for each chapter. */
export function bookCss(paper: Paper, running: readonly RunningTitle[]): string {
  return [
    fontFaceCss(),
    pageSize(paper),
    ...running.map((furniture) => furnitureBoxes(paper, furniture, furniture.page)),
    sheetCss(paper),
    ...running.map(({ page }) => `.${page}{page:${page}}`),
    bookRooms(paper),
  ].join('\n');
}

function bookRooms(paper: Paper): string {
  return `
.book>main>section{break-before:page}
.book .masthead{padding-top:8pt}
.chapter-number{display:inline-block;margin-right:.35em;padding-right:.4em;border-right:1.2pt solid #000}
.matter>h1{border-top:2.4pt solid #000;padding-top:8pt;margin-bottom:14pt}
.matter{padding-right:0}
.matter.workings{padding-right:var(--room)}
.matter.workings>h1{margin-right:calc(-1*var(--room))}
.workings h2.worked+p{break-after:avoid}
.workings h2.worked{border-top-width:1.6pt;font-size:14pt;line-height:18pt}
.cover{border-top:2.4pt solid #000;padding-top:6pt;background:#fff;display:flex;flex-direction:column}
.cover-school{font:600 12pt/16pt var(--sans);margin:0}
.cover h1{font-size:46pt;line-height:50pt;margin:52mm 0 6mm}
.cover-aircraft{font:600 17pt/23pt var(--sans);margin:0 0 2mm}
.cover-edition{font:12pt/16pt var(--sans);margin:0}
.cover .caution{margin-top:auto;max-width:var(--text);font:9.5pt/13pt var(--sans)}
.cover .caution .label{font-weight:600;margin:0 0 4pt}
.cover .caution ul{margin:0}
.cover-origin{font:8pt/11pt var(--sans);margin:6mm 0 0}
.contents-list,.contents-list ol{list-style:none;margin:0;padding:0}
.entry{display:flex;align-items:baseline;margin:0;orphans:1;widows:1;break-inside:avoid}
.entry-text{text-decoration:none;flex:0 1 auto}
.leader{flex:1 0 6mm;border-bottom:.6pt dotted #000;margin:0 2mm}
.entry .page-number{flex:0 0 8mm;text-align:right}
.page-number{text-decoration:none;white-space:nowrap;font-variant-numeric:tabular-nums}
.of-chapter{font:600 10.5pt/14pt var(--sans);margin-top:8pt;break-after:avoid}
.of-section{font:8.8pt/12.2pt var(--sans)}
.contents-list ol>li{margin:0}
.contents-list ol{padding-left:6mm}
.contents-list li{margin:0}
.figure-list li{margin:0 0 3pt}
.figure-list .entry-text{max-width:150mm}
.glossary-list{columns:2;column-gap:8mm;margin:0}
.glossary-list>div{break-inside:avoid;margin:0 0 7pt}
.glossary-list dt{font:600 9.5pt/13pt var(--sans)}
.glossary-list dd{margin:0;font-size:9.5pt;line-height:13pt}
.index-list{columns:3;column-gap:8mm;list-style:none;padding:0;margin:0;font:9pt/13pt var(--sans)}
.index-list li::marker{content:""}
.index-list li{break-inside:avoid;padding-left:4mm;text-indent:-4mm}
.coverage{width:100%}
.coverage td:nth-child(2){width:42mm}
.coverage td:nth-child(3){width:24mm}
.chapter-questions{font-weight:400}
.chapter .masthead h1{display:flex;align-items:flex-start}
.coverage .chapter-row{padding-top:7pt}
.coverage tbody tr:first-child{break-after:avoid}
.coverage tbody tr:last-child{break-before:avoid}
@media print{
.cover{height:${contentHeight(paper)}mm}
.edition-student :is(.cover,.matter){background:#fff}
.edition-student .matter{box-shadow:0 125mm 0 120mm #fff;box-decoration-break:clone;-webkit-box-decoration-break:clone}
}
@media screen and (max-width:800px){.glossary-list,.index-list{columns:1}.cover h1{font-size:36px;line-height:40px;margin:40px 0 16px}}
@media screen{.entry,.glossary-list dt,.glossary-list dd,.index-list{font-size:16px;line-height:1.5}.cover .caution,.cover-origin{font-size:15px;line-height:1.45}.cover .caution{margin-top:40px}}`;
}
