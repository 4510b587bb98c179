/** A small drawing of the system as built: panels, pump, tank with coil, heater, tap. */
import type { SystemDesign } from '@noonloop/sim-core';
import { escapeHtml } from '../escape.ts';
import { formatQuantity, type Units } from '../units.ts';

const WIDTH = 320;
const HEIGHT = 132;
/** Panels that are drawn; more are written. */
const MOST = 6;

const word = (x: number, y: number, text: string): string =>
  `<text x="${x}" y="${y}" font-size="12" text-anchor="middle" fill="var(--nl-ink)">${escapeHtml(text)}</text>`;

/** Slanted panels side by side, sun over them, and the hot pipe from the last one's edge to the tank. */
function panelsOf(count: number): string {
  const shown = Math.min(count, MOST);
  const step = Math.min(26, 74 / shown);
  const edge = (22 + shown * step).toFixed(1);
  const panels = Array.from(
    { length: shown },
    (_, at) =>
      `<path d="M${(16 + at * step).toFixed(1)} 66l12 -34h${(step - 3).toFixed(1)}l-12 34z" fill="var(--nl-card)" stroke="var(--nl-ink)" stroke-width="1.5"/>`,
  );
  return `<circle cx="22" cy="18" r="9" fill="var(--nl-sun)" stroke="var(--nl-sun-line)"/>${panels.join('')}<path d="M${edge} 40H128v20" fill="none" stroke="var(--nl-solar)" stroke-width="2"/>`;
}

/** The drawing, with what the parts are in words under them. */
export function systemDrawing({ array, tank, heater, pump }: SystemDesign, units: Units): string {
  const { panels, collector } = array;
  const size = `${panels} × ${formatQuantity(collector.area, 'area', units)}`;
  const { second } = tank;
  const behind = second === null ? '' : formatQuantity(second.volume, 'volume', units);
  const volume = `${formatQuantity(tank.volume, 'volume', units)}${second === null ? '' : ` + ${behind}`}`;
  const fuel = heater.carrier === 'electricity' ? 'electric' : 'burner';
  const cold = '<path d="M20 66v34h118" fill="none" stroke="var(--nl-solar)" stroke-width="2"/>';
  const pumpMark =
    '<circle cx="92" cy="100" r="9" fill="var(--nl-page)" stroke="var(--nl-ink)" stroke-width="1.5"/><path d="M96 94v12l-9 -6z" fill="var(--nl-ink)"/>';
  const tankMark = `<rect x="128" y="26" width="54" height="84" rx="10" fill="var(--nl-page)" stroke="var(--nl-ink)" stroke-width="1.5"/><path d="M128 60h28q10 0 10 7t-10 7h-16q-8 0 -8 6t8 6h20q8 0 8 7t-8 7h-32" fill="none" stroke="var(--nl-solar)" stroke-width="2"/>`;
  const hot = '<path d="M155 26v-12h64v22M246 36v-22h34v36" fill="none" stroke="var(--nl-tank-top)" stroke-width="2"/>';
  const heaterMark =
    '<rect x="210" y="36" width="46" height="66" rx="6" fill="var(--nl-page)" stroke="var(--nl-ink)" stroke-width="1.5"/>';
  const flame =
    heater.carrier === 'electricity'
      ? '<path d="M236 62l-8 14h10l-8 14" fill="none" stroke="var(--nl-fuel)" stroke-width="2.5"/>'
      : '<path d="M233 94c-9 0 -12 -8 -6 -15c1 4 3 5 4 5c-1 -8 2 -12 6 -15c-1 8 8 10 5 19c-1 4 -4 6 -9 6z" fill="var(--nl-fuel)"/>';
  const tap =
    '<path d="M280 50v10M272 50h22v8M285 50v-6h-10h20" fill="none" stroke="var(--nl-ink)" stroke-width="2"/><path d="M294 64v6M280 66v8" stroke="var(--nl-tank-top)" stroke-width="2"/>';
  const words = [word(64, 84, size), word(155, 124, volume), word(233, 124, fuel), word(285, 92, 'taps')];
  const label = `Panels, ${size}, ${pump.drive === 'mains' ? 'pump on the mains' : 'pump on its own PV module'}, tank of ${volume} with a coil, heater behind it, taps${second === null ? '' : `; the second tank of ${behind} stands before the first on the cold water`}`;
  return `<svg viewBox="0 0 ${WIDTH} ${HEIGHT}" width="${WIDTH}" height="${HEIGHT}" font-family="system-ui, sans-serif" role="img" aria-label="${escapeHtml(label)}">${panelsOf(panels)}${cold}${pumpMark}${tankMark}${heaterMark}${hot}${flame}${tap}${words.join('')}</svg>`;
}
