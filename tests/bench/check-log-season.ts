// One season of the proof of checkLog: logs with a planted fault from houses that differ at random from the model. Prints outcomes as
// JSON. Usage: check-log-season.ts <season> <cases of each fault and gauge set> <first seed>
import { defineSystem } from '@noonloop/sim-core';
import { CAUSES, type CauseCode } from '../../packages/sim-core/src/advice/check/causes.ts';
import { fitOf, reasonOf } from '../../packages/sim-core/src/advice/check/check-log.ts';
import { type DoubtCode, weighAndDoubt } from '../../packages/sim-core/src/advice/check/doubts.ts';
import { buildLibrary } from '../../packages/sim-core/src/advice/check/library.ts';
import { type MeasuredKey, type Observations, observe } from '../../packages/sim-core/src/advice/check/observe.ts';
import { noiseSchema, uncertaintySchema } from '../../packages/sim-core/src/advice/check/uncertainty.ts';
import { checkInput } from '../../packages/sim-core/src/input/check.ts';
import { inventedValley, plainInput } from '../examples.ts';
import { GAUGE_SETS, plant } from '../sim-core/advice/check/planted.ts';
import { type Outcome, SEASONS, type Slip } from './check-log-tables.ts';

const [season, each, firstSeed] = [
  process.argv[2] as keyof typeof SEASONS,
  ...process.argv.slice(3, 5).map(Number),
] as [keyof typeof SEASONS, number, number];
const SETTLE = 240;
const LENGTH = 24 * 35;
const READINGS = 30;
/** Healthy logs for one of each fault. */
const HEALTHY = 4;
const PSI = 0.0689475729;
const warm = (change: (value: number) => number): Partial<Record<MeasuredKey, (value: number) => number>> => ({
  tankTopTemperature: change,
  flowTemperature: change,
  returnTemperature: change,
});
/** What each does to the readings; pipes are swapped apart. */
const WRITTEN: Readonly<Partial<Record<DoubtCode, Partial<Record<MeasuredKey, (value: number) => number>>>>> = {
  'pipes-swapped': {},
  'psi-taken-for-bar': { loopPressure: (value) => value / PSI },
  'bar-taken-for-psi': { loopPressure: (value) => value * PSI },
  'fahrenheit-taken-for-celsius': warm((value) => 1.8 * value + 32),
  'celsius-taken-for-fahrenheit': warm((value) => (value - 32) / 1.8),
};

function miswritten(observations: Observations, code: DoubtCode): Observations {
  const swap: Partial<Record<MeasuredKey, MeasuredKey>> =
    code === 'pipes-swapped' ? { flowTemperature: 'returnTemperature', returnTemperature: 'flowTemperature' } : {};
  const numbers = observations.numbers.map((number) => ({
    ...number,
    key: swap[number.key] ?? number.key,
    value: WRITTEN[code]![number.key]?.(number.value) ?? number.value,
  }));
  return { ...observations, numbers };
}

const weather = await inventedValley();
const design = defineSystem(plainInput);
const uncertainty = checkInput(uncertaintySchema, {});
const noise = checkInput(noiseSchema, {});
const start = SEASONS[season];
const span = { from: start, to: start + SETTLE + LENGTH };
const library = buildLibrary(design, weather, span, { uncertainty, members: 12, seed: 1 });
const common = { design, weather, span, settle: SETTLE, uncertainty, noise, readings: READINGS };
let seed = firstSeed;

const outcomes: Outcome[] = [];
for (const [set, gauges] of Object.entries(GAUGE_SETS)) {
  for (const cause of CAUSES) {
    for (let k = 0; k < each * (cause === 'healthy' ? HEALTHY : 1); k++) {
      const { log } = plant({ ...common, cause, gauges, seed: ++seed });
      const { doubts, observations, weighing } = weighAndDoubt(library, observe(log), noise);
      const { weights, best } = weighing;
      const ranked = [...CAUSES].sort((a, b) => weights[b] - weights[a]);
      const first = ranked[0]!;
      const fit = fitOf(best.get(first)!, observations, uncertainty.model);
      const named = reasonOf(weights[first], fit, observations.numbers.length) === 'leads' ? first : 'cannot tell';
      const inFirstTwo = ranked.indexOf(cause) < 2;
      outcomes.push({ set, season, cause, first, named, inFirstTwo, doubted: doubts.length > 0 });
    }
  }
}

// Slips of the writing in healthy and faulty logs with all gauges.
const slips: Slip[] = [];
for (const planted of Object.keys(WRITTEN) as DoubtCode[]) {
  for (let k = 0; k < each; k++) {
    seed++;
    const cause: CauseCode = k % 2 === 0 ? 'healthy' : CAUSES[1 + (seed % (CAUSES.length - 1))]!;
    const { log } = plant({ ...common, cause, gauges: GAUGE_SETS['all gauges']!, seed });
    const { doubts, weighing } = weighAndDoubt(library, miswritten(observe(log), planted), noise);
    const first = [...CAUSES].sort((a, b) => weighing.weights[b] - weighing.weights[a])[0]!;
    slips.push({ planted, found: doubts.map(({ code }) => code), cause, first });
  }
}
console.log(JSON.stringify({ outcomes, slips, lastSeed: seed }));
