/** The system at one hour as a drawing whose parts a page colours: sun, panels, loop, tank with its relief valve, heater behind, tap. */

/** Frame of the tank in the drawing, for its layers. [drawing units] */
export const TANK = { x: 236, top: 74, width: 96, height: 186 } as const;

const { x, top, width, height } = TANK;
const COIL = `M${x} 196h64q12 0 12 9t-12 9h-34q-12 0-12 9t12 9h34q12 0 12 9t-12 9H${x}`;

/** Empty of numbers; ids begin with `scene-`. */
export const SCENE_SVG = `<svg id="scene" viewBox="0 0 620 300" role="img" aria-label="Sun, panels, pump, tank with its layers, heater and tap at the hour shown; the numbers stand beside it.">
<circle id="scene-sun" cx="44" cy="40" r="10"/>
<polygon id="scene-absorber" points="40,140 132,72 154,102 62,170"/>
<text id="scene-absorber-words" x="34" y="196"></text><text x="34" y="213" class="quiet">panels</text>
<path class="pipe" d="M143 87H196V196H${x}M${x} 250H180V236H90V155"/>
<path id="scene-loop" d="M143 87H196V196H${x}${COIL.replace(`M${x} 196`, '')}H180V236H90V155"/>
<circle class="part" cx="150" cy="236" r="11"/><path class="part" d="M155 236l-8-5v10z"/>
<text id="scene-pump-words" x="150" y="268" text-anchor="middle"></text>
<clipPath id="scene-shape"><rect x="${x}" y="${top}" width="${width}" height="${height}" rx="12"/></clipPath>
<g id="scene-layers" clip-path="url(#scene-shape)"></g>
<rect class="part" x="${x}" y="${top}" width="${width}" height="${height}" rx="12"/>
<path class="coil-edge" d="${COIL}"/><path class="coil" d="${COIL}"/>
<text id="scene-top" x="${x + width + 8}" y="${top + 22}"></text><text id="scene-bottom" x="${x + width + 8}" y="${top + height - 22}"></text>
<path class="part" d="M${x + 24} ${top}V56M${x + 15} 56h18M${x + 24} 56l-9-9h18z"/>
<path id="scene-relief" d="M${x + 12} 40q-6-6 0-12t0-12M${x + 24} 40q-6-6 0-12t0-12M${x + 36} 40q-6-6 0-12t0-12"/>
<text id="scene-relief-words" x="${x - 6}" y="30" text-anchor="end"></text>
<path id="scene-draw" d="M${x + 72} ${top}V46H444V92"/>
<rect class="part" x="412" y="92" width="64" height="128" rx="8"/>
<path id="scene-flame" d="M444 208c-13 0-17-11-9-21c2 5 4 7 6 7c-2-12 3-17 8-22c-1 12 12 15 7 28c-1 5-6 8-12 8z"/>
<text id="scene-heater-words" x="444" y="242" text-anchor="middle"></text><text x="444" y="258" text-anchor="middle" class="quiet" id="scene-heater-kind">heater</text>
<path id="scene-tap" d="M460 92V70H548V88"/><path class="part" d="M536 70v-10M526 60h20M530 88h24v8M554 96v10h12"/>
<path id="scene-water" d="M560 112v10M566 110v14M554 110v8"/>
<text id="scene-tap-words" x="612" y="146" text-anchor="end"></text>
<path class="mains" d="M${x + width} 246H384V284H612"/><text x="612" y="278" text-anchor="end" class="quiet">cold mains</text>
</svg>`;
