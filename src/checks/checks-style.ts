/** What the page of checks needs beyond the style of every page. */
export const checksCss = `
.checks-page h2{margin-top:16pt}
.checks-page .table-room{margin-top:4pt}
table.checks .number+:not(.number){padding-left:2mm}
.checks-page h3+p,.checks-page h2+p:has(+.table-room){break-after:avoid}
.checks-page .wrong li{font-size:9.5pt;line-height:12.5pt}
.checks-page .wrong li::first-letter{text-transform:uppercase}
.checks-page small{font:400 8pt/10.4pt var(--sans)}
table.checks{width:100%;table-layout:fixed;font-size:8pt;line-height:10.4pt}
table.checks th,table.checks td{padding:1.5pt 2.5mm 1.5pt 0}
table.checks th:last-child,table.checks td:last-child{padding-right:0}
table.checks thead th{font-size:7.6pt;line-height:9.6pt}
table.checks .group th{font-weight:600;padding-top:6pt;border-top:.5pt solid #000}
table.checks thead+tbody .group th{border-top:0}
table.checks .group{break-after:avoid}
table.checks .group th::first-letter{text-transform:uppercase}
table.checks td:first-child::first-letter{text-transform:uppercase}
table.checks .noted{break-after:avoid}
table.checks tr.of-line>td{border-top:0;padding-top:0;font-style:italic;font-family:var(--serif)}
.figures th:nth-child(1){width:22%}
.figures th:nth-child(2){width:23%}
.figures th:nth-child(3){width:13%}
.figures th:nth-child(4){width:11%}
.figures th:nth-child(5){width:11.5%}
.figures th:nth-child(6){width:10.5%}
.handbooks th:nth-child(1){width:40%}
.handbooks th:nth-child(2){width:24%}
.trade th:nth-child(1){width:20%}
.trade th:nth-child(2){width:18%}
.trade th:nth-child(3){width:20%}
.trade th:nth-child(4){width:16%}
@media screen{table.checks,table.checks thead th,.checks-page small,.checks-page .wrong li{font-size:14px;line-height:1.4}table.checks{min-width:44rem}}`;
