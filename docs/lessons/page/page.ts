/** The lesson page: reads the controls, runs the year up to the chosen week, plays it. */
import { parseWeather, type WeatherYear } from '@noonloop/weather-io';
import { drawKey, drawScene, drawWeek, markHour, WEEK_FRAME } from './scene.ts';
import {
  BOUNDS,
  dayName,
  dayRows,
  hourName,
  type LessonHour,
  type LessonInput,
  lessonWeek,
  readings,
  START,
  WEEK,
  WEEKS,
} from './week.ts';

function find<T extends Element>(selector: string): T {
  const found = document.querySelector<T>(selector);
  if (found === null) throw new Error(`the page has no ${selector}`);
  return found;
}

const slider = find<HTMLInputElement>('#hour');
const play = find<HTMLButtonElement>('#play');
const speed = find<HTMLSelectElement>('#speed');
const weeks = find<HTMLSelectElement>('#week');
const status = find<HTMLElement>('#status');
const limit = find<HTMLInputElement>('#limit');
const numbers = Object.keys(BOUNDS) as (keyof typeof BOUNDS)[];
const field = (name: string): HTMLInputElement => find(`#${name}`);

let hours: LessonHour[] = [];
let timer: number | undefined;

/** Weather of the page: the text of a weather file, packed. */
async function unpackWeather(): Promise<WeatherYear> {
  const packed = Uint8Array.from(atob(find('#weather').textContent!.trim()), (letter) => letter.charCodeAt(0));
  const stream = new Blob([packed]).stream().pipeThrough(new DecompressionStream('gzip'));
  return parseWeather(await new Response(stream).text(), { source: 'invented-valley.csv' });
}

/** What the controls say; a field that cannot be read keeps its place in the bounds. */
function readInput(): LessonInput {
  const value = (name: keyof typeof BOUNDS): number => {
    const { least, most, start } = BOUNDS[name];
    const given = field(name).valueAsNumber;
    return Number.isFinite(given) ? Math.min(Math.max(given, least), most) : start;
  };
  return {
    panels: Math.round(value('panels')),
    tank_L: value('tank_L'),
    draw_L: value('draw_L'),
    coil_m: value('coil_m'),
    module_W: value('module_W'),
    limit: limit.checked,
  };
}

/** Shows the hour at which the slider stands. */
function showHour(): void {
  const index = slider.valueAsNumber;
  const hour = hours[index]!;
  const name = hourName(index);
  slider.setAttribute('aria-valuetext', `${name}, tank top ${Math.round(hour.tank.at(-1)!)} °C`);
  find('#clock').textContent = name;
  drawScene(hour);
  markHour(index);
  find('#readings').replaceChildren(
    ...readings(hour).flatMap(([label, value]) => {
      const [term, detail] = [document.createElement('dt'), document.createElement('dd')];
      term.textContent = label;
      detail.textContent = value;
      return [term, detail];
    }),
  );
}

/** Runs the year up to the chosen week and shows it. */
function run(weather: WeatherYear): void {
  const week = Number(weeks.value);
  for (const name of numbers) find(`#${name}-value`).textContent = field(name).value;
  hours = lessonWeek(readInput(), weather, week);
  drawWeek(hours);
  find('#days').replaceChildren(
    ...dayRows(hours, week).map((cells) => {
      const row = document.createElement('tr');
      row.append(
        ...cells.map((text, index) => {
          const cell = document.createElement(index === 0 ? 'th' : 'td');
          if (index === 0) cell.setAttribute('scope', 'row');
          cell.textContent = text;
          return cell;
        }),
      );
      return row;
    }),
  );
  showHour();
  const delivered = hours.reduce((sum, hour) => sum + hour.solarHeat, 0) / 3.6e6;
  const peak = Math.max(...hours.map((hour) => Math.max(...hour.tank)));
  status.textContent = `Week computed: ${delivered.toFixed(1)} kWh delivered, hottest layer ${peak.toFixed(1)} °C.`;
}

function stop(): void {
  clearInterval(timer);
  timer = undefined;
  play.textContent = 'Play';
  document.body.classList.remove('plays');
}

function start(): void {
  clearInterval(timer);
  play.textContent = 'Pause';
  document.body.classList.add('plays');
  timer = window.setInterval(() => {
    slider.valueAsNumber = (slider.valueAsNumber + 1) % WEEK;
    showHour();
  }, 1000 / Number(speed.value));
}

/** A click into the week's picture goes to that hour; the slider does the same by keyboard. */
function goTo(event: MouseEvent): void {
  const box = find('#week-picture').getBoundingClientRect();
  const x = ((event.clientX - box.left) / box.width) * 720 - WEEK_FRAME.left;
  slider.valueAsNumber = Math.min(Math.max(Math.floor((x / WEEK_FRAME.width) * WEEK), 0), WEEK - 1);
  showHour();
}

async function open(): Promise<void> {
  weeks.replaceChildren(
    ...Array.from(
      { length: WEEKS },
      (_, week) => new Option(`${dayName(7 * week)} to ${dayName(7 * week + 6)}`, String(week)),
    ),
  );
  weeks.value = '26';
  for (const name of numbers) {
    const { least, most, step } = BOUNDS[name];
    Object.assign(field(name), {
      min: String(least),
      max: String(most),
      step: String(step),
      value: String(START[name]),
    });
  }
  limit.checked = START.limit;
  drawKey();
  const weather = await unpackWeather();
  run(weather);
  slider.addEventListener('input', showHour);
  play.addEventListener('click', () => (timer === undefined ? start() : stop()));
  speed.addEventListener('change', () => timer !== undefined && start());
  find<SVGElement>('#week-picture').addEventListener('click', goTo);
  find<HTMLFormElement>('#inputs').addEventListener('submit', (event) => event.preventDefault());
  for (const control of [weeks, limit, ...numbers.map(field)]) control.addEventListener('change', () => run(weather));
  for (const name of numbers) {
    field(name).addEventListener('input', () => {
      find(`#${name}-value`).textContent = field(name).value;
    });
  }
  document.body.dataset.ready = 'yes';
}

open().catch((error: unknown) => {
  status.textContent = `The page cannot run here: ${error instanceof Error ? error.message : String(error)}`;
});
