/** The page before anything runs: headings, places and controls; a script fills them. */
import { formatDay } from '../calendar.ts';
import { escapeHtml } from '../escape.ts';
import { STYLE } from '../formats/html-style.ts';
import { SCENE_SVG } from './scene-svg.ts';
import { LIVE_STYLE } from './style.ts';

/** What stands on the page from the start. Text in it is plain, escaped here. */
interface LiveSkeleton {
  readonly title: string;
  readonly note: string;
  /** Whether there are exercises: then the week stands first. */
  readonly exercises: boolean;
  /** Sources that the page's policy lets run, as hashes. */
  readonly hashes: readonly string[];
  /** For the script, as JSON. */
  readonly start: string;
  readonly weather: string;
  /** As `packBytes` gives it. */
  readonly engine: string;
  /** Of the foreign code in the engine. */
  readonly licences: string;
  readonly script: string;
}

const group = (id: string, title: string, open: boolean): string =>
  `<details${open ? ' open' : ''}><summary>${title}</summary><div id="group-${id}"></div></details>`;

const KNOBS = `<div class="knobs" role="region" aria-label="Knobs">
${group('roof', 'Panels and roof', true)}
${group('house', 'Tank, water and heater', true)}
${group('loop', 'Pump and limit', false)}
${group('money', 'Prices', false)}
<details id="all"><summary>All settings</summary><p class="small">Each field of the design by its place. Empty: the grey value holds. A number is in the unit in brackets; with another unit write it out, such as 80 gal.</p><div id="fields"></div></details>
</div>`;

const STATE = `<p class="state" id="state"></p><ul id="faults" class="fault"></ul>`;

const ANSWER = `<section class="result" aria-labelledby="answer-title">
<h2 id="answer-title" class="hidden">The answer</h2>
<p class="answer" id="does"></p><p class="decides" id="decides"></p>
<p class="alarm" id="alarm"><span id="alarm-words"></span> <a href="#cautions-part" id="to-cautions">See why and what to do</a></p>
<div class="since"><h2><label for="against">Since</label> <select id="against"></select><span id="turned"></span></h2><ul id="changes"></ul></div>
<div id="months"></div>
</section>`;

const EXERCISES = `<section class="exercises" aria-labelledby="exercises-title"><h2 id="exercises-title">Exercises</h2><p class="small noprint">Each link sets the knobs. <button type="button" id="again" disabled>Reset to the exercise</button></p><ol id="exercises"></ol></section>`;

const FIGURES = `<section class="result" aria-labelledby="figures-title"><h2 id="figures-title" class="hidden">Figures of the year</h2>
<div id="season" class="small"></div>
<div class="figures" id="figures"></div>
</section>`;

/** First days of weeks that can be chosen. */
const WEEKS = Array.from(
  { length: 52 },
  (_, week) => `<option value="${7 * week}">from ${formatDay(7 * week)}</option>`,
).join('');

/** The player of a week: drawing, strips, readings, days. */
const WEEK_PARTS = `<div class="player noprint"><button type="button" id="play">Play</button><label for="hour">Hour</label><input type="range" id="hour" min="0" max="167" step="1" value="36"><label for="speed">Speed</label><select id="speed"><option value="2">2 hours a second</option><option value="6" selected>6 hours a second</option><option value="24">a day a second</option></select></div>
<h3 id="clock"></h3>
<div class="scenes"><div>${SCENE_SVG}</div><dl id="readings"></dl></div>
<svg id="week-picture" viewBox="0 0 720 234" role="img" aria-label="Layers of the tank through the week, bottom to top; below them the sun, what is drawn, what the heater burns and when the relief valve opens; the days stand in the table."><text x="0" y="12">top</text><text x="0" y="118">bottom</text><text x="0" y="160">sun</text><text x="0" y="182">draw</text><text x="0" y="193">heater</text><text x="0" y="204">relief</text><g id="week-parts"></g><line id="week-mark" y1="0" y2="208" x1="0" x2="0"/><g id="week-days" aria-hidden="true"></g></svg>
<p class="small">Sun: filled where the pump runs, empty where it stands. Relief: hours in which the valve of the tank lets hot water out.</p>
<p class="hint">There are more columns: scroll sideways.</p><div class="scroll" role="region" aria-label="Table: the days in numbers" tabindex="0"><table><thead><tr><th scope="col" class="text">Day</th><th scope="col">sun, kWh/m²</th><th scope="col">from the tank, kWh</th><th scope="col">heater, kWh</th><th scope="col">hottest tank</th><th scope="col">hottest absorber</th><th scope="col">relief valve</th></tr></thead><tbody id="week-table"></tbody></table></div>`;

const YEAR = (
  open: boolean,
): string => `<details id="year"${open ? ' open' : ''}><summary>The year, day by hour</summary>
<div class="map"><div class="map-hours" aria-hidden="true"><span style="top:0">24</span><span style="top:25%">18</span><span style="top:50%">12</span><span style="top:75%">6</span><span style="top:100%">0</span></div><canvas id="map" width="365" height="24" role="img" aria-label="Hottest part of the tank, hour by hour through the year; the months’ table and the figures above say it in numbers."></canvas></div>
<div id="map-months" aria-hidden="true"></div><ul id="map-key"></ul><p class="small" id="map-marks"></p>
</details>`;

const WEEK = (open: boolean): string => `<details id="week"${open ? ' open' : ''}><summary>A week that plays</summary>
<p class="noprint"><label for="which">Week</label> <select id="which"><option value="hottest">the hottest</option><option value="coldest">the coldest</option>${WEEKS}</select></p>
${WEEK_PARTS}
</details>`;

const views = (...parts: readonly string[]): string => `<div class="views result">${parts.join('\n')}</div>`;

const PINS = `<section class="pins" aria-labelledby="pins-title"><h2 id="pins-title">Side by side</h2>
<ul id="pin-list"></ul>
<p class="noprint"><button type="button" id="pin">Pin this design</button> <label for="pin-instead" id="pin-instead-label" hidden>in place of</label> <select id="pin-instead" hidden><option value="0">A</option><option value="1">B</option><option value="2">C</option><option value="3">D</option></select></p>
<div id="comparison"></div></section>
<section class="noprint" aria-labelledby="take-title"><h2 id="take-title">Take away</h2>
<div class="take"><button type="button" data-take="report">Page to hand over</button><button type="button" data-take="design">Design file</button><button type="button" data-take="prices">Prices file</button><button type="button" data-take="link">Link</button><button type="button" data-take="months">Months, CSV</button><button type="button" data-take="hours">Hours, CSV</button><button type="button" data-take="print">Print</button></div>
<input id="link" readonly hidden aria-label="Link to this design"><p class="small" id="taken"></p></section>
<section id="cautions-part" aria-labelledby="cautions-title"><h2 id="cautions-title" tabindex="-1">Cautions</h2><p id="no-cautions">None of this design’s own.</p><ul class="cautions" id="cautions"></ul>
<details><summary>What holds for every such system</summary><ul class="cautions notes" id="general"></ul></details></section>
<p class="small">Made by noonloop, MIT licence. The licences of all code in this page stand in its source.</p>`;

/** A closing tag inside a script would end it, and so would an opened comment change how it is read. */
export const insideScript = (script: string): string =>
  script.replaceAll('</script', '<\\/script').replaceAll('<!--', '<\\!--');

/** A whole document. */
export function livePage(skeleton: LiveSkeleton): string {
  const { title, note, exercises, hashes, start, weather, engine, licences, script } = skeleton;
  const policy = `default-src 'none'; script-src ${hashes.join(' ')}; worker-src blob:; style-src 'unsafe-inline'; img-src data:; base-uri 'none'; form-action 'none'`;
  return `<!doctype html>
<html lang="en">
<head>
<meta charset="utf-8">
<meta name="viewport" content="width=device-width, initial-scale=1">
<meta http-equiv="Content-Security-Policy" content="${policy}">
<title>${escapeHtml(title)}</title>
<style>${STYLE}${LIVE_STYLE}</style>
</head>
<body>
<main class="live">
<header><h1>${escapeHtml(title)}</h1><div class="tools"><label for="units">Units</label><select id="units"><option value="metric">metric</option><option value="us">US</option></select><button type="button" id="undo" disabled>Undo</button><button type="button" id="reset" disabled>Reset</button></div></header>
<p class="small">${escapeHtml(note)}</p>
<noscript><p>This page computes years of weather: it needs JavaScript, no network.</p></noscript>
<p class="small" id="slow" hidden>This browser gives the page no worker: it runs slower here.</p>
<p class="sentence" id="sentence"></p>
<div class="sticky" aria-hidden="true"><p id="brief"></p><p id="brief-change"></p></div>
<p id="status" class="hidden" role="status"></p>
${exercises ? EXERCISES : ''}
<div class="board">
<div class="first">${STATE}
${exercises ? views(WEEK(true)) : ANSWER}
</div>
${KNOBS}
<div class="answers">
${exercises ? ANSWER : ''}
${FIGURES}
${exercises ? views(YEAR(false)) : views(YEAR(true), WEEK(false))}
${PINS}
</div>
</div>
</main>
<script type="application/json" id="start">${start}</script>
<script type="text/plain" id="weather">${weather}</script>
<script type="text/plain" id="licences">${licences}</script>
<script type="text/plain" id="engine">${engine}</script>
<script>${script}</script>
</body>
</html>
`;
}
