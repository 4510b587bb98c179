/** Style sheet of the HTML report: light, dark, print; no font or picture from outside. */
import { type ColourRole, cssVariable, DARK, LIGHT, type Palette } from '../charts/palette.ts';

const colours = (palette: Palette): string =>
  (Object.keys(palette) as ColourRole[]).map((role) => `${cssVariable(role)}:${palette[role]}`).join(';');

const LIGHT_PAGE =
  '--page:#fff;--card:#f5f6f8;--line:#d5d9df;--link:#1d5c96;--danger:#a3231f;--warning:#8a5a00;--note:#3a4f7a';
const DARK_PAGE =
  '--page:#15181c;--card:#1e2329;--line:#3a4048;--link:#7db7ee;--danger:#ff8a73;--warning:#f2b134;--note:#9db1de';

/** The whole style sheet. */
export const STYLE = `
:root{color-scheme:light;${colours(LIGHT)};${LIGHT_PAGE}}
@media screen and (prefers-color-scheme:dark){:root{color-scheme:dark;${colours(DARK)};${DARK_PAGE}}}
*{box-sizing:border-box}
html{font-size:16px}
body{margin:0;background:var(--page);color:var(--nl-ink);font:1rem/1.5 system-ui,sans-serif}
main{max-width:1000px;margin:0 auto;padding:24px 20px 64px}
h1{font-size:1.75rem;line-height:1.2;margin:0 0 4px}
h2{font-size:1.25rem;margin:44px 0 10px;padding-top:14px;border-top:1px solid var(--line)}
h3{font-size:1rem;margin:22px 0 6px}
p{margin:0 0 10px;max-width:75ch}
a{color:var(--link)}
nav ul{list-style:none;display:flex;flex-wrap:wrap;gap:4px 16px;margin:14px 0 0;padding:0;font-size:.9rem}
.quiet{color:var(--nl-muted);font-size:.9rem}
.leads{display:grid;gap:14px;grid-template-columns:repeat(auto-fit,minmax(min(100%,270px),1fr));margin:22px 0 12px}
.card{background:var(--card);border:1px solid var(--line);border-radius:8px;padding:14px 18px}
.card h2{font-size:1rem;margin:0 0 8px;padding:0;border:0;overflow-wrap:anywhere}
.card dl{margin:0}
.card dt{color:var(--nl-muted);font-size:.9rem}
.card dd{margin:0 0 8px}
.card dd:last-child{margin:0}
.big{font-size:1.9rem;line-height:1.15;font-weight:650;font-variant-numeric:tabular-nums;white-space:nowrap}
.one{grid-template-columns:1fr}
.one dl{display:grid;gap:8px 18px;grid-template-columns:repeat(auto-fit,minmax(min(100%,250px),1fr))}
.letter{display:inline-block;min-width:1.6em;padding:0 .35em;margin-right:.4em;border-radius:4px;background:var(--nl-ink);color:var(--page);text-align:center;font-weight:650}
.scroll{overflow-x:auto}
table{border-collapse:collapse;font-size:.9rem;font-variant-numeric:tabular-nums}
th,td{padding:4px 10px;border-bottom:1px solid var(--line);text-align:right;vertical-align:top}
thead th{vertical-align:bottom;font-weight:600;max-width:16em;overflow-wrap:break-word}
tbody th,td.text,th.text{text-align:left;font-weight:400}
tbody th a{color:inherit;text-decoration-color:var(--nl-muted);text-underline-offset:3px}
td{white-space:nowrap}
td.text{white-space:normal;overflow-wrap:break-word;min-width:5em}
.assumptions td:nth-child(2){max-width:15em}
.assumptions td:last-child{min-width:18em}
tbody tr:last-child.sum>*{font-weight:650;border-top:2px solid var(--nl-muted)}
tr.lead>*{font-weight:650}
.date{display:block;color:var(--nl-muted);font-size:.82rem;font-weight:400}
.difference{color:var(--nl-muted);text-align:left;font-weight:400}
.moved{color:var(--nl-ink);background:var(--card);border-radius:4px;padding:1px 5px}
figure{margin:12px 0 8px}
figure svg{display:block;max-width:100%;height:auto}
.narrow{display:none}
figcaption{color:var(--nl-muted);font-size:.9rem;max-width:75ch;margin-top:6px}
details{margin:4px 0 14px}
summary{cursor:pointer;color:var(--link);font-size:.9rem}
.cautions{list-style:none;margin:0;padding:0}
.cautions li{border-left:5px solid var(--nl-muted);background:var(--card);border-radius:0 6px 6px 0;padding:10px 14px;margin:0 0 10px}
.cautions li.danger{border-color:var(--danger)}
.cautions li.warning{border-color:var(--warning)}
.cautions li.note{border-color:var(--note)}
.cautions strong{text-transform:capitalize}
.danger strong{color:var(--danger)}
.warning strong{color:var(--warning)}
.cautions p{margin:2px 0}
.plain{list-style:none;margin:0 0 10px;padding:0}
.definitions dt{font-weight:600}
.definitions dd{margin:0 0 8px;max-width:75ch}
.definitions dt:target,.definitions dt:target+dd{background:var(--card)}
@media (max-width:640px){main{padding:16px 14px 40px}.wide{display:none}.narrow{display:block}th,td{padding:4px 6px}}
@media print{
@page{margin:14mm}
html{font-size:9.5pt}
main{max-width:none;padding:0}
.wide{display:block}.narrow{display:none}
h2,h3{break-after:avoid}
figure,.card,.cautions li,tr{break-inside:avoid}
.scroll{overflow:visible}
th,td{padding:2px 5px}
details:not([open]),nav{display:none}
a{color:inherit;text-decoration:none}
}`;
