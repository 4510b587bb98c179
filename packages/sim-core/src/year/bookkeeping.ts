/** What came in, went out and stayed in an hour, for each part and the whole. Heat in water is counted above mains. */
import { absorberHeat, pipeHeat } from '../physics/loop/circuit-design.ts';
import { type BalanceKeeper, bookHour } from './balance.ts';
import type { Books } from './books.ts';
import type { Machine } from './machine.ts';

/** Books an hour that is over. Allocates nothing. @param inTank - Heat in the tank above 0 °C. [J] */
export function bookParts(machine: Machine, hour: number, inTank: number): void {
  const { balance, whole } = machine.books;
  whole.income = 0;
  whole.spent = 0;
  whole.through = 0;
  whole.stored = 0;
  bookCollector(machine, hour);
  bookPipes(machine, hour);
  bookTank(machine, hour, inTank);
  bookHeater(machine, hour);
  bookHour(balance.whole, hour, whole);
  bookBaseline(machine, hour);
}

/** Books the entry of a part, and adds its flows and its store to the whole's; what passes the system's border the parts add themselves. */
function enter({ entry, whole }: Books, part: BalanceKeeper, hour: number): void {
  bookHour(part, hour, entry);
  whole.through += entry.through;
  whole.stored += entry.stored;
}

function bookCollector(machine: Machine, hour: number): void {
  const { books, columns, loop } = machine;
  const { entry } = books;
  const absorbed = books.absorbed[hour]!;
  const lost = books.collectorLoss[hour]!;
  const collected = columns.collectorHeat[hour]!;
  entry.income = absorbed;
  entry.spent = lost + collected;
  entry.through = Math.abs(absorbed) + Math.abs(lost) + Math.abs(collected);
  entry.stored = absorberHeat(loop.circuit);
  enter(books, books.balance.collector, hour);
  books.whole.income += absorbed;
  books.whole.spent += lost;
}

function bookPipes(machine: Machine, hour: number): void {
  const { books, columns, loop } = machine;
  const { entry } = books;
  const collected = columns.collectorHeat[hour]!;
  const lost = columns.pipeLoss[hour]!;
  const coil = columns.coilHeat[hour]!;
  entry.income = collected;
  entry.spent = lost + coil;
  entry.through = Math.abs(collected) + Math.abs(lost) + Math.abs(coil);
  entry.stored = pipeHeat(loop.circuit);
  enter(books, books.balance.pipes, hour);
  books.whole.spent += lost;
}

function bookTank(machine: Machine, hour: number, stored: number): void {
  const { books, columns, house } = machine;
  const { entry } = books;
  const coil = columns.coilHeat[hour]!;
  const lost = columns.tankLoss[hour]! + columns.loadHeat[hour]!;
  const solar = columns.solarHeat[hour]!;
  const relief = columns.reliefHeat[hour]!;
  // An element's heat goes into the tank and out with the draw; the column of solar heat holds neither.
  const element = house.heater.stored || house.heater.instantaneous ? 0 : columns.heaterHeat[hour]!;
  entry.income = coil + element;
  entry.spent = lost + solar + element + relief;
  entry.through = Math.abs(coil) + Math.abs(lost) + Math.abs(solar + element) + element + relief;
  entry.stored = stored;
  enter(books, books.balance.tank, hour);
  books.whole.spent += lost + relief;
}

function bookHeater(machine: Machine, hour: number): void {
  const { books, columns, house } = machine;
  const { entry } = books;
  const solar = columns.solarHeat[hour]!;
  const burner = columns.heaterHeat[hour]!;
  const lost = columns.heaterLoss[hour]! + columns.ringLoss[hour]! + columns.hotPipeLoss[hour]!;
  const taps = columns.tapHeat[hour]!;
  entry.income = solar + burner;
  entry.spent = lost + taps;
  entry.through = Math.abs(solar) + burner + Math.abs(lost) + Math.abs(taps);
  entry.stored = house.heater.capacity * house.heater.temperature;
  enter(books, books.balance.heater, hour);
  books.whole.income += burner;
  books.whole.spent += lost + taps;
}

/** The same house without the sun stands for itself. */
function bookBaseline({ books, columns, house }: Machine, hour: number): void {
  const { entry } = books;
  const taps = books.baselineTapHeat[hour]!;
  const heat = columns.baselineHeat[hour]!;
  const lost = books.baselineLoss[hour]!;
  entry.income = heat;
  entry.spent = lost + taps;
  entry.through = heat + Math.abs(lost) + Math.abs(taps);
  entry.stored = house.baseline.capacity * house.baseline.temperature;
  bookHour(books.balance.baseline, hour, entry);
}
