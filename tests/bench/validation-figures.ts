// The computed tables of docs/theory/validation.md, between their marks; written and compared by trust-figures.ts. Needs the real weather files.
import { inventedValley } from '../examples.ts';
import { compare, days } from '../validation/referee.ts';
import { CLIMATES, compareOne, mixedTank, PANELS, TANKS_L } from '../validation/standard-system.ts';
import { middle, plateShares, pumpOfModule, summerPeak } from '../validation/trade-knowledge.ts';
import { readRealAt } from '../weather-io/real-files.ts';
import { put, table } from './page-tables.ts';

/** With a real minus, and no minus before nothing. */
const signed = (value: number): string => {
  const text = Math.abs(value).toFixed(1);
  return text === '0.0' ? '0' : `${value < 0 ? '−' : '+'}${text}`;
};
const mean = (values: readonly number[]): number => values.reduce((sum, value) => sum + value, 0) / values.length;

function referee(): string {
  const rows = days.map((day) => {
    const { tank, circuit, tankAfterJump, circuitAfterJump } = compare(day, 1);
    const fine = compare(day, 10);
    const finest = Math.max(fine.tank, fine.circuit, fine.tankAfterJump);
    return [day.name, ...[tank, circuit, tankAfterJump, circuitAfterJump, finest].map((kelvin) => kelvin.toFixed(3))];
  });
  const head = [
    'day',
    'tank, K',
    'absorber and pipes, K',
    'tank after a jump, K',
    'fluid after a jump, K',
    'a tenth of the step, K',
  ];
  return table(head, rows);
}

async function monthly(): Promise<string> {
  const rows: (string | number)[][] = [];
  const differences: [number, number, number][] = [];
  for (const [name, file] of CLIMATES) {
    const weather = await readRealAt(file);
    for (const tank of TANKS_L) {
      for (const panels of PANELS) {
        const layered = compareOne(name, weather, panels, tank);
        const mixed = compareOne(name, weather, panels, tank, { variant: mixedTank });
        const points = (known: number, simulated: number) => 100 * (simulated - known);
        const three: [number, number, number] = [
          points(layered.method, layered.simulated),
          points(mixed.method, mixed.simulated),
          points(layered.methodUnknown, layered.simulated),
        ];
        differences.push(three);
        const percent = [layered.simulated, layered.method].map((fraction) => (100 * fraction).toFixed(1));
        rows.push([name, layered.area, tank, ...percent, ...three.map(signed)]);
      }
    }
  }
  const means = [0, 1, 2].map((column) => signed(mean(differences.map((three) => three[column]!))));
  rows.push(['mean', '', '', '', '', ...means]);
  const head = [
    'climate',
    'm²',
    'tank, L',
    'simulated, %',
    'method, %',
    'difference',
    'with a mixed tank',
    'pipes and coil unknown',
  ];
  return table(head, rows);
}

async function trade(): Promise<string> {
  const years = [
    ['invented valley', await inventedValley()],
    ['Greensboro', await readRealAt(CLIMATES[0][1])],
  ] as const;
  const rows = years.map(([name, weather]) => {
    const ten = pumpOfModule(weather, 10);
    const twenty = pumpOfModule(weather, 20);
    const share = middle(plateShares(weather)).toFixed(2);
    const running = [ten, twenty].map(
      (pump) => `${(100 * pump.running).toFixed(1)} %, ${pump.flow_L_per_min.toFixed(1)} L/min`,
    );
    return [name, share, ...running, ...[2, 3, 4].map((panels) => summerPeak(weather, panels).toFixed(0))];
  });
  const head = [
    'year',
    'black plate, kW/m² for 1 kW/m²',
    'pump with 10 W',
    'with 20 W',
    '2 panels, °C',
    '3 panels',
    '4 panels',
  ];
  return table(head, rows);
}

/** The page with its tables as they are now. @param page - As it is written. */
export async function validationPage(page: string): Promise<string> {
  const tables = { referee: referee(), monthly: await monthly(), trade: await trade() };
  return Object.entries(tables).reduce((text, [name, figures]) => put(text, name, figures), page);
}
