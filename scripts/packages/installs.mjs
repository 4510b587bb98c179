// Installs the tarballs into empty projects, as a stranger would: npm, pnpm and yarn, both module resolutions, strict types, the command.
import {
  copyFileSync,
  cpSync,
  existsSync,
  mkdirSync,
  mkdtempSync,
  readdirSync,
  readFileSync,
  rmSync,
  statSync,
  writeFileSync,
} from 'node:fs';
import { tmpdir } from 'node:os';
import { basename, join } from 'node:path';
import { GUIDES, runGuide } from './guides.mjs';
import { pnpm, quietly, root } from './run.mjs';
import { checkRuntimes } from './runtimes.mjs';

/** The yarn that is still met most, and a new one, with node-modules; its Plug'n'Play was tried by hand. */
const YARN = 'yarn@1.22.22';
const NEW_YARN = '@yarnpkg/cli-dist@4.18.1';

const NAMES = ['weather-io', 'sim-core', 'reports'];

/** A stranger's first script, with types that must not have become `any`. */
const SCRIPT = `import { renderText, type Summary, summarize } from '@noonloop/reports';
import { defineSystem, DesignError, type RunResult, simulate, type SystemDesign } from '@noonloop/sim-core';
import { sunPosition } from '@noonloop/weather-io/sun';
import { readWeather, type WeatherYear } from '@noonloop/weather-io';

const weather: WeatherYear = await readWeather('weather.csv');
const design: SystemDesign = defineSystem({
  array: { panels: 2, tilt: 40, azimuth: 180, collector: { area: '21 ft2', eta0: 0.75, a1: 3.8, a2: 0.012 } },
  tank: { volume: '80 gal' },
  draw: { dailyVolume: '200 L' },
});
const year: RunResult = simulate(design, weather);
const summary: Summary = summarize(year);
const change = () => {
  // @ts-expect-error: a design is typed through and through, and frozen
  design.tank.volume = 'big';
};
// @ts-expect-error: so is what people write
const wrong = () => defineSystem({ tank: { volumne: 1 } });
try {
  wrong();
  throw new Error('a faulty design passed');
} catch (error) {
  if (!(error instanceof DesignError)) throw error;
}
try {
  change();
  throw new Error('a design was changed');
} catch (error) {
  if (!(error instanceof TypeError)) throw error;
}
const noon = sunPosition({ time: Date.UTC(2023, 5, 21, 12), latitude: 0, longitude: 0 });
if (!(summary.year.deliveredEnergy > 1e9) || !renderText(year).includes('Energy delivered') || !(noon.zenith < 30))
  throw new Error('the year came out wrong');
for (const schema of ['sim-core/schema/design-1.json', 'reports/schema/report-1.json'])
  import.meta.resolve(\`@noonloop/\${schema}\`);
`;

/** Both ways in which TypeScript finds packages. */
const RESOLUTIONS = {
  nodenext: { module: 'nodenext', moduleResolution: 'nodenext' },
  bundler: { module: 'esnext', moduleResolution: 'bundler' },
};

/** Installs and tries; throws at the first fault. */
export async function checkInstalls(tarballs) {
  const folder = mkdtempSync(join(tmpdir(), 'noonloop-install-'));
  const tarballOf = (name) => `file:${tarballs.find((path) => path.includes(`noonloop-${name}-`))}`;
  const files = Object.fromEntries(NAMES.map((name) => [`@noonloop/${name}`, tarballOf(name)]));
  try {
    // Both to their end, so that the folder can be removed.
    const outcomes = await Promise.allSettled([
      tryProject(join(folder, 'npm'), files, ['nodenext', 'bundler'], (cwd) =>
        quietly('npm', ['install', '--prefer-offline', '--no-audit', '--no-fund', '--ignore-scripts'], { cwd }),
      ),
      tryProject(join(folder, 'pnpm'), files, ['nodenext'], async (cwd) => {
        // What one tarball needs of another is not on any registry yet.
        const overrides = Object.entries(files).map(([name, file]) => `  '${name}': '${file}'\n`);
        writeFileSync(join(cwd, 'pnpm-workspace.yaml'), `overrides:\n${overrides.join('')}`);
        await quietly('npx', ['--yes', pnpm, 'install', '--prefer-offline', '--ignore-scripts'], { cwd });
      }),
      tryProject(join(folder, 'yarn'), files, ['nodenext'], async (cwd) => {
        withResolutions(cwd, files);
        // Its own cache may hold a tarball of the same name and version from an earlier check.
        const options = ['--silent', '--ignore-scripts', '--no-lockfile', '--cache-folder', join(folder, 'yarn-cache')];
        await quietly('npx', ['--yes', YARN, 'install', ...options], { cwd });
      }),
      tryProject(join(folder, 'yarn 4'), files, ['nodenext'], async (cwd) => {
        withResolutions(cwd, files);
        writeFileSync(join(cwd, 'yarn.lock'), ''); // a project of its own, whatever stands above it
        writeFileSync(
          join(cwd, '.yarnrc.yml'),
          'nodeLinker: node-modules\nenableScripts: false\nenableTelemetry: false\n',
        );
        const registry = (await quietly('npm', ['config', 'get', 'registry'], { cwd })).trim();
        const env = { ...process.env, YARN_NPM_REGISTRY_SERVER: registry, YARN_ENABLE_IMMUTABLE_INSTALLS: 'false' };
        await quietly('npx', ['--yes', `--package=${NEW_YARN}`, 'yarn', 'install'], { cwd, env });
      }),
    ]);
    for (const outcome of outcomes) if (outcome.status === 'rejected') throw outcome.reason;
    await checkExtension(join(folder, 'npm'));
    await checkRuntimes(join(folder, 'npm'));
    await checkGuides(folder, join(folder, 'npm/node_modules/.bin'));
    return await installedSizes(folder, files);
  } finally {
    rmSync(folder, { recursive: true, force: true });
  }
}

/** What one tarball needs of another is the tarball, too. */
function withResolutions(cwd, files) {
  const path = join(cwd, 'package.json');
  writeFileSync(path, JSON.stringify({ ...JSON.parse(readFileSync(path, 'utf8')), resolutions: files }));
}

async function tryProject(cwd, dependencies, resolutions, install) {
  mkdirSync(cwd);
  const project = { name: 'stranger', private: true, type: 'module', dependencies };
  writeFileSync(join(cwd, 'package.json'), JSON.stringify(project));
  writeFileSync(join(cwd, 'script.ts'), SCRIPT);
  copyFileSync(join(root, 'docs/examples/weather/invented-valley.csv'), join(cwd, 'weather.csv'));
  await install(cwd);
  for (const name of resolutions) {
    // No type of Node, and the libraries' own declarations are checked too.
    const compilerOptions = {
      ...RESOLUTIONS[name],
      strict: true,
      exactOptionalPropertyTypes: true,
      noUncheckedIndexedAccess: true,
      skipLibCheck: false,
      target: 'es2023',
      lib: ['es2023', 'dom'],
      types: [],
      outDir: name,
    };
    writeFileSync(join(cwd, `${name}.json`), JSON.stringify({ compilerOptions, files: ['script.ts'] }));
    await quietly(join(root, 'node_modules/.bin/tsc'), ['-p', `${name}.json`], { cwd });
  }
  const command = join(cwd, 'node_modules/@noonloop/reports/bin/noonloop.js');
  await quietly(join(cwd, 'node_modules/.bin/noonloop'), ['draft', '--out', 'house.yaml'], { cwd });
  for (const node of ['', ...(process.env.NOONLOOP_NODES ?? '').split(',').filter((version) => version !== '')]) {
    const [program, words] = node === '' ? [process.execPath, []] : ['npx', ['--yes', `node@${node}`]];
    const onNode = (...args) => quietly(program, [...words, ...args], { cwd, env: { ...process.env, TMPDIR: cwd } });
    await onNode('nodenext/script.js');
    // CommonJS takes the packages too, since Node 20.19 requires ES modules.
    await onNode('--input-type=commonjs', '-e', "if (!require('@noonloop/reports').renderText) process.exit(1)");
    const run = [command, 'run', 'house.yaml', '--weather', 'weather.csv', '--detail', 'short'];
    const report = await onNode(...run);
    if (!report.includes('Fuel saved a year')) throw new Error(`the command reported nothing: ${report}`);
    if ((await onNode(...run)) !== report) throw new Error('the command reports otherwise by what it kept');
    if (!readdirSync(cwd).some((name) => name.startsWith('noonloop-')))
      throw new Error(`the command kept nothing in two calls: ${readdirSync(cwd)}`);
    const version = (await onNode('--version')).trim();
    const manager = basename(cwd);
    console.log(
      `installed by ${manager}, Node ${version}: script, types (${resolutions.join(', ')}), require, command`,
    );
  }
}

/** The guides' commands, in both systems of units, with what the slowest of each word took. */
async function checkGuides(folder, bin) {
  const slowest = new Map();
  const inUnits = async (units) => {
    for (const guide of GUIDES) {
      const { cwd, times } = await runGuide(root, guide, { folder, bin, units });
      if (times.length <= 30) throw new Error(`${guide}: found only ${times.length} commands`);
      if (!existsSync(join(cwd, 'fitted.yaml'))) throw new Error(`${guide}: its last command wrote no fitted.yaml`);
      for (const { command, seconds } of times) {
        const word = /^noonloop (\S+)/.exec(command)?.[1];
        if (word !== undefined) slowest.set(word, Math.max(seconds, slowest.get(word) ?? 0));
      }
      console.log(`${guide}: ${times.length} commands ran from the installed packages, ${units} units`);
    }
  };
  // Side by side, and both to their end, so that the folder can be removed.
  const outcomes = await Promise.allSettled(['metric', 'us'].map(inUnits));
  for (const outcome of outcomes) if (outcome.status === 'rejected') throw outcome.reason;
  const list = [...slowest].map(([word, seconds]) => `${word} ${seconds.toFixed(1)}`);
  console.log(`slowest call of each word [s]: ${list.join(', ')}`);
}

/** Most that the simulation may take on a disk without the reports. [MB] */
const MOST_MB = 25;

/** What the packages take on a disk with all that they need: name and MB, as files count their bytes. */
async function installedSizes(folder, files) {
  const cwd = join(folder, 'core');
  mkdirSync(cwd);
  const { '@noonloop/reports': _, ...dependencies } = files;
  writeFileSync(join(cwd, 'package.json'), JSON.stringify({ name: 'core', private: true, dependencies }));
  await quietly('npm', ['install', '--prefer-offline', '--no-audit', '--no-fund', '--ignore-scripts'], { cwd });
  const megabytes = (place) =>
    readdirSync(place, { recursive: true, withFileTypes: true })
      .filter((entry) => entry.isFile())
      .reduce((sum, { parentPath, name }) => sum + statSync(join(parentPath, name)).size, 0) / 1e6;
  const [core, all] = ['core', 'npm'].map((name) => megabytes(join(folder, name, 'node_modules')));
  console.log(`installed: ${core.toFixed(1)} MB without the reports, ${all.toFixed(1)} MB with them`);
  if (core > MOST_MB)
    throw new Error(`sim-core and weather-io take ${core.toFixed(1)} MB, expected at most ${MOST_MB}`);
  return [
    ['installed: sim-core and weather-io, with all that they need', core],
    ['installed: all three, with all that they need', all],
  ];
}

/** The example of an extension, built against the installed packages as its author would, and used. */
async function checkExtension(cwd) {
  const place = join(cwd, 'node_modules/noonloop-extension-example');
  cpSync(join(root, 'docs/examples/extension'), place, { recursive: true });
  await quietly(join(root, 'node_modules/.bin/tsc'), ['-p', 'tsconfig.json'], { cwd: place });
  const script = `import { evenings, tubeField } from 'noonloop-extension-example';
import { renderMarkdown } from '@noonloop/reports';
import { defineSystem, simulate } from '@noonloop/sim-core';
import { readWeather } from '@noonloop/weather-io';
const collector = tubeField({ tubes: 30, aperture: 0.1, eta0: 0.62, a1: 1.1, a2: 0.004 });
const array = { panels: 1, tilt: 40, azimuth: 180, collector };
const design = defineSystem({ array, tank: { volume: 0.3 }, draw: { dailyVolume: 0.2 } });
const run = simulate(design, await readWeather('weather.csv'));
if (!renderMarkdown(run, { ownSections: [evenings(run)] }).includes('## Evenings')) process.exit(1);
`;
  writeFileSync(join(cwd, 'extended.mjs'), script);
  await quietly(process.execPath, ['extended.mjs'], { cwd });
  console.log('an extension from outside: built and used');
}
