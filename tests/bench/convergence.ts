// Table of docs/theory/tank.md: delivered energy and peak of the tank by number of tank nodes, against the default's 20.
// Run: node --import ./tests/typescript.mjs --conditions=@noonloop/source tests/bench/convergence.ts
import { defineSystem, type SystemInput, simulate } from '@noonloop/sim-core';
import { inventedValley, plainInput, sum } from '../examples.ts';

const NODES = [10, 15, 30, 40, 80];

const CASES: readonly (readonly [string, Partial<SystemInput>])[] = [
  ['2 panels', {}],
  ['3 panels, no high limit', { array: { ...plainInput.array, panels: 3 }, control: { highLimit: null } }],
  ['2 panels, element', { heater: { kind: 'element' } }],
  ['2 panels, profile L', { draw: { profile: 'L' } }],
  ['2 panels, jet 12 mm', { tank: { volume: 0.3, inletDiameter: 0.012 } }],
];

const weather = await inventedValley();

function run(over: Partial<SystemInput>, nodes: number) {
  const design = defineSystem({ ...plainInput, ...over, tank: { ...plainInput.tank, ...over.tank, nodes } });
  const { columns } = simulate(design, weather);
  return { delivered: sum(columns.solarHeat), peak: Math.max(...columns.tankMaximumTemperature) };
}

const signed = (value: number, digits: number) => `${value < 0 ? '−' : '+'}${Math.abs(value).toFixed(digits)}`;

console.log(`| nodes | ${CASES.map(([name]) => name).join(' | ')} |`);
console.log(`| --- |${' --- |'.repeat(CASES.length)}`);
const references = CASES.map(([, over]) => run(over, 20));
for (const nodes of NODES) {
  const cells = CASES.map(([, over], index) => {
    const { delivered, peak } = run(over, nodes);
    const reference = references[index]!;
    return `${signed(100 * (delivered / reference.delivered - 1), 2)} %, ${signed(peak - reference.peak, 1)} K`;
  });
  console.log(`| ${nodes} | ${cells.join(' | ')} |`);
}
