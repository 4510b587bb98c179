/** What must hold of any year of any design, whatever the numbers: found by laws, not by comparison with another program. */
import type { PartBalance } from '@noonloop/sim-core';
import type { WeatherYear } from '@noonloop/weather-io';
import { coldestSky, type Hours, hottestPossible, least, most, roomsOf } from './bounds.ts';
import type { Lived, WorstHour } from './span.ts';

/** Share of what flowed through a part in an hour to which its balance closes. [-] */
const BALANCE = 1e-9;
/**
 * Roundings of a node's heat in a step, each at most 2⁻⁵³ of it: draw, coil and flow, jet and mixing, loss and conduction, two operations each. [-]
 */
const ROUNDINGS = 8;
/** Finer steps in place of one, at most. */
const FINENESS = 8;
/** Rounding of temperatures. [K] */
const ROUNDING = 1e-6;
/** What a step's length may add to a tank node: the agreement with the referee of tests/validation. [K] */
const STEP_ERROR = 0.05;

/** Columns that are shares of an hour. */
const SHARES = [
  'pumpRunning',
  'noFlowInSun',
  'stagnation',
  'boiling',
  'highLimit',
  'lowPressure',
  'glycolMassFraction',
] as const;
/** Columns that cannot be negative. */
const NOT_NEGATIVE = [
  'irradiance',
  'pvIrradiance',
  'loopFlow',
  'pumpPvEnergy',
  'pumpElectricity',
  'reliefVolume',
  'loopReliefVolume',
  'tapVolume',
  'hotVolume',
  'unfiredVolume',
  'unfiredShortfall',
  'undisinfectedVolume',
  'heaterHeat',
  'heaterFuel',
  'heaterElectricity',
  'heaterPvEnergy',
  'loadHeat',
  'baselineFuel',
] as const;

/** The laws, as the page has them, and what each is looked at for. */
export const LAWS = {
  accepted: ['what is accepted runs: nothing is thrown', 'runs'],
  finite: ['every number is finite', 'numbers'],
  balance: ['balance of each part and the whole', 'hours of parts'],
  rounded: ['of them: beyond 1e-9 of what flowed, within the rounding of what was held and carried', 'hours of parts'],
  shares: ['shares lie in 0 to 1', 'numbers'],
  signs: ['flows and fuels are not negative', 'numbers'],
  absorberHot: ['no absorber over its stagnation bound', 'hours, highest of all steps'],
  tankHot: ['no tank over the hottest of sun, room, mains, element', 'hours, highest of all steps'],
  relief: ['no tank over its relief valve', 'hours, highest of all steps'],
  reliefOpen: ['of them: with the valve open', 'hours'],
  loopRelief: ["no loop over its relief valve's setting", 'hours, highest of all steps'],
  loopReliefOpen: ['of them: with the valve open, and then the setting was reached', 'hours'],
  absorberCold: ['no absorber under the coldest sky, room, mains, pool', 'hours, lowest of all steps'],
  pipeCold: ['no pipe under them', 'hours, lowest of all steps'],
  tankCold: ['no tank under them, each tank', "hours' ends"],
} as const;
export type Law = keyof typeof LAWS;

/** How often a law was looked at, and how near to what it allows anything came. */
export interface Look {
  looks: number;
  broken: number;
  /** Of a balance its worst share, of a temperature the least distance [K]; NaN where the law has none. */
  nearest: number;
}
export type Looks = Map<Law, Look>;

/** Notes that a law was looked at. */
export function note(looks: Looks, law: Law, count: number, broken = false, nearest = Number.NaN): void {
  const look = looks.get(law) ?? { looks: 0, broken: 0, nearest };
  look.looks += count;
  if (broken) look.broken++;
  const better = law === 'balance' ? nearest > look.nearest : nearest < look.nearest;
  if (better || Number.isNaN(look.nearest)) look.nearest = nearest;
  looks.set(law, look);
}

/** What a run breaks of balance, bounds and finiteness; empty where it is sound. @param looks - Counted up. */
export function violations(
  result: Lived,
  weather: WeatherYear,
  hours: Hours = { from: 0, to: 8760 },
  looks: Looks = new Map(),
): string[] {
  const found: string[] = [];
  const judge = (law: Law, count: number, broken: false | string, nearest?: number): void => {
    note(looks, law, count, broken !== false, nearest);
    if (broken !== false) found.push(broken);
  };
  lookAtNumbers(result, judge);
  lookAtBooks(result, judge);
  lookAtHeat(result, weather, hours, judge);
  lookAtLoopValve(result, judge);
  lookAtCold(result, weather, hours, judge);
  return found;
}

type Judge = (law: Law, count: number, broken: false | string, nearest?: number) => void;

function lookAtNumbers({ columns, secondTank }: Lived, judge: Judge): void {
  for (const [name, column] of Object.entries({ ...columns, ...secondTank?.columns }) as [string, Float64Array][])
    judge('finite', column.length, !column.every(Number.isFinite) && `${name} is not finite`);
  for (const name of SHARES) {
    const beyond = least(columns[name]) < 0 || most(columns[name]) > 1 + 1e-12;
    judge('shares', columns[name].length, beyond && `${name} beyond 0 to 1`);
  }
  for (const name of NOT_NEGATIVE) {
    const lowest = least(columns[name]);
    judge('signs', columns[name].length, lowest < 0 && `${name} below 0: ${lowest}`);
  }
}

/** Balances of all parts, the second tank's among them. */
const booksOf = ({ balance, secondTank }: Lived): [string, PartBalance][] =>
  Object.entries({ ...balance, ...(secondTank === undefined ? {} : { second: secondTank.balance }) });

const closesWell = ({ worstRelative }: PartBalance): boolean => worstRelative < BALANCE;

/** Whether the books of all parts close to a share of what flowed; if not, it may still be rounding. */
export const allClose = (lived: Lived): boolean => booksOf(lived).every(([, book]) => closesWell(book));

function lookAtBooks(lived: Lived, judge: Judge): void {
  const { columns, stepsPerHour, worst } = lived;
  const hours = columns.tapVolume.length;
  for (const [part, book] of booksOf(lived)) {
    const { worstRelative, worstHour } = book;
    const closes = closesWell(book);
    const rounded = !closes && isRounding(worst?.[part], worstRelative, stepsPerHour);
    judge(
      'balance',
      hours,
      !(closes || rounded) && `balance of ${part}: ${worstRelative} in hour ${worstHour}`,
      worstRelative,
    );
    if (rounded) judge('rounded', 1, false);
  }
}

/**
 * Whether a residual is no more than a share of what flowed, and beside it what rounding makes of the heat that was held and carried: each step
 * rounds it anew, and at worst all roundings go the same way.
 */
function isRounding(worst: WorstHour | undefined, relative: number, stepsPerHour: number): boolean {
  if (worst === undefined) return false;
  const residual = Math.abs(worst.residual);
  const flowed = residual / relative;
  return residual <= BALANCE * flowed + ROUNDINGS * FINENESS * stepsPerHour * 2 ** -53 * worst.held;
}

/** What tanks, absorbers and water begin with. [°C] */
function beginsOf({ design: { tank } }: Lived, weather: WeatherYear): readonly number[] {
  return [
    ...(tank.initialProfile ?? [tank.initialTemperature]),
    ...(tank.second === null ? [] : [tank.second.initialTemperature]),
    weather.columns.dryBulb[0]!,
  ];
}

function lookAtHeat(result: Lived, weather: WeatherYear, hours: Hours, judge: Judge): void {
  const { columns, design, stepsPerHour } = result;
  const { heater, tank } = design;
  const count = hours.to - hours.from;
  const rooms = roomsOf(design, weather, hours);
  const warmRoom = Math.max(...rooms, most(columns.mainsTemperature), ...beginsOf(result, weather));
  const element = heater.kind === 'element' || heater.kind === 'boiler-coil' ? heater.setTemperature : -Infinity;
  const bound = Math.max(hottestPossible(design, weather, stepsPerHour, hours), warmRoom, element);
  const absorber = most(columns.absorberTemperature);
  judge(
    'absorberHot',
    count,
    absorber > bound + ROUNDING && `absorber ${absorber} °C above the stagnation bound, ${bound} °C`,
    bound - absorber,
  );
  const hottest = most(columns.tankMaximumTemperature);
  const tooHot = hottest > bound + ROUNDING + STEP_ERROR;
  judge('tankHot', count, tooHot && `tank ${hottest} °C, hotter than any absorber`, bound - hottest);
  // The highest of any step, not of the hour's end.
  const water = Math.max(hottest, most(columns.tankTopTemperature));
  const highest = Math.max(tank.reliefTemperature, warmRoom);
  judge('relief', count, water > highest + ROUNDING && `tank ${water} °C above its relief valve`, highest - water);
  judge(
    'reliefOpen',
    columns.reliefVolume.reduce((open, volume) => open + (volume > 0 ? 1 : 0), 0),
    false,
  );
}

/** The loop's relief valve looks at every step: none passes its setting, and an hour in which it lets out has seen it. */
function lookAtLoopValve({ columns, design }: Lived, judge: Judge): void {
  const { reliefPressure } = design.loop;
  const { loopMaximumPressure: pressure, loopReliefVolume: released } = columns;
  const highest = most(pressure);
  const isOver = highest > reliefPressure * (1 + 1e-12);
  judge('loopRelief', pressure.length, isOver && `loop ${highest} Pa above its relief valve`);
  const unseen = released.findIndex((volume, hour) => volume > 0 && pressure[hour] !== reliefPressure);
  const open = released.reduce((hours, volume) => hours + (volume > 0 ? 1 : 0), 0);
  judge('loopReliefOpen', open, unseen >= 0 && `loop let out below its relief pressure in hour ${unseen} of the span`);
}

function lookAtCold(result: Lived, weather: WeatherYear, hours: Hours, judge: Judge): void {
  const { columns, design, secondTank } = result;
  const count = hours.to - hours.from;
  const rooms = roomsOf(design, weather, hours);
  const load = design.tank.load?.temperature ?? Number.POSITIVE_INFINITY;
  const coldRoom = Math.min(...rooms, load, least(columns.mainsTemperature), ...beginsOf(result, weather));
  const cold = Math.min(coldestSky(weather, hours), coldRoom);
  const isUnder = (lowest: number): boolean => lowest < cold - ROUNDING;
  const absorber = least(columns.absorberMinimumTemperature);
  judge(
    'absorberCold',
    count,
    isUnder(absorber) && `absorber ${absorber} °C below the coldest sky, ${cold} °C`,
    absorber - cold,
  );
  const pipe = least(columns.pipeMinimumTemperature);
  judge('pipeCold', count, isUnder(pipe) && `pipe ${pipe} °C below the coldest sky and room`, pipe - cold);
  const bottoms = [columns.tankBottomTemperature, ...(secondTank ? [secondTank.columns.bottomTemperature] : [])];
  for (const bottom of bottoms) {
    const lowest = least(bottom);
    judge('tankCold', count, isUnder(lowest) && `tank ${lowest} °C below its coldest neighbour`, lowest - cold);
  }
}
