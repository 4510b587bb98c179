/**
 * A piece of arithmetic that never changes: what a year's time is measured by, so that a slow machine or a busy hour does not count.
 *
 * It has to cost like a year on any machine. A single loop does not: one that waited for a division and a root in each turn stood at 3.1 to a year on
 * one host and at 3.7 on another, with the same revision of the year; on one host at 3.29 with Node 20 and 2.86 with Node 24. So this is a small year
 * of its own, frozen: small functions that the engine may or may not put into each other, records, columns of 8760 hours, short loops over typed
 * arrays, branches that go either way, and divisions, e^x, ln and roots about as often as the year has them. Packed into one module, the hours of a
 * year stand at 2.58 to 2.72 of it over Node 20, 22 and 24; the bench, which loads the sources one by one, reads 2.39 to 2.63, and read 2.76 once
 * where a dozen processes left it a fiftieth of a core. It is no physics, and takes nothing from the library: whoever speeds the year up leaves
 * it alone, and a change here wants speed.json anew.
 */
import { circulate, stand } from './kernel-loop.ts';
import { type Kernel, NODES, PARTS, WIDTH } from './kernel-state.ts';

/** Takes the small year from one hour to another. @returns Sum over the tank: it says that nothing was left out. */
export function fixedArithmetic(kernel: Kernel, from: number, end: number): number {
  for (let hour = from; hour < end; hour++) {
    const light = kernel.light[hour]!;
    const steps = light > 0 ? 6 : kernel.draw[hour]! > 0 ? 2 : 1;
    open(kernel, hour);
    for (let step = 0; step < steps; step++) advance(kernel, hour, step, steps, light);
    closeHour(kernel, hour);
  }
  return kernel.tank.temperature.reduce((sum, value) => sum + value, 0);
}

function open({ columns, ring, tank }: Kernel, hour: number): void {
  let high = ring[3]!;
  let low = high;
  for (let at = WIDTH; at < 8 * WIDTH; at += WIDTH) {
    const here = ring[at + 3]!;
    if (here > high) high = here;
    if (here < low) low = here;
  }
  columns[0]![hour] = high;
  columns[1]![hour] = low;
  columns[2]![hour] = tank.temperature[NODES - 1]!;
}

function advance(kernel: Kernel, hour: number, step: number, steps: number, light: number): void {
  const duration = 3600 / steps;
  const drawsFirst = step % 2 === 0;
  if (drawsFirst) useWater(kernel, hour, steps, duration);
  const flows = light > 120;
  if (flows) circulate(kernel, hour, light, duration);
  else stand(kernel, hour, light, duration);
  rest(kernel, hour, duration, flows);
  if (!drawsFirst) useWater(kernel, hour, steps, duration);
}

function useWater(kernel: Kernel, hour: number, steps: number, duration: number): void {
  const { columns, draw, heater, tank } = kernel;
  const wanted = draw[hour]! / steps;
  if (wanted <= 0) {
    heat(heater, 0, 60, duration);
    columns[3]![hour]! += heater.heat;
    columns[4]![hour]! += heater.loss;
    return;
  }
  const cold = 10 + 0.1 * kernel.air[hour]!;
  const top = tank.temperature[NODES - 1]!;
  const share = Math.min(Math.max((45 - cold) / Math.max(mixed(heater, top, wanted, duration) - cold, 1), 0), 1);
  const outlet = push(tank.temperature, wanted * share, cold);
  heat(heater, wanted * share, outlet, duration);
  columns[3]![hour]! += heater.heat;
  columns[4]![hour]! += heater.loss;
  columns[5]![hour]! += wanted * share;
  columns[6]![hour]! += wanted * share * (outlet - cold);
  columns[7]![hour]! += wanted * share * (heater.outlet - cold);
  if (heater.outlet > columns[8]![hour]!) columns[8]![hour] = heater.outlet;
}

/** What the heater would give. */
function mixed(heater: Kernel['heater'], inlet: number, volume: number, duration: number): number {
  const x = volume * 0.07 + duration * 8e-6;
  return inlet + (heater.temperature - inlet) * ((1 - Math.exp(-x)) / x);
}

function heat(heater: Kernel['heater'], volume: number, inlet: number, duration: number): void {
  const start = heater.temperature;
  const total = (volume * 41800) / duration + 5;
  const source = total * inlet - 5 * (inlet - 18);
  const x = (total * duration) / 627000;
  const gone = x > 0.01 ? 1 - Math.exp(-x) : x * (1 - x * (0.5 - x / 6));
  const late = x > 0.01 ? 1 - gone / x : x * (0.5 - x * (1 / 6 - x / 24));
  const free = start + (source / total - start) * gone;
  const power = Math.min(Math.max((60 - free) * (total / gone), 0), 9000);
  const settled = (source + power) / total;
  heater.temperature = start + (settled - start) * gone;
  heater.outlet = start + (settled - start) * late;
  heater.heat = power * duration;
  heater.loss = 5 * (heater.outlet - 18) * duration;
}

/** Pushes water through the tank, layer by layer. */
function push(temperature: Float64Array, volumes: number, inlet: number): number {
  if (volumes <= 0) return inlet;
  const passes = Math.ceil(volumes);
  const courant = volumes / passes;
  const reach = 0.5 * (1 - courant);
  let outlet = 0;
  for (let pass = 0; pass < passes; pass++) {
    let faceBelow = inlet;
    let below = inlet;
    for (let node = 0; node < NODES - 1; node++) {
      const here = temperature[node]!;
      const product = (here - below) * (temperature[node + 1]! - here);
      const slope = product > 0 ? (2 * product) / (temperature[node + 1]! - below) : 0;
      const face = here + reach * slope;
      temperature[node] = here + courant * (faceBelow - face);
      faceBelow = face;
      below = here;
    }
    const here = temperature[NODES - 1]!;
    temperature[NODES - 1] = here + courant * (faceBelow - here);
    outlet += here;
  }
  return outlet / passes;
}

/** The tank at rest: losses, conduction, the coil's heat, and turnover. */
function rest({ columns, tank }: Kernel, hour: number, duration: number, flows: boolean): void {
  const { drift, rise, temperature } = tank;
  const ratio = 4e-5 * duration;
  let fallen = 0;
  let fromBelow = 0;
  for (let node = 0; node < NODES; node++) {
    const here = temperature[node]!;
    const fromAbove = node + 1 < NODES ? ratio * (temperature[node + 1]! - here) : 0;
    const fall = (here - 18) * 1e-6 * duration;
    fallen += fall;
    drift[node] = fromAbove - fromBelow - fall;
    fromBelow = fromAbove;
  }
  for (let node = 0; node < NODES; node++) temperature[node]! += flows ? drift[node]! + rise[node]! : drift[node]!;
  turnOver(temperature);
  columns[14]![hour]! += fallen;
  const top = Math.min(temperature[NODES - 1]!, 95);
  if (top > columns[2]![hour]!) columns[2]![hour] = top;
}

/** Puts layers that lie upside down in order. */
function turnOver(temperature: Float64Array): void {
  for (let node = 1; node < NODES; node++) {
    if (temperature[node]! >= temperature[node - 1]!) continue;
    let sum = temperature[node]!;
    let size = 1;
    let low = node;
    while (low > 0 && temperature[low - 1]! * size > sum) {
      sum += temperature[--low]!;
      size++;
    }
    for (let member = low; member <= node; member++) temperature[member] = sum / size;
  }
}

function closeHour({ books, columns, heater, ring, tank }: Kernel, hour: number): void {
  let stored = 0;
  for (let node = 0; node < NODES; node++) stored += tank.temperature[node]!;
  let inLoop = 0;
  for (let at = 0; at < PARTS * WIDTH; at += WIDTH) inLoop += ring[at + 3]!;
  columns[15]![hour] = stored / NODES;
  columns[16]![hour] = inLoop / PARTS;
  columns[17]![hour] = heater.temperature;
  enter(books, columns[10]![hour]!, columns[14]![hour]! + columns[6]![hour]!, stored);
  enter(books, columns[9]![hour]!, columns[12]![hour]!, inLoop);
  enter(books, columns[3]![hour]!, columns[7]![hour]! + columns[4]![hour]!, heater.temperature);
}

function enter(books: Kernel['books'], income: number, spent: number, stored: number): void {
  const kept = stored - books.stored;
  const residual = Math.abs(income - spent - kept) / Math.max(Math.abs(income) + Math.abs(spent), Math.abs(kept), 1);
  books.income += income;
  books.spent += spent;
  if (residual > books.worst) books.worst = residual;
  books.stored = stored;
}
