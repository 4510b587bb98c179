// Time of the year loop against the same arithmetic in plain C++ (native/design-year.cpp), built with g++ -O2 where there is one. Pairs of
// runs, so that both meet the machine in the same mood. Run: pnpm run bench:native [pairs]
import { execFileSync, spawnSync } from 'node:child_process';
import { mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { readWeather } from '@noonloop/weather-io';
import { tableFlow } from '../../packages/sim-core/src/physics/loop/flow-table.ts';
import { assemble, type Machine } from '../../packages/sim-core/src/year/machine.ts';
import { stepHour } from '../../packages/sim-core/src/year/step.ts';
import { sum, withPanels } from '../examples.ts';

/** Years in each run of a pair. */
const YEARS = 10;
const pairs = Number(process.argv[2] ?? 10);

/** What the native program reads: numbers one after another, a list behind its length. */
function parameters(machine: Machine): Float64Array {
  const { circuit, coil, control, design, drivers, fluid, heater, tank } = machine;
  const table = machine.drive.offered!;
  // Rows are filled on demand; here all are wanted.
  for (let row = 0; row < table.fullPower.length; row++) tableFlow(table, 1, table.lowest + row / table.rowsPerKelvin);
  const numbers: number[] = [];
  const put = (...values: number[]) => numbers.push(...values);
  const list = (values: ArrayLike<number>) => {
    numbers.push(values.length);
    for (let at = 0; at < values.length; at++) numbers.push(values[at]!);
  };
  put(drivers.stepsPerHour, machine.darkSteps);
  for (const column of [drivers.lit, drivers.ambient, drivers.mains, drivers.tapVolume]) list(column);
  for (const column of [drivers.irradiance, drivers.absorbed, drivers.pumpSupply, drivers.skyLoss]) list(column);
  put(tank.room, control.startSupply, control.stopSupply, control.limit, control.release, tank.reliefTemperature);
  put(machine.risePerLight, machine.taps.target, design.draw.flow);
  put(heater.capacity, heater.design.lossCoefficient, heater.design.roomTemperature, heater.design.burnerPower);
  put(heater.design.setTemperature, heater.temperature);
  put(fluid.lowest, fluid.highest, fluid.origin, fluid.scale);
  list(fluid.density);
  list(fluid.specificHeat);
  put(circuit.absorberCapacity, circuit.nodeArea, circuit.a1, circuit.a2);
  for (const column of [circuit.pipeCapacity, circuit.pipeConductance, circuit.coilShare]) list(column);
  put(circuit.coilBottom, circuit.absorber.length, tank.temperature.length);
  put(circuit.absorber[0]!, tank.temperature[0]!, tank.nodeVolume, tank.nodeCapacity);
  const { film } = coil;
  put(film.frictionOfBend, film.exponent, film.factor, film.criticalReynolds, film.criticalRise);
  put(coil.wallResistance, coil.typicalOutside, coil.rowsPerKelvin);
  list(coil.inside);
  list(coil.outside);
  put(table.lowest, table.rowsPerKelvin);
  list(table.fullPower);
  list(table.flow);
  list([...tank.steps.keys()]);
  for (const step of tank.steps.values()) {
    put(step.passes, step.ratio);
    list(step.lossShare);
  }
  return Float64Array.from(numbers);
}

function build(folder: string): string | null {
  const program = join(folder, 'design-year');
  const source = new URL('native/design-year.cpp', import.meta.url).pathname;
  const built = spawnSync('g++', ['-O2', '-std=c++17', '-o', program, source], { stdio: 'inherit' });
  return built.status === 0 ? program : null;
}

const median = (values: readonly number[]) => values.toSorted((a, b) => a - b)[values.length >> 1]!;

const weather = await readWeather(new URL('../../docs/examples/weather/invented-valley.csv', import.meta.url).pathname);
const design = withPanels(2);
const folder = mkdtempSync(join(tmpdir(), 'noonloop-native-'));
try {
  const program = build(folder);
  if (program === null) console.log('skipped: no g++ on this machine');
  else compareTimes(program);
} finally {
  rmSync(folder, { recursive: true, force: true });
}

function compareTimes(program: string): void {
  const numbers = join(folder, 'numbers');
  writeFileSync(numbers, parameters(assemble(design, weather)));
  const native = () => JSON.parse(execFileSync(program, [numbers, String(YEARS)], { encoding: 'utf8' }));
  const own = () => {
    const times: number[] = [];
    let machine!: Machine;
    for (let year = 0; year < YEARS; year++) {
      machine = assemble(design, weather);
      const start = performance.now();
      for (let hour = 0; hour < 8760; hour++) stepHour(machine, hour);
      times.push(performance.now() - start);
    }
    return { median: median(times), fastest: Math.min(...times), machine };
  };
  own();
  const runs = Array.from({ length: pairs }, () => ({ native: native(), own: own() }));
  const { columns } = runs[0]!.own.machine;
  const theirs = runs[0]!.native;
  console.log('the same year:');
  const rows: [string, number, number][] = [
    ['delivered [kWh]', sum(columns.solarHeat) / 3.6e6, theirs.delivered / 3.6e6],
    ['coil heat [kWh]', sum(columns.coilHeat) / 3.6e6, theirs.coilHeat / 3.6e6],
    ['peak of the tank [°C]', Math.max(...columns.tankMaximumTemperature), theirs.peak],
    ['hottest absorber [°C]', Math.max(...columns.absorberTemperature), theirs.hottest],
    ['pump [h]', sum(columns.pumpRunning), theirs.pumpHours],
  ];
  for (const [name, ours, other] of rows) {
    console.log(`  ${name.padEnd(24)} ${ours.toFixed(6).padStart(14)} ${other.toFixed(6).padStart(14)}`);
    if (Math.abs(ours - other) > 1e-6 * Math.abs(ours)) process.exitCode = 1;
  }
  const ratio = median(runs.map((run) => run.own.median / run.native.median));
  console.log(
    `hours of a year, median of ${pairs} pairs of ${YEARS} years: here ${median(runs.map((run) => run.own.median)).toFixed(1)} ms, ` +
      `native ${median(runs.map((run) => run.native.median)).toFixed(1)} ms; fastest ${Math.min(...runs.map((run) => run.own.fastest)).toFixed(1)} and ` +
      `${Math.min(...runs.map((run) => run.native.fastest)).toFixed(1)} ms; ratio ${ratio.toFixed(2)} (limit 1.5)`,
  );
  if (ratio > 1.5) process.exitCode = 1;
}
