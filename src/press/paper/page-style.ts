import { noteColumn, noteGap } from '../../../components/margin.ts';
import { fontFaceCss } from './fonts.ts';
import { contentWidth, type Paper, type PaperName, papers, textWidth } from './paper.ts';

/** The lines outside the text on every page. */
export interface PageFurniture {
  /** What the packet is: the lesson's title. */
  readonly title: string;
  /** What it is for: aircraft and wind. */
  readonly subject: string;
  /** Date of the inputs and their fingerprint. */
  readonly origin: string;
  /** What is printed in a black band at the head of every page; left out, there is no band. */
  readonly band?: string | undefined;
}

/** The whole style sheet of a packet: fonts inside, page boxes for paper, a readable column on screens. */
export function pageCss(paper: Paper, furniture: PageFurniture): string {
  const bare = ['top-left', 'top-center', 'top-right']
    .map((place) => `@${place}{content:none;border:none}`)
    .join('');
  return [
    fontFaceCss(),
    `\n${pageSize(paper)}\n${furnitureBoxes(paper, furniture)}\n@page :first{${firstHead(furniture) ?? bare}}`,
    sheetCss(paper),
  ].join('\n');
}

/**
 * The style sheet of a packet for a page of your own, with its typefaces but without the lines outside the text. The content
 * goes into `<body class="edition-student"><div class="lesson">`.
 */
export function pageStyle(paper: PaperName = 'A4'): string {
  return [fontFaceCss(), pageSize(papers[paper]), sheetCss(papers[paper])].join('\n');
}

/** What all pages on one paper have in common: type, the rooms of the editions, the column on a screen. */
export function sheetCss(paper: Paper): string {
  return [typography(paper), editionRooms(paper), screenCss(paper)].join('\n');
}

export function pageSize({ cssSize, margin: { top, bottom, inner, outer } }: Paper): string {
  return `@page{size:${cssSize};margin:${top}mm ${outer}mm ${bottom}mm ${inner}mm}`;
}

/**
 * Margin boxes, because a browser has no running headers of its own. Left pages mirror right ones, for printing on
 * both sides. The first page of a packet carries its title itself; a book has boxes for each of its chapters, by the
 * `page` that the chapter is set on.
 */
export function furnitureBoxes(
  { margin }: Paper,
  { title, subject, origin, band }: PageFurniture,
  page = '',
): string {
  const face = 'font:400 7.8pt/10pt "IBM Plex Sans";color:#000;white-space:pre-wrap;';
  const head = `${face}vertical-align:bottom;padding-bottom:1.4mm;margin-bottom:5mm;`;
  const foot = `${face}vertical-align:top;padding-top:1.4mm;margin-top:5mm;border-top:0.3pt solid #000;`;
  const number = '"Page\\a0 " counter(page) "\\a0of\\a0 " counter(pages)';
  const box = (place: string, style: string, content: string) => `@${place}{${style}content:${content}}`;
  const sides = (outer: string, inner: string) =>
    (band === undefined
      ? box(`top-${outer}`, `${head}font-weight:600;text-align:${outer};`, cssString(title)) +
        box(`top-${inner}`, `${head}text-align:${inner};`, cssString(subject))
      : blackHead([band, `${title} · ${subject}`])) +
    box(`bottom-${outer}`, `${foot}text-align:${outer};`, number) +
    box(`bottom-${inner}`, `${foot}text-align:${inner};`, cssString(origin));
  const { top, bottom, inner, outer } = margin;
  return `@page ${page}:right{margin:${top}mm ${outer}mm ${bottom}mm ${inner}mm;${sides('right', 'left')}}
@page ${page}:left{margin:${top}mm ${inner}mm ${bottom}mm ${outer}mm;${sides('left', 'right')}}`;
}

/** The whole head of a page as a band, white on black: a browser prints it whatever else is on the page. */
function blackHead(lines: readonly string[]): string {
  const face = 'font:600 8.6pt/11.5pt "IBM Plex Sans";color:#fff;background:#000;white-space:pre-wrap;';
  const room =
    'width:100%;box-sizing:border-box;margin:5.5mm 0 4.5mm;padding:1mm 3mm;text-align:left;vertical-align:middle;';
  return `@top-left{content:none}@top-right{content:none}@top-center{${face}${room}content:${lines.map(cssString).join('"\\a "')}}`;
}

/** For a first page, which has its title below. */
function firstHead({ band }: PageFurniture): string | undefined {
  return band === undefined ? undefined : blackHead([band]);
}

/** A CSS string; `<` is escaped too, so that no title can end the style element. */
function cssString(text: string): string {
  const escaped = text.replace(/[\\"<>\p{Cc}]/gu, (sign) => `\\${sign.codePointAt(0)!.toString(16)} `);
  return `"${escaped}"`;
}

function typography(paper: Paper): string {
  const room = noteColumn + noteGap;
  return `
:root{--sans:"IBM Plex Sans",sans-serif;--serif:"IBM Plex Serif",serif;--room:${room}mm;--text:${textWidth(paper)}mm;--full:${contentWidth(paper)}mm}
*{box-sizing:border-box}
html{font:10.5pt/14pt var(--serif);color:#000;background:#fff;font-variant-numeric:lining-nums tabular-nums;-webkit-text-size-adjust:100%;print-color-adjust:exact}
body{margin:0}
p,ul,ol,dl,blockquote,pre{margin:0 0 7pt;orphans:2;widows:2}
ul,ol{padding-left:5.5mm}
li{margin:0 0 2.5pt}
li>p{margin:0 0 2.5pt}
.lesson :is(ul,ol):not(.exercise-list,.choices)>li:last-child:not(:first-child){break-before:avoid}
.lesson p:not(.long){break-inside:avoid}
ul>li::marker{content:"–\\2002"}
ol>li::marker{font:600 9pt var(--sans)}
strong,b{font-weight:600}
a{color:inherit;text-decoration-thickness:.4pt;text-underline-offset:2pt}
code{font:9.5pt var(--sans)}
h1,h2,h3,h4{font-family:var(--sans);font-weight:600;break-after:avoid;break-inside:avoid;text-wrap:balance;margin:0}
h1{font-size:25pt;line-height:29pt;letter-spacing:-.012em}
h2{font-size:14pt;line-height:18pt;margin:20pt 0 6pt;padding-top:5pt;border-top:.9pt solid #000}
h3{font-size:11pt;line-height:14pt;margin:11pt 0 4pt;padding-top:1pt}
h4{font-size:9.5pt;line-height:14pt;margin:9pt 0 2pt}
h2+h3{margin-top:5pt}
hr{border:0;border-top:.4pt solid #000;margin:12pt 0}
blockquote{margin-left:0;padding-left:5mm;border-left:.4pt solid #000;font-style:italic}

.lesson,.workings{padding-right:var(--room)}
.lesson>h2,.lesson>section>h2,.workings>h2{margin-right:calc(-1*var(--room))}
.lesson figure,.lesson>.table-room,.lesson>section>.table-room,.workings>.table-room{margin-right:calc(-1*var(--room));clear:right}
figure{margin:10pt 0 12pt;break-inside:avoid}
figure>svg,figure>img{display:block}
.lesson img{max-width:100%;height:auto}
figcaption,caption{font:8.5pt/11.5pt var(--sans);text-align:left;break-after:avoid}
figcaption .source{display:block;margin:1.5pt 0 0}
figcaption{max-width:var(--text);margin-top:4pt;break-before:avoid;break-after:auto;break-inside:avoid}
figcaption b,caption b,figcaption strong,caption strong{font-weight:600}
caption{caption-side:top;padding:0 0 3.5pt}
.caption-number{font-weight:600}
.table-room{margin-top:9pt;margin-bottom:11pt;break-inside:avoid}
.table-room.long{break-inside:auto}
:is(.lesson,.workings) .table-room.long::before{content:'';display:block;height:50mm;margin-bottom:-50mm;break-inside:avoid}
table{border-collapse:collapse;min-width:min(100%,var(--text));font:8.8pt/12pt var(--sans);border-top:.9pt solid #000;border-bottom:.9pt solid #000}
thead{display:table-header-group;break-after:avoid}
tr{break-inside:avoid}
th,td{padding:2.6pt 3.4mm 2.6pt 0;text-align:left;vertical-align:top;font-weight:400}
th:last-child,td:last-child{padding-right:0}
thead th{font-weight:600;font-size:8pt;line-height:10.5pt;vertical-align:bottom;border-bottom:.5pt solid #000}
tbody tr+tr>*{border-top:.25pt solid #000}
tbody th{font-weight:600}
tbody tr.total>*{border-top:.5pt solid #000;font-weight:600}
tbody tr.flown>*{border-top:0;padding-top:0}
tr.flown{break-before:avoid}
.number,td[align=right],th[align=right]{text-align:right;white-space:nowrap}
.gates td small{display:block;font:400 7.8pt/10.5pt var(--sans);white-space:normal}
td[align=center],th[align=center]{text-align:center;padding-left:1.5mm;padding-right:1.5mm}
.source{font:7.8pt/10.5pt var(--sans);margin:3pt 0 9pt}
.table-room+.source{margin-top:-7pt;break-before:avoid}

.note{float:right;clear:right;width:${noteColumn}mm;margin:1pt calc(-1*var(--room)) 6pt ${noteGap}mm;padding-top:2pt;border-top:.9pt solid #000;font:8.3pt/11pt var(--sans);break-inside:avoid}
.note :is(p,ul,ol){margin:0 0 5.5pt}
.note li{margin:0}
.note :is(ul,ol){padding-left:4mm}
.note li>*{margin:0}
.note>:last-child{margin-bottom:0}
.note.instructor{position:relative;z-index:0;background:#fff}
.note.instructor::before{content:'';position:absolute;z-index:-1;inset:0 0 0 -3mm;background:#fff}
.note-room{border-color:transparent}
.caution .note{margin-right:calc(-1*var(--room) - 4mm - .9pt)}
.student .note{margin-right:calc(-1*var(--room) - 4mm)}
.noted.whole{break-inside:avoid}
.student{border-left:2pt solid #000;padding:1pt 4mm 1pt 4mm;margin:9pt 0 11pt;break-inside:avoid}
.student>.label{font:600 9pt/12pt var(--sans);margin:0 0 2pt}
.student>:last-child{margin-bottom:0}
.ruled-margin{display:none}
.caution{border:.9pt solid #000;padding:7pt 4mm 6pt;margin:9pt .6pt 11pt;break-inside:avoid}
.caution>:is(h2,h3,h4,.label):first-child{font:600 9.5pt/12pt var(--sans);margin:0 0 4pt;padding:0;border:0}
.caution>:last-child{margin-bottom:0}
section[data-footnotes]{font-size:8.8pt;line-height:11.5pt}
section[data-footnotes] h2{font-size:9.5pt;line-height:12pt;border-top-width:.4pt;margin-top:14pt}
.sr-only{position:absolute;width:1px;height:1px;overflow:hidden;clip-path:inset(50%);white-space:nowrap}

.page-band{display:none}
.grade-band{margin:0 0 10pt;border:2.4pt solid #000;padding:5pt 4mm 6pt;font:9pt/12.2pt var(--sans);break-inside:avoid;background:#fff}
.grade-band .grade-name{margin:-5pt -4mm 5pt;padding:2.5pt 4mm 3pt;background:#000;color:#fff;font:600 10.5pt/14pt var(--sans);text-transform:uppercase;letter-spacing:.04em}
.grade-band ul{margin:0;padding-left:4.5mm}
.grade-band li{margin:0 0 2pt}
.grade-band .from{font-size:7.8pt;white-space:nowrap}
.grade-band .from::before{content:'· '}
.grade-band .remedy{margin:3pt 0 0}
.grade-band.not-to-be-flown{background:#000;color:#fff;font:600 10pt/13.5pt var(--sans)}
.grade-band.not-to-be-flown .grade-name{font-size:15pt;line-height:19pt;margin-bottom:1pt}
s.not-to-be-flown{text-decoration:line-through;text-decoration-thickness:.9pt}
.grade-mark{display:inline-block;padding:0 1.2mm;border:.5pt solid #000;font-weight:400;white-space:nowrap}
.grade-mark.not-to-be-flown{background:#000;color:#fff;font-weight:600}
.masthead{border-top:2.4pt solid #000;padding-top:6pt}
.masthead .school{font:8.5pt/11pt var(--sans);margin:0 0 15pt;display:flex;justify-content:space-between;gap:6mm}
.masthead .school>:last-child{flex:0 0 86mm;text-align:right;white-space:nowrap}
.masthead h1{max-width:150mm}
.masthead .sub{font:12pt/16pt var(--sans);margin:4pt 0 0}
.setting{display:grid;grid-template-columns:repeat(3,1fr);column-gap:6mm;margin:15pt 0 0;border-bottom:.4pt solid #000}
.setting>div{border-top:.4pt solid #000;padding:4pt 0 6pt}
.setting dt{font:7.8pt/10pt var(--sans)}
.setting dd{margin:1.5pt 0 0;font:600 10.5pt/13pt var(--sans)}
.setting dd small{display:block;font:400 8.3pt/11pt var(--sans)}
.aim{margin:16pt 0 0;font-size:12pt;line-height:16.5pt;padding-right:var(--room)}
.aim h2{border:0;margin:0 0 4pt;padding:0;font-size:9.5pt;line-height:12pt}
.packet-cautions{margin:15pt .6pt 14pt;font:9pt/12.2pt var(--sans);break-inside:auto}
.packet-cautions h2{font-size:11pt!important;line-height:14pt!important}
.packet-cautions h3{font:600 9pt/12pt var(--sans);margin:7pt 0 2pt}
.packet-cautions ul{margin:0;padding-left:4.5mm}
.packet-cautions li{margin:0 0 2pt;break-inside:avoid}
.packet-cautions .from{display:block;font-size:7.8pt;line-height:10.5pt}
.workings{break-before:page;font-size:9.5pt;line-height:12.8pt}
.workings>h2{margin-top:0;border-top-width:2.4pt;font-size:16pt;line-height:20pt}
.workings h3{margin-top:10pt}
.workings h3+p{break-after:avoid}
.workings .formula{white-space:normal}
.workings i{font-family:var(--serif)}
.workings li{margin-bottom:1.5pt}
.workings h4{margin:6pt 0 1.5pt;font-size:8.5pt;line-height:11pt}
.workings .input-source{font:400 8pt/11pt var(--sans);margin:0 0 2pt;break-after:avoid}
.debrief-form{break-inside:avoid}
.lesson p:has(+.debrief-form){break-after:avoid}
.inputs{break-inside:avoid;columns:2;column-gap:6mm;margin:0 calc(-1*var(--room)) 0 0;font:8pt/10.4pt var(--sans);border-top:.4pt solid #000}
.inputs>div{display:flex;justify-content:space-between;gap:3mm;padding:1.7pt 0;border-bottom:.25pt solid #000;break-inside:avoid}
.inputs dd{margin:0;text-align:right}
.workings table{font-size:8pt;line-height:10.4pt}
.workings .chain{min-width:var(--full)}
.chain tbody{break-inside:avoid}
.exercises>.source:first-child{break-inside:avoid;break-after:avoid;margin:0 0 6pt}
.exercises>.source:last-child{break-before:avoid;break-inside:avoid}
.student td:empty{height:8mm}
.exercise-list{padding-left:6.5mm}
.exercise{margin:0 0 11pt;break-inside:avoid}
.exercise .table-room{margin:4pt 0 5pt}
.choices{margin:0 0 4pt;padding-left:5.5mm}
.choices>li{margin:0;padding-right:14mm;position:relative}
.choices.short{display:grid;grid-template-columns:1fr 1fr}
.right-choice{position:absolute;margin-left:.35em;white-space:nowrap;font:600 9pt/14pt var(--sans)}
.writing-lines>span{display:block;height:9mm;border-bottom:.4pt solid #000}
.worked-answer{padding-top:2pt;font:8.3pt/10.6pt var(--sans)}
.worked-answer p{margin:0}
sup{font-size:.72em;line-height:0;vertical-align:baseline;position:relative;top:-.42em}
.workings th,.workings td{padding-top:1.7pt;padding-bottom:1.7pt}
.workings thead th{font-size:7.6pt;line-height:9.6pt}
.chain .chapter{padding-top:6pt;border-top:.5pt solid #000}
.chain thead+tbody .chapter{border-top:0}
.chain td:last-child{white-space:nowrap}
.workings caption{font-weight:600}
.chain td:first-child{width:40mm}`;
}

// What only one edition has is in rooms of the same height in both, given by its lines, or lies under the page.
function editionRooms(paper: Paper): string {
  return `
@media print{
.note.instructor,.note-room{height:calc(var(--lines)*11pt + 3pt)}
.writing-lines,.worked-answer{height:calc(var(--rules)*9mm)}
.ruled-margin{display:block;position:fixed;z-index:-1;top:0;left:${textWidth(paper) + noteGap}mm;width:${noteColumn - 0.6}mm}
.ruled-margin>span{display:block;height:9mm;border-bottom:.25pt solid #8a8a8a}
.edition-student :is(.masthead,.grade-band:not(.not-to-be-flown),.packet-cautions,.workings,figure,.table-room,h2,.source){background:#fff}
.edition-student :is(.packet-cautions,figure,.table-room,h2){position:relative}
.edition-student :is(.packet-cautions,figure,.table-room,h2)::after{content:'';position:absolute;z-index:-1;inset:-4mm 0 -4mm var(--text);background:#fff}
}`;
}

function screenCss(paper: Paper): string {
  return `
@media screen{
.page-band{display:block;position:sticky;top:var(--bar-top,0px);z-index:1;margin:0 -20px 14px;padding:8px 20px;background:#000;color:#fff;font:600 16px/1.35 var(--sans)}
.grade-band{font-size:15px;line-height:1.45}
.grade-band.not-to-be-flown{font-size:16px;line-height:1.45}
.grade-band .grade-name,.grade-band.not-to-be-flown .grade-name{font-size:18px;line-height:1.4}
.grade-band .from{font-size:14px;white-space:normal}
.note-room{display:none}
.masthead .school>:last-child{flex:none;white-space:normal}
html{font-size:17px;line-height:1.5}
body{max-width:calc(${contentWidth(paper)}mm + 40px);margin:0 auto;padding:24px 20px 64px}
table,figcaption,caption,.setting dt,.source,.note,.student>.label,.packet-cautions,.workings,.workings table,.worked-answer,.inputs,.masthead .school{font-size:15px;line-height:1.45}
thead th,.setting dd small,.gates td small,.packet-cautions .from{font-size:14px;line-height:1.4}
.setting dd{font-size:17px;line-height:1.35}
.aim{font-size:19px;line-height:1.5}
h3,.packet-cautions h3{font-size:17px;line-height:1.35}
h4,.aim h2,.workings h4,.workings .input-source{font-size:15px;line-height:1.4}
figure>svg,figure>img{max-width:100%;height:auto}
.table-room{overflow-x:auto}
.table-room:focus-visible,a:focus-visible{outline:2px solid #000;outline-offset:2px}
.workings{margin-top:56px}
}
@media screen and (max-width:800px){
:root{--room:0px}
.note,.caution .note,.student .note{float:none;width:auto;margin:0 0 12px;padding-left:12px;border-top:0;border-left:3px solid #000}
.noted{display:flex;flex-direction:column}
.noted>.note{order:1}
.setting{grid-template-columns:repeat(2,1fr)}
h1{font-size:30px;line-height:1.2}
.masthead .school{flex-direction:column;gap:0}
}
@media screen and (max-width:420px){.setting{grid-template-columns:1fr}.inputs{columns:1}}`;
}
