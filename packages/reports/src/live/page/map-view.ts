/** The year by day and hour: 365 columns of 24 cells, the day starting at the bottom, coloured by the heat scale. */
import { MONTH_NAMES, MONTH_STARTS } from '../../calendar.ts';
import { HEAT_COUNT } from '../../charts/palette.ts';
import type { TurnReply } from '../types.ts';
import { find, make } from './dom.ts';

/** Red, green and blue of the steps, as the page's theme has them. */
function colours(): readonly (readonly number[])[] {
  const probe = make('i');
  document.body.append(probe);
  const found = Array.from({ length: HEAT_COUNT }, (_, step) => {
    probe.style.color = `var(--nl-heat${step})`;
    return getComputedStyle(probe).color.match(/\d+/g)!.slice(0, 3).map(Number);
  });
  probe.remove();
  return found;
}

/** Draws the map. */
export function drawMap(map: Uint8Array): void {
  const canvas = find<HTMLCanvasElement>('#map');
  const context = canvas.getContext('2d')!;
  const image = context.createImageData(365, 24);
  const of = colours();
  for (let hour = 0; hour < 8760; hour++) {
    const at = 4 * ((23 - (hour % 24)) * 365 + Math.floor(hour / 24));
    const [red, green, blue] = of[map[hour]!]!;
    image.data.set([red!, green!, blue!, 255], at);
  }
  context.putImageData(image, 0, 0);
}

/** The key of the colours with the temperatures that decide. */
export function showKey({ key }: TurnReply): void {
  const boxes = Array.from({ length: HEAT_COUNT }, (_, step) => {
    const box = make('i');
    box.style.background = `var(--nl-heat${step})`;
    const words =
      step === 0
        ? `below ${key.ticks[0]}`
        : step === HEAT_COUNT - 1
          ? `${key.ticks[step - 1]} and more`
          : `${key.ticks[step - 1]} to ${key.ticks[step]}`;
    return make('li', {}, box, words);
  });
  find('#map-key').replaceChildren(...boxes);
  find('#map-marks').textContent = `Hottest part of the tank, ${key.unit}. ${key.marks.join(' · ')}`;
}

/** Month letters below the map, each where its month begins. */
export function monthMarks(): HTMLElement[] {
  return MONTH_NAMES.map((name, month) => {
    const mark = make('span', {}, name[0]!);
    mark.style.left = `${(100 * (MONTH_STARTS[month]! + 15)) / 365}%`;
    return mark;
  });
}
