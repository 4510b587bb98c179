// One task of an array job: runs its part of the study into results/part-<index>.jsonl. Started again after a crash or when the
// scheduler took the machine away, it goes on where it stopped.
import { shard } from '@noonloop/sim-core';
import { runStudy, shardFromEnvironment } from '@noonloop/sim-core/node';
import { study } from './study.ts';

const { index, count } = shardFromEnvironment();
const folder = process.env.RESULTS ?? 'results';
const rows = await runStudy(shard(study, index, count), { file: `${folder}/part-${index}.jsonl` });
console.log(`part ${index} of ${count}: ${rows.length} designs, ${rows.filter(({ error }) => error).length} failed`);
