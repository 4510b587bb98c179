/** Style sheet of every page: light, dark, print; no font or picture from outside. */
import { type ColourRole, cssVariable, DARK, LIGHT, type Palette } from '../charts/palette.ts';

const colours = (palette: Palette): string =>
  (Object.keys(palette) as ColourRole[]).map((role) => `${cssVariable(role)}:${palette[role]}`).join(';');

const TEXT = `
*{box-sizing:border-box}
html{font-size:16px;scroll-padding-top:8px}
body{margin:0;background:var(--nl-page);color:var(--nl-ink);font:1rem/1.5 system-ui,sans-serif}
main{max-width:1088px;margin:0 auto;padding:16px 24px 64px}
h1{font-size:1.25rem;line-height:1.3;margin:0;font-weight:600}
h2{font-size:1.125rem;line-height:1.33;margin:0 0 8px;font-weight:600}
h3{font-size:1rem;line-height:1.375;margin:0 0 4px;font-weight:600}
section{margin-top:32px;padding-top:16px;border-top:1px solid var(--nl-grid)}
.block,.long{margin:16px 0 0}
p{margin:0 0 8px;max-width:34em}
ul,ol{margin:0 0 8px;padding-left:20px;max-width:34em}
a{color:var(--nl-link)}
:focus-visible{outline:2px solid var(--nl-ink);outline-offset:2px}
.small,.quiet,figcaption,.hint{color:var(--nl-muted);font-size:.875rem;line-height:1.43}
.hint{display:none;margin:0 0 4px}
.hint.always{display:block}
b,strong{font-weight:600}
pre{overflow-x:auto;font-size:.875rem;line-height:1.43;background:var(--nl-card);padding:8px 12px;margin:8px 0}
`;

const SHEET = `
.first{display:grid;grid-template-columns:minmax(0,720px) minmax(0,1fr);gap:0 48px}
.first:has(>aside:empty){grid-template-columns:minmax(0,1fr)}
.first header{display:flex;flex-wrap:wrap;justify-content:space-between;gap:0 24px;align-items:baseline;margin:0 0 12px}
.for{color:var(--nl-muted);font-size:.875rem;margin:0}
.answer{font-size:1.5rem;line-height:1.25;font-weight:600;margin:0 0 8px;max-width:none;text-wrap:pretty}
.decides{font-size:1.125rem;line-height:1.4;margin:0 0 12px;max-width:none}
.alarm{margin:0 0 16px;max-width:none}
nav ul{list-style:none;margin:0 0 16px;padding:0;font-size:.875rem}
nav li a{display:inline-block;padding:3px 0;min-height:24px}
aside svg{display:block;max-width:100%;height:auto;margin:0 0 8px}
aside .system{font-size:.875rem;line-height:1.43}
.sheet .system{display:none;max-width:none}
.facts{margin:8px 0 0;font-size:.875rem;line-height:1.43}
.facts p{max-width:none;margin:0 0 2px}
.figures{display:grid;grid-template-columns:repeat(3,1fr);gap:0 24px;margin:16px 0 0;border-top:1px solid var(--nl-grid);padding-top:8px}
.figures h2{font-size:.875rem;color:var(--nl-muted);font-weight:400;margin:0}
.figures p{margin:0;max-width:none;font-variant-numeric:tabular-nums}
.figures .big{font-size:1.25rem;line-height:1.3;font-weight:600}
.months{border-collapse:collapse;width:100%;table-layout:fixed;margin:4px 0 0;font-variant-numeric:tabular-nums}
.months caption{text-align:left;font-weight:600;padding:0 0 2px}
.months th,.months td{border:0;padding:0 2px;text-align:center;font-weight:400;font-size:.8125rem;line-height:1.35;white-space:nowrap}
.months thead th{color:var(--nl-muted)}
.months th.who{text-align:left;width:3em}
.months .full{font-weight:600}
.months td.who{width:3em}
.hidden{position:absolute;width:1px;height:1px;overflow:hidden;clip-path:inset(50%)}
.cell{display:block;height:28px;border:1px solid var(--nl-axis);position:relative;overflow:hidden}
.cell i{position:absolute;left:0;right:0;bottom:0;background:var(--nl-solar)}
.compare{width:100%;margin:12px 0 0}
.compare thead th{overflow-wrap:anywhere}
.compare .range{display:inline;margin-left:.5em}
.compare tbody th{min-width:8.5em}
`;

const PARTS = `
.letter{white-space:nowrap;font-weight:600}
.scroll{overflow-x:auto;margin:0 0 8px}
table{border-collapse:collapse;font-size:.875rem;line-height:1.43;font-variant-numeric:tabular-nums}
caption{text-align:left}
th,td{padding:3px 12px 3px 0;border-bottom:1px solid var(--nl-grid);text-align:right;vertical-align:top}
thead th{vertical-align:bottom;font-weight:600;max-width:11em;border-bottom-color:var(--nl-axis)}
tbody th,td.text,th.text{text-align:left;font-weight:400}
tbody th a{color:inherit;text-decoration-color:var(--nl-axis);text-underline-offset:3px}
td{white-space:nowrap}
td.text{white-space:normal;overflow-wrap:break-word}
tbody tr.sum>*{font-weight:600;border-top:1px solid var(--nl-ink)}
.date,.range{display:block;color:var(--nl-muted);font-size:.8125rem;font-weight:400}
td.difference{color:var(--nl-ink)}
figure{margin:16px 0 0;max-width:720px}
figure svg{display:block;max-width:100%;height:auto}
figure h3{margin:0 0 2px}
.narrow{display:none}
figcaption{max-width:45em;margin-top:4px}
details{margin:4px 0 8px}
summary{cursor:pointer;color:var(--nl-link);font-size:.875rem;min-height:24px}
.badge{display:inline-flex;align-items:center;gap:4px;border:1.5px solid currentColor;border-radius:4px;padding:0 6px;font-size:.8125rem;line-height:1.5;font-weight:600;vertical-align:1px;margin-right:4px}
.badge svg{width:14px;height:14px;display:block}
.danger .badge{background:var(--nl-danger);border-color:var(--nl-danger);color:var(--nl-page)}
.warning .badge{color:var(--nl-caution)}
.note .badge{color:var(--nl-muted)}
.cautions{list-style:none;margin:0;padding:0;max-width:720px}
.cautions li{padding:10px 14px;margin:0 0 8px;border-left:3px solid var(--nl-axis)}
.cautions li.danger{border-color:var(--nl-danger);background:var(--nl-danger-tint)}
.cautions li.warning{border-color:var(--nl-caution);background:var(--nl-caution-tint)}
.cautions p{margin:0 0 4px;max-width:40em}
.cautions .quiet{margin:0;max-width:46em}
.pair{display:flex;flex-wrap:wrap;gap:8px 40px}
.pair>div{flex:0 1 auto;min-width:0}
.pair>div+div{flex:1 1 18em}
.pair.even>div{flex:1 1 26em}
.even table{width:100%}
.definitions dt{font-weight:600;font-size:.875rem}
.definitions dd{margin:0 0 8px;max-width:40em;font-size:.875rem}
.definitions dt:target,.definitions dt:target+dd{background:var(--nl-card)}
`;

const NARROW = `
@media (max-width:1039px){
.first{grid-template-columns:minmax(0,1fr)}
.first>*{max-width:720px}
aside{margin-top:16px;padding-top:12px;border-top:1px solid var(--nl-grid)}
nav ul{columns:2}
}
@media (max-width:699px){
main{padding:12px 24px 40px}
.answer{font-size:1.25rem;line-height:1.3}
.decides{font-size:1rem;line-height:1.4}
.wide{display:none}.narrow{display:block}
.hint{display:block}
.figures{grid-template-columns:1fr;border:0;padding:0;gap:0}
.figures>div{display:flex;flex-wrap:wrap;gap:0 12px;border-top:1px solid var(--nl-grid);padding:6px 0}
.figures h2{flex:1 0 8em}
.pair{display:block}
.figures p{text-align:right;font-size:.875rem}
.figures .big{font-size:1rem}
.figures p:not(.big){flex-basis:100%}
.months th.who,.months td.who{width:2.4em}
.months th,.months td{padding:0 1px;font-size:.6875rem}
nav li a{padding:10px 0;min-height:44px}
summary{min-height:44px;padding-top:12px}
.scroll tbody th{position:sticky;left:0;background:var(--nl-page);max-width:9em}
table.list,table.list tbody,table.list tr,table.list th,table.list td{display:block;width:auto;text-align:left}
table.list thead{position:absolute;width:1px;height:1px;overflow:hidden;clip-path:inset(50%)}
table.list tr{border-bottom:1px solid var(--nl-grid);padding:6px 0}
table.list tr.sum>*{border:0}
table.list th,table.list td{border:0;padding:0;white-space:normal;position:static;max-width:none}
table.list tbody th{font-weight:600}
table.list td::before{content:attr(data-head);color:var(--nl-muted);margin-right:.5em}
table.list td[data-head=""]::before{content:none}
.compare,.compare tbody,.compare tr,.compare tbody th{display:block;text-align:left}
.compare thead tr{display:flex;flex-wrap:wrap;gap:0 16px}
.compare thead td,.compare thead .difference{display:none}
.compare thead th{border:0;max-width:none;padding:0}
.compare tr{border-top:1px solid var(--nl-grid);padding:4px 0}
.compare thead tr{border:0}
.compare tbody tr{display:flex;flex-wrap:wrap;gap:0 14px}
.compare tbody th{flex:0 0 100%;color:var(--nl-muted)}
.compare tbody th,.compare tbody td{border:0;padding:0}
.compare td::before{content:attr(data-head);color:var(--nl-muted);margin-right:.4em}
.compare td.difference:empty{display:none}
}
@media (max-width:400px){main{padding-left:16px;padding-right:16px}}
`;

const PRINT = `
@media print{
html{font-size:9.5pt}
body{line-height:1.3}
main{max-width:none;padding:0}
.first{display:block}.first.alone{break-after:page}
pre{white-space:pre-wrap;font-size:8pt}
.first>*{max-width:none}
nav,details:not([open]),.hint,.hint.always,.unprinted{display:none}
aside{margin:8pt 0 0;border:0;padding:0}
section{margin-top:7pt;padding-top:4pt}
section h2{margin-bottom:2pt}
.keep,figure,.cautions li,tr,.figures,dt,.block{break-inside:avoid}
.keep:has(>.pair),.keep:has(>table),.keep:has(>.scroll),.pair.block{break-inside:auto}
h2,h3,thead,dt{break-after:avoid}
p,li{orphans:3;widows:3;margin-bottom:3pt;max-width:none}
figure,.cautions{max-width:none}figure,.block,.long{margin-top:5pt}
.wide{display:block}.narrow{display:none}
figure svg{width:159mm;height:auto}
.scroll{overflow:visible}
.small,.quiet,figcaption,.facts,.for{font-size:8.5pt;line-height:1.35}
table{font-size:8pt;line-height:1.2}
.compare,.figures p{font-size:9.5pt;line-height:1.4}
.figures .big{font-size:13pt}
.months th,.months td{font-size:8.5pt}
.answer{font-size:15pt}.decides{font-size:12pt}
th,td{padding:1.3pt 8pt 1.3pt 0}
.compare th,.compare td{padding:2.5pt 8pt 2.5pt 0}
a{color:inherit;text-decoration:none}
.alarm a{display:none}
.cautions li,.cautions li.danger,.cautions li.warning{background:none;padding:1pt 8pt;margin-bottom:3pt;font-size:8pt;line-height:1.27}
.cautions p{max-width:none;margin:0 0 2pt}
ul,ol{padding-left:14pt;max-width:none;font-size:8.5pt;line-height:1.3}.pair{font-size:8.5pt;gap:0 6mm;flex-wrap:nowrap}
.pair.even>div{flex:1 1 0}
.even table{font-size:7.5pt}.even td,.even th{padding-right:4pt}
ul.notes{columns:2;column-gap:6mm}
.cautions.notes li.note{font-size:7.5pt;line-height:1.25;padding:0 5pt;margin-bottom:3pt}
.notes .quiet,.notes .badge{font-size:7pt}
table.list{display:block;columns:2;column-gap:6mm;font-size:7pt;line-height:1.17}
table.list thead{display:none}
table.list tbody,table.list tr{display:block}
table.list th,table.list td{display:inline;border:0;padding:0;white-space:normal}
table.list th{font-weight:600}
table.list td+td{color:#59606a}
.definitions{columns:2;column-gap:8mm;margin:0}
.definitions dt,.definitions dd{font-size:7.5pt;line-height:1.25;margin-bottom:2pt}
.cell,.cell i,.badge,figure svg,aside svg{print-color-adjust:exact;-webkit-print-color-adjust:exact}
}
@media (forced-colors:active){.cell i{background:repeating-linear-gradient(45deg,CanvasText 0 2px,Canvas 2px 5px)}.badge{border:2px solid CanvasText}}
`;

/** The whole style sheet. */
export const STYLE = `
:root{color-scheme:light;${colours(LIGHT)}}
@media screen and (prefers-color-scheme:dark){:root{color-scheme:dark;${colours(DARK)}}}
${TEXT}${SHEET}${PARTS}${NARROW}${PRINT}`;
