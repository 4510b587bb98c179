/** Colours the drawing of the system for one hour of a week. */

import { heatStep } from '../../charts/colour-steps.ts';
import { HEAT_COUNT } from '../../charts/palette.ts';
import { formatQuantity, type Units } from '../../units.ts';
import { TANK } from '../scene-svg.ts';
import type { WeekColumn, WeekReply } from '../types.ts';
import { draw, find } from './dom.ts';

/** Most flow and most sun that the drawing tells apart. [m³/s], [W/m²] */
const FULL_FLOW = 1e-4;
const FULL_SUN = 1000;
/** Water that hardly counts: drops. [m³] */
const DROPS = 1e-6;

const part = (name: string): SVGElement => find<SVGElement>(`#scene-${name}`);
const say = (name: string, words: string): void => {
  part(name).textContent = words;
};

/** One number of an hour. */
export const at = (week: WeekReply, column: WeekColumn, hour: number): number => week.columns[column][hour]!;

/** Layers of an hour's end, bottom first. [°C] */
export const layersAt = ({ tank, nodes }: WeekReply, hour: number): Float64Array =>
  tank.subarray(hour * nodes, (hour + 1) * nodes);

/** Colour of a temperature. */
export const heat = (units: Units) => {
  const step = heatStep(units);
  return (celsius: number): string => `var(--nl-heat${Math.min(HEAT_COUNT - 1, step(celsius))})`;
};

/** Shows one hour. */
export function showScene(week: WeekReply, hour: number, units: Units): void {
  const colour = heat(units);
  const of = (column: WeekColumn): number => at(week, column, hour);
  const layers = layersAt(week, hour);
  const size = TANK.height / layers.length;
  part('layers').replaceChildren(
    ...[...layers].map((celsius, node) =>
      draw('rect', {
        x: String(TANK.x),
        y: (TANK.top + TANK.height - (node + 1) * size).toFixed(2),
        width: String(TANK.width),
        height: (size + 0.4).toFixed(2), // a hair of overlap, so that no line shows between layers
        style: `fill:${colour(celsius)}`,
      }),
    ),
  );
  part('absorber').style.fill = colour(of('absorberTemperature'));
  say('absorber-words', formatQuantity(of('absorberTemperature'), 'temperature', units));
  const sun = Math.min(of('irradiance') / FULL_SUN, 1);
  part('sun').setAttribute('r', String(8 + 18 * sun));
  part('sun').style.opacity = String(0.2 + 0.8 * sun);
  const flow = of('loopFlow');
  const loop = part('loop');
  loop.classList.toggle('flows', flow > 0);
  loop.style.setProperty('--turn', `${(3 - 2.4 * Math.min(flow / FULL_FLOW, 1)).toFixed(2)}s`);
  say(
    'pump-words',
    flow > 0 ? formatQuantity(flow, 'flow', units) : of('highLimit') > 0 ? 'stopped by the limit' : 'pump stands',
  );
  say('top', formatQuantity(layers.at(-1)!, 'temperature', units));
  say('bottom', formatQuantity(layers[0]!, 'temperature', units));
  const let_out = of('reliefVolume') > DROPS;
  part('relief').classList.toggle('open', let_out);
  say('relief-words', let_out ? `relief valve: ${formatQuantity(of('reliefVolume'), 'discharge', units)}` : '');
  const drawn = of('tapVolume') > DROPS;
  for (const name of ['draw', 'tap', 'water']) part(name).classList.toggle('runs', drawn);
  say('tap-words', drawn ? `${formatQuantity(of('tapVolume'), 'volume', units)} at the taps` : 'no draw');
  const burns = of('heaterHeat') > 0;
  part('flame').classList.toggle('burns', burns);
  say('heater-words', burns ? kilowattHours(of('heaterHeat')) : 'rests');
}

/** Heat of an hour, with a decimal; hours are small. */
export const kilowattHours = (joules: number): string => `${(joules / 3.6e6).toFixed(1).replace('-', '−')} kWh`;
