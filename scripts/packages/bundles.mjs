// What a browser would load: sizes with what is not used shaken off, and whether loading the packages does anything by itself.
import { readdirSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import { pathToFileURL } from 'node:url';
import { gzipSync } from 'node:zlib';
import { build } from 'esbuild';
import { quietly, root } from './run.mjs';

/** Bundles, and the most that each may weigh, gzipped. docs/guides/sizes-and-speeds.md states what they weigh. [kB] */
const BUNDLES = [
  ['`sunPosition`', "export { sunPosition } from '@noonloop/weather-io/sun';", 4],
  ['`parseWeather`', "export { parseWeather } from '@noonloop/weather-io';", 32],
  ['one formula, `mainsTemperature`', "export { mainsTemperature } from '@noonloop/sim-core/formulas';", 8],
  ['`defineSystem` and `simulate`', "export { defineSystem, simulate } from '@noonloop/sim-core';", 100],
  ['`renderText`', "export { renderText } from '@noonloop/reports';", 90],
  [
    'all three, nothing of them used',
    "import '@noonloop/reports'; import '@noonloop/sim-core'; import '@noonloop/weather-io';",
    0.1,
  ],
];

/** Bundles, prints the sizes and throws where one is over its bound, or where loading has an effect. */
export async function checkBundles() {
  const sizes = [];
  console.log('\nbundles for a browser, minified [kB] and gzipped [kB]');
  for (const [name, contents, most] of BUNDLES) {
    const { outputFiles } = await build({
      stdin: { contents, resolveDir: join(root, 'packages/reports') },
      bundle: true,
      minify: true,
      format: 'esm',
      platform: 'browser',
      external: ['node:*'],
      write: false,
      logLevel: 'silent',
    });
    const [whole, zipped] = weights(outputFiles[0].contents);
    sizes.push(told(name, whole, zipped));
    if (zipped > most) throw new Error(`${name}: ${zipped.toFixed(1)} kB gzipped, expected at most ${most}`);
  }
  await checkEffects();
  return [...sizes, ...(await livePage())];
}

/** Bytes as they are and gzipped. [kB] */
const weights = (contents) => [Buffer.byteLength(contents) / 1000, gzipSync(contents).length / 1000];

/** A row of sizes, printed. */
function told(name, whole, zipped) {
  console.log(`  ${name.padEnd(34)}${whole.toFixed(1).padStart(8)}${zipped.toFixed(1).padStart(8)}`);
  return [name, whole, zipped];
}

/** The live page and the engine in it, which the page carries packed. */
async function livePage() {
  const { liveScript } = await import(pathToFileURL(join(root, 'packages/reports/dist/live/bundles.js')).href);
  await quietly(process.execPath, ['--import', 'tsx', 'scripts/build-live.ts'], { cwd: root });
  return [
    told('the live page’s engine', ...weights((await liveScript('worker')).text)),
    told(
      'the live page of the demo, engine and weather packed in it',
      ...weights(readFileSync(join(root, 'out/live.html'))),
    ),
  ];
}

/** Loads every module of the packages in a process of its own and looks for traces. */
async function checkEffects() {
  const modules = ['weather-io', 'sim-core', 'reports'].flatMap((name) => {
    const dist = join(root, 'packages', name, 'dist');
    return readdirSync(dist, { recursive: true, encoding: 'utf8' })
      .filter((file) => file.endsWith('.js') && !isProgram(join(dist, file)))
      .map((file) => join(dist, file));
  });
  const words = await quietly(process.execPath, [join(root, 'scripts/packages/traces.mjs')], {
    env: { ...process.env, MODULES: JSON.stringify(modules) },
  });
  if (words !== 'none') throw new Error(`loading the packages leaves traces: ${words}`);
  console.log(
    `loading ${modules.length} modules: no global but zod's two, no listener, no output, no changed prototype`,
  );
}

/** A worker's first file runs when loaded: that is what it is for; nothing imports it. */
const isProgram = (file) => /parentPort|workerData/.test(readFileSync(file, 'utf8'));
