// Puts the unit class alone in the place of dist/input/units.js, with the licences of what it is made of.
import { existsSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { createRequire } from 'node:module';
import { dirname, join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { build } from 'esbuild';

const here = dirname(fileURLToPath(import.meta.url));
const mathjs = createRequire(import.meta.url).resolve('mathjs/package.json');
const fraction = createRequire(mathjs).resolve('fraction.js/package.json');
const out = join(here, '../dist/input');

/** What of the class only writes, reckons with or makes units; numbers alone are converted here. */
const UNUSED = {
  methods:
    'divideInto|multiply|divide|pow|abs|toString|toJSON|fromJSON|simplify|toSI|formatUnits|toBest|format|_bestPrefix|splitUnit|equals|' +
    'setUnitSystem|getUnitSystem|createUnit|createUnitSingle|deleteUnit',
  functions: 'formatBest|handleVAandVARUnits|applyBestPrefixIfNeeded|assertUnitNameIsValid|getNumericIfUnitless|one',
};

/** The source of the class without them; a test holds what is left to the whole library, bit by bit. */
const smaller = {
  name: 'smaller',
  setup(step) {
    step.onLoad({ filter: /[\\/]type[\\/]unit[\\/]Unit\.js$/ }, ({ path }) => {
      const source = readFileSync(path, 'utf8');
      const contents = source
        .replace(
          new RegExp(`^ {2}Unit(?:\\.prototype)?\\.(?:${UNUSED.methods}) = function[\\s\\S]*?^ {2}\\};\\n`, 'gm'),
          '',
        )
        .replace(new RegExp(`^ {2}function (?:${UNUSED.functions})\\([\\s\\S]*?^ {2}\\}\\n`, 'gm'), '')
        .replace('  Unit.prototype.valueOf = Unit.prototype.toString;\n', '');
      if (contents.length > 0.9 * source.length) throw new Error('the unit library is written otherwise: cut it anew');
      return { contents };
    });
    // The fractions add, take away, multiply, divide and raise, and give their value.
    step.onLoad({ filter: /[\\/]fraction\.js[\\/].*\.m?js$/ }, ({ path }) => {
      const methods =
        'mod|gcd|lcm|inverse|log|equals|lte?|gte?|compare|ceil|floor|round|roundTo|divisible|toString|toFraction|toLatex|toContinued|simplify';
      const source = readFileSync(path, 'utf8');
      const contents = source.replace(
        new RegExp(`^ {2}["'](?:${methods})["']: function[\\s\\S]*?^ {2}\\},?\\n`, 'gm'),
        '',
      );
      if (contents.length > 0.8 * source.length) throw new Error(`${path} is written otherwise: cut it anew`);
      return { contents };
    });
  },
};

await build({
  entryPoints: [join(here, 'unit-class.ts')],
  outfile: join(out, 'units.js'),
  bundle: true,
  format: 'esm',
  platform: 'neutral',
  mainFields: ['module', 'main'],
  target: 'es2023',
  minify: true,
  legalComments: 'none',
  plugins: [smaller],
  banner: {
    js: '// The unit class of mathjs and the fractions that it counts by; licences: units-licences.txt beside this file.',
  },
});
rmSync(join(out, 'units.js.map'), { force: true });

const licence = (manifest) => {
  const { name, version } = JSON.parse(readFileSync(manifest, 'utf8'));
  const texts = ['LICENSE', 'NOTICE'].map((file) => join(dirname(manifest), file)).filter(existsSync);
  return [`${name} ${version}`, ...texts.map((file) => readFileSync(file, 'utf8').trim())].join('\n\n');
};
writeFileSync(join(out, 'units-licences.txt'), `${[mathjs, fraction].map(licence).join('\n\n\n')}\n`);
