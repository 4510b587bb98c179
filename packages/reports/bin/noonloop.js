#!/usr/bin/env node
// Runs the command, which is packed as one script. What V8 made of the script is kept between calls, so that the next need not make it anew.
import { readFileSync } from 'node:fs';
import { createRequire } from 'node:module';
import { fileURLToPath } from 'node:url';
import { setFlagsFromString } from 'node:v8';
import { Script } from 'node:vm';
import { readKept, writeKept } from './kept.js';

/**
 * A year or two are over before dearer machine code has paid for itself: without these arts of V8 the first year takes a quarter less of the
 * processor, and each after the second a third more. Bits do not change.
 */
const LIGHT_COMPILING = [
  '--max-inlined-bytecode-size-cumulative=0',
  '--no-turbo-loop-peeling',
  '--no-turbo-loop-variable',
];

/**
 * A loop waits for its better code instead of running on in the poor one: a twenty-fifth less on Node 20, a fortieth on 22, but more on 24.
 */
const WAIT_FOR_CODE = '--no-concurrent-osr';

/** Versions of Node that know these flags; another would complain. */
const KNOW_THEM = /^(20|22|24)\./;

const words = process.argv.slice(2);
const { node } = process.versions;
/** Whether a year or a few are all that is asked for. */
const isSoonOver = /^(run|compare)$/.test(words[0] ?? '') && words.length < 12 && !words.includes('--how-sure');
if (isSoonOver && KNOW_THEM.test(node))
  for (const flag of node < '24' ? [...LIGHT_COMPILING, WAIT_FOR_CODE] : LIGHT_COMPILING) setFlagsFromString(flag);

const url = new URL('../dist/command/noonloop.cjs', import.meta.url);
const filename = fileURLToPath(url);
const source = readFileSync(filename);
const kind = isSoonOver ? 'light' : 'usual';
const cachedData = readKept(kind, source);
const script = new Script(source.toString('latin1'), {
  filename,
  ...(cachedData === undefined ? {} : { cachedData }),
});
const { runProcess } = script.runInThisContext()(createRequire(url), (name) => import(name), url.href);
await runProcess();
// A call that failed ran too little of the script.
const isNew = cachedData === undefined || script.cachedDataRejected;
if (isNew && !process.exitCode) writeKept(kind, source, () => script.createCachedData());
