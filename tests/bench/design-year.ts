// Time of one design-year, and what its parts cost: drivers (sun, planes, module), assembly (tables), the hours themselves.
import { readWeather } from '@noonloop/weather-io';
import { Bench } from 'tinybench';
import { compileDrivers } from '../../packages/sim-core/src/year/drivers.ts';
import { assemble } from '../../packages/sim-core/src/year/machine.ts';
import { simulate } from '../../packages/sim-core/src/year/simulate.ts';
import { stepHour } from '../../packages/sim-core/src/year/step.ts';
import { withPanels } from '../examples.ts';

const weather = await readWeather(new URL('../../docs/examples/weather/invented-valley.csv', import.meta.url).pathname);
const design = withPanels(2);
const machine = assemble(design, weather);

const bench = new Bench({ time: 1500, warmupTime: 1000 });
bench
  .add('one design-year', () => simulate(design, weather))
  .add('  its drivers', () => compileDrivers(design, weather, 12))
  .add('  its hours', () => {
    for (let hour = 0; hour < 8760; hour++) stepHour(machine, hour);
  });
await bench.run();

for (const task of bench.tasks) {
  const { result } = task;
  if (result.state !== 'completed') throw new Error(`${task.name} did not run: ${result.state}`);
  const median_ms = result.latency.p50;
  console.log(
    `${task.name.padEnd(18)} ${median_ms.toFixed(1).padStart(7)} ms median  ${(1000 / median_ms).toFixed(1).padStart(6)} a second  (${result.latency.samplesCount} runs)`,
  );
}
