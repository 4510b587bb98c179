/** The two pictures: the system at one hour, and the layers of the whole week. */
import { COLDEST, colourOf, HOTTEST } from './colour.ts';
import { type LessonHour, shown, WEEK } from './week.ts';

const NAMESPACE = 'http://www.w3.org/2000/svg';
/** Most flow and most sun that the picture tells apart. [m³/s], [W/m²] */
const FULL_FLOW = 1e-4;
const FULL_SUN = 1000;

const at = (id: string): SVGElement => {
  const found = document.querySelector<SVGElement>(`#${id}`);
  if (found === null) throw new Error(`the page has no #${id}`);
  return found;
};

function rectangle(x: number, y: number, width: number, height: number, fill: string): SVGRectElement {
  const one = document.createElementNS(NAMESPACE, 'rect');
  for (const [name, value] of Object.entries({ x, y, width, height, fill })) one.setAttribute(name, String(value));
  return one;
}

/** Layers of the tank as rectangles, bottom first, within a frame. */
function stack(hour: LessonHour, x: number, top: number, width: number, height: number): SVGRectElement[] {
  const layer = height / hour.tank.length;
  // A hair of overlap, so that no line shows between layers.
  return [...hour.tank].map((celsius, index) =>
    rectangle(x, top + height - (index + 1) * layer, width, layer + 0.4, colourOf(celsius)),
  );
}

/** Shows one hour: layers, absorber, sun, flow and draw. */
export function drawScene(hour: LessonHour): void {
  at('layers').replaceChildren(...stack(hour, 330, 96, 130, 240));
  const hottest = Math.max(...hour.absorber);
  at('absorber').setAttribute('fill', colourOf(hottest));
  at('absorber-label').textContent = `${shown(hottest)} °C`;
  const sun = Math.min(hour.irradiance / FULL_SUN, 1);
  at('sun').setAttribute('r', String(8 + 20 * sun));
  at('sun').setAttribute('opacity', String(0.15 + 0.85 * sun));
  const flow = Math.min(hour.loopFlow / FULL_FLOW, 1);
  const loop = at('loop');
  loop.classList.toggle('flows', flow > 0);
  loop.style.setProperty('--turn', `${(3 - 2.4 * flow).toFixed(2)}s`);
  at('pump-label').textContent = flow > 0 ? `${shown(hour.loopFlow * 6e4, 1)} L/min` : 'pump stands';
  at('draw').classList.toggle('runs', hour.solarHeat !== 0);
  at('draw-label').textContent = hour.solarHeat !== 0 ? `${shown(hour.solarHeat / 3.6e6, 2)} kWh` : 'no draw';
  at('top-label').textContent = `${shown(hour.tank.at(-1)!)} °C`;
  at('bottom-label').textContent = `${shown(hour.tank[0]!)} °C`;
}

/** Frame of the week's picture; its height holds layers, then sun. */
export const WEEK_FRAME = { left: 64, width: 652, top: 8, layers: 150, sun: 44, gap: 10 };

/** Draws the week: a column an hour, its layers by height; below it the sun, with the pump's hours under it. */
export function drawWeek(hours: readonly LessonHour[]): void {
  const { gap, layers, left, sun, top, width } = WEEK_FRAME;
  const column = width / WEEK;
  const floor = top + layers + gap + sun;
  const parts: SVGRectElement[] = [];
  hours.forEach((hour, index) => {
    const x = left + index * column;
    const layer = layers / hour.tank.length;
    [...hour.tank].forEach((celsius, node) => {
      parts.push(rectangle(x, top + layers - (node + 1) * layer, column + 0.3, layer + 0.3, colourOf(celsius)));
    });
    const height = (sun * Math.min(hour.irradiance, 1200)) / 1200;
    const bar = rectangle(x, floor - height, column - 0.6, height, '');
    bar.removeAttribute('fill');
    bar.setAttribute('class', hour.loopFlow > 0 ? 'sun-on-pump' : 'sun-no-pump');
    parts.push(bar);
    if (hour.solarHeat !== 0) {
      const mark = rectangle(x, floor + 4, column - 0.6, 7, '');
      mark.removeAttribute('fill');
      mark.setAttribute('class', 'drawn');
      parts.push(mark);
    }
  });
  at('week-columns').replaceChildren(...parts);
}

/** Puts the mark on an hour of the week's picture. */
export function markHour(index: number): void {
  const x = WEEK_FRAME.left + ((index + 0.5) * WEEK_FRAME.width) / WEEK;
  for (const end of ['x1', 'x2']) at('week-mark').setAttribute(end, String(x));
}

/** Draws the key of the colours. */
export function drawKey(): void {
  const steps = 60;
  const width = 200 / steps;
  at('key').replaceChildren(
    ...Array.from({ length: steps }, (_, step) =>
      rectangle(step * width, 0, width + 0.4, 12, colourOf(COLDEST + ((step + 0.5) / steps) * (HOTTEST - COLDEST))),
    ),
  );
}
