/** Seven days that play: the drawing of an hour, the strips of the week, readings and the days in numbers. */
import { formatDay } from '../../calendar.ts';
import { formatNumber, formatQuantity, type Units } from '../../units.ts';
import type { WeekReply } from '../types.ts';
import { draw, find, glued, make } from './dom.ts';
import { at, heat, kilowattHours, layersAt, showScene } from './scene.ts';

const WEEK = 168;
/** Strips of the week: layers above, then sun with the pump under it, then what is drawn. [drawing units] */
const FRAME = { left: 52, width: 664, layers: 120, sun: 44 } as const;
const DAYS = 7;

const still = (): boolean => matchMedia('(prefers-reduced-motion: reduce)').matches;

const place = (
  x: number,
  y: number,
  width: number,
  height: number,
  more: Readonly<Record<string, string>>,
): SVGElement =>
  draw('rect', { x: x.toFixed(2), y: y.toFixed(2), width: width.toFixed(2), height: height.toFixed(2), ...more });

/** Bars, strips and the mark of the hour. */
function strips(week: WeekReply, units: Units): void {
  const colour = heat(units);
  const column = FRAME.width / WEEK;
  const floor = FRAME.layers + 8 + FRAME.sun;
  const parts: SVGElement[] = [];
  for (let hour = 0; hour < WEEK; hour++) {
    const x = FRAME.left + hour * column;
    const layers = layersAt(week, hour);
    const size = FRAME.layers / layers.length;
    // Neighbours of one colour are one rectangle: a tenth of the elements.
    let from = 0;
    for (let node = 1; node <= layers.length; node++) {
      if (node < layers.length && colour(layers[node]!) === colour(layers[from]!)) continue;
      parts.push(
        place(x, FRAME.layers - node * size, column + 0.3, (node - from) * size + 0.3, {
          style: `fill:${colour(layers[from]!)}`,
        }),
      );
      from = node;
    }
    const sun = (FRAME.sun * Math.min(at(week, 'irradiance', hour), 1200)) / 1200;
    if (sun > 0)
      parts.push(
        place(x, floor - sun, column - 0.5, sun, { class: at(week, 'loopFlow', hour) > 0 ? 'sun-pump' : 'sun-still' }),
      );
    if (at(week, 'tapVolume', hour) > 1e-6) parts.push(place(x, floor + 4, column - 0.5, 7, { class: 'drawn' }));
    if (at(week, 'heaterHeat', hour) > 0) parts.push(place(x, floor + 14, column - 0.5, 7, { class: 'burnt' }));
    if (at(week, 'reliefVolume', hour) > 1e-6) parts.push(place(x, floor + 24, column - 0.5, 7, { class: 'relieved' }));
  }
  find('#week-parts').replaceChildren(...parts);
  find('#week-days').replaceChildren(
    ...Array.from({ length: DAYS }, (_, day) =>
      draw(
        'text',
        { x: String(FRAME.left + (day + 0.5) * 24 * column), y: '228', 'text-anchor': 'middle' },
        formatDay((week.day + day) % 365),
      ),
    ),
  );
}

/** The days in numbers; the hottest is the highest of any moment, not of the ends of hours. */
function dayTable(week: WeekReply, units: Units): void {
  const rows = Array.from({ length: DAYS }, (_, day) => {
    const hours = Array.from({ length: 24 }, (_unused, hour) => 24 * day + hour);
    const sum = (column: 'irradiance' | 'solarHeat' | 'heaterHeat' | 'reliefVolume'): number =>
      hours.reduce((total, hour) => total + at(week, column, hour), 0);
    const most = (column: 'tankMaximumTemperature' | 'absorberTemperature'): number =>
      Math.max(...hours.map((hour) => at(week, column, hour)));
    const relief = sum('reliefVolume');
    const cells = [
      formatNumber(sum('irradiance') / 1000, 1),
      formatNumber(sum('solarHeat') / 3.6e6, 1),
      formatNumber(sum('heaterHeat') / 3.6e6, 1),
      formatQuantity(most('tankMaximumTemperature'), 'temperature', units),
      formatQuantity(most('absorberTemperature'), 'temperature', units),
      relief > 1e-6 ? formatQuantity(relief, 'discharge', units) : 'closed',
    ];
    return make(
      'tr',
      {},
      make('th', { scope: 'row' }, formatDay((week.day + day) % 365)),
      ...cells.map((cell) => make('td', {}, glued(cell))),
    );
  });
  find('#week-table').replaceChildren(...rows);
}

/** The week on the page. */
export class WeekView {
  #week: WeekReply | null = null;
  #units: Units = 'metric';
  #timer: number | undefined;
  readonly #slider = find<HTMLInputElement>('#hour');
  readonly #play = find<HTMLButtonElement>('#play');

  constructor() {
    this.#slider.addEventListener('input', () => this.#hour());
    this.#play.addEventListener('click', () => (this.#timer === undefined ? this.#start() : this.stop()));
    find<HTMLSelectElement>('#speed').addEventListener('change', () => this.#timer !== undefined && this.#start());
    find('#week-picture').addEventListener('click', (event) => this.#goTo(event as MouseEvent));
  }

  /** Shows another week, at the hour of the day at which the last one stood. */
  show(week: WeekReply, units: Units): void {
    this.#week = week;
    this.#units = units;
    strips(week, units);
    dayTable(week, units);
    this.#hour();
  }

  /** Ends the play. */
  stop(): void {
    clearInterval(this.#timer);
    this.#timer = undefined;
    this.#play.textContent = 'Play';
    document.body.classList.remove('plays');
  }

  #start(): void {
    clearInterval(this.#timer);
    this.#play.textContent = 'Pause';
    document.body.classList.toggle('plays', !still());
    // With reduced motion three hours at a time, so that nothing glides.
    const stride = still() ? 3 : 1;
    this.#timer = window.setInterval(
      () => {
        this.#slider.valueAsNumber = (this.#slider.valueAsNumber + stride) % WEEK;
        this.#hour();
      },
      (1000 * stride) / Number(find<HTMLSelectElement>('#speed').value),
    );
  }

  #goTo(event: MouseEvent): void {
    const box = find('#week-picture').getBoundingClientRect();
    const x = ((event.clientX - box.left) / box.width) * 720 - FRAME.left;
    this.#slider.valueAsNumber = Math.min(Math.max(Math.floor((x / FRAME.width) * WEEK), 0), WEEK - 1);
    this.#hour();
  }

  #hour(): void {
    const week = this.#week;
    if (week === null) return;
    const hour = this.#slider.valueAsNumber;
    const of = (column: Parameters<typeof at>[1]): number => at(week, column, hour);
    const name = `${formatDay((week.day + Math.floor(hour / 24)) % 365)}, ${hour % 24}:00 to ${(hour % 24) + 1}:00`;
    const layers = layersAt(week, hour);
    const degrees = (value: number): string => formatQuantity(value, 'temperature', this.#units);
    find('#clock').textContent = name;
    this.#slider.setAttribute('aria-valuetext', `${name}, tank top ${degrees(layers.at(-1)!)}`);
    showScene(week, hour, this.#units);
    const x = String(FRAME.left + ((hour + 0.5) * FRAME.width) / WEEK);
    for (const end of ['x1', 'x2']) find('#week-mark').setAttribute(end, x);
    const relief = of('reliefVolume') > 1e-6 ? formatQuantity(of('reliefVolume'), 'discharge', this.#units) : 'closed';
    const lines: readonly (readonly [string, string])[] = [
      ['Sun on the panels', formatQuantity(of('irradiance'), 'irradiance', this.#units)],
      ['Outdoor air', degrees(of('ambientTemperature'))],
      ['Absorber, highest in the hour', degrees(of('absorberTemperature'))],
      [
        'Pump',
        of('loopFlow') > 0
          ? formatQuantity(of('loopFlow'), 'flow', this.#units)
          : of('highLimit') > 0
            ? 'stopped by the limit'
            : 'stands',
      ],
      ['Coil into the tank', kilowattHours(of('coilHeat'))],
      ['Tank, highest in the hour', degrees(of('tankMaximumTemperature'))],
      ['Tank, top at its end', degrees(layers.at(-1)!)],
      ['Tank, bottom at its end', degrees(layers[0]!)],
      ['Draw takes from the tank', kilowattHours(of('solarHeat'))],
      ['Heater adds', kilowattHours(of('heaterHeat'))],
      ['Relief valve of the tank', relief],
    ];
    find('#readings').replaceChildren(
      ...lines.flatMap(([term, value]) => [make('dt', {}, term), make('dd', {}, glued(value))]),
    );
  }
}
