// Licences of the foreign packages of which something is in a bundle.
import { existsSync, readdirSync, readFileSync } from 'node:fs';
import { dirname, join } from 'node:path';
import { fileURLToPath } from 'node:url';

const core = join(dirname(fileURLToPath(import.meta.url)), '../../sim-core');

/** Name, version and licence of each, parted by empty lines. @param inputs - Files of the bundle, as esbuild's metafile lists them. */
export function licencesOf(inputs) {
  const folders = new Set(
    inputs.flatMap((file) => /^.*\/node_modules\/(?:@[^/]+\/)?[^/]+(?=\/)/.exec(file)?.[0] ?? []),
  );
  const licences = [...folders].map((folder) => {
    const { name, version } = JSON.parse(readFileSync(join(folder, 'package.json'), 'utf8'));
    const files = readdirSync(folder, { withFileTypes: true })
      .filter((entry) => entry.isFile() && /^(licen[cs]e|notice)/i.test(entry.name))
      .map(({ name: file }) => file);
    const texts = files.map((file) => readFileSync(join(folder, file), 'utf8').trim());
    // Some have it at the end of their README.
    if (texts.length === 0)
      texts.push(/^#+ LICENSE[\s\S]*/im.exec(readFileSync(join(folder, 'README.md'), 'utf8'))?.[0].trim() ?? '');
    if (texts[0] === '') throw new Error(`${name} is bundled and has no licence in its folder`);
    return [`${name} ${version}`, ...texts].join('\n\n');
  });
  const units = join(core, 'dist/input/units-licences.txt');
  if (existsSync(units) && !licences.some((one) => one.startsWith('mathjs ')))
    licences.push(readFileSync(units, 'utf8').trim());
  return `${licences.sort().join('\n\n\n')}\n`;
}
