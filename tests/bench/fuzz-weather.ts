// Mutated copies of each real file; 10,000 of each unless told. Run:
//     node --import ./tests/typescript.mjs --conditions=@noonloop/source tests/bench/fuzz-weather.ts [copies] [seed] [file …]
import { fuzz } from '../weather-io/fuzz.ts';
import { fuzzFile } from '../weather-io/fuzz-files.ts';
import { hasRealFiles, REAL_NAMES, type RealFile } from '../weather-io/real-files.ts';

const [copies = '10000', seed = '1', ...names] = process.argv.slice(2);
if (!hasRealFiles) console.log('skipped: the real weather files are not there');
else {
  for (const name of names.length > 0 ? (names as RealFile[]) : REAL_NAMES) {
    const started = performance.now();
    const { counts, findings, slowest } = fuzz(fuzzFile(name), Number(copies), Number(seed));
    const seconds = ((performance.now() - started) / 1000).toFixed(0);
    console.log(
      `${name}: ${copies} copies in ${seconds} s, the slowest ${slowest.toFixed(0)} ms; read as before ${counts.readAlike}, ` +
        `as changed ${counts.readAsChanged}, refused ${counts.refused}; findings ${findings.length}`,
    );
    for (const { round, mutation, what } of findings.slice(0, 30))
      console.log(`  round ${round}: ${mutation}: ${what}`);
    if (findings.length > 0) process.exitCode = 1;
  }
}
