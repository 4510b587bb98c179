// After the last task: the parts become results/all.jsonl, the file that one long run would have written.
import { readdir } from 'node:fs/promises';
import { frontier } from '@noonloop/sim-core';
import { mergeResults, readResults } from '@noonloop/sim-core/node';

const folder = process.env.RESULTS ?? 'results';
const parts = (await readdir(folder))
  .filter((name) => /^part-\d+\.jsonl$/.test(name))
  .map((name) => `${folder}/${name}`);
const { total } = await mergeResults(parts, `${folder}/all.jsonl`);
console.log(`${parts.length} parts, ${total} designs in ${folder}/all.jsonl`);

const rows = await readResults(`${folder}/all.jsonl`);
for (const { cost, saving, row } of await frontier(rows, { cost: ({ inputs }) => inputs['array.panels'] as number })) {
  console.log(
    `${cost} panels: at best ${(saving / 3.6e6).toFixed(0)} kWh of fuel a year, with ${JSON.stringify(row.inputs)}`,
  );
}
