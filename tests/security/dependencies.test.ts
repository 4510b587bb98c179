import { existsSync, readFileSync, realpathSync } from 'node:fs';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { describe, expect, it } from 'vitest';

const root = fileURLToPath(new URL('../../', import.meta.url));
const read = (path: string) => readFileSync(join(root, path), 'utf8');

interface Manifest {
  readonly name: string;
  readonly license?: string;
  readonly version?: string;
  readonly dependencies?: Record<string, string>;
  readonly devDependencies?: Record<string, string>;
  readonly optionalDependencies?: Record<string, string>;
}

const folders = ['', 'packages/weather-io', 'packages/sim-core', 'packages/reports'];
const manifests = folders.map((folder) => JSON.parse(read(join(folder, 'package.json'))) as Manifest);
const direct = manifests.flatMap(({ dependencies, devDependencies, optionalDependencies }) =>
  Object.entries({ ...dependencies, ...devDependencies, ...optionalDependencies }),
);
const foreign = direct.filter(([name]) => !name.startsWith('@noonloop/'));

/** First cells of the table of dependencies. */
const explained = read('docs/guides/packages.md')
  .split('## Dependencies, and why each')[1]!
  .split('\n')
  .filter((line) => line.startsWith('| ') && !line.startsWith('| package'))
  .map((line) => line.split('|').map((cell) => cell.trim()))
  .flatMap(([, names, why]) => names!.split(', ').map((name) => ({ name, why: why! })));

/** Licence of a package whose manifest names none, by the words of its file. */
function licenceText(folder: string): string {
  const path = join(folder, 'LICENSE');
  const text = existsSync(path) ? readFileSync(path, 'utf8') : '';
  return text.includes('Redistribution and use in source and binary forms') ? 'BSD-2-Clause' : 'none stated';
}

describe('dependencies [docs/guides/packages.md against the package.json files]', () => {
  it('each has a line that says why, and each line is of one that is there', () => {
    const names = new Set(foreign.map(([name]) => name));
    expect(explained.filter(({ why }) => why.length < 10)).toEqual([]);
    const lines = new Set(explained.map(({ name }) => name));
    expect([...names].filter((name) => !lines.has(name))).toEqual([]);
    expect([...lines].filter((name) => !names.has(name))).toEqual([]);
  });

  it('each has one exact version', () => {
    for (const [name, version] of foreign) expect(version, name).toMatch(/^\d+\.\d+\.\d+$/);
    const versions = new Map<string, Set<string>>();
    for (const [name, version] of foreign) versions.set(name, (versions.get(name) ?? new Set()).add(version));
    expect([...versions].filter(([, of]) => of.size > 1)).toEqual([]);
  });

  it('what is published rests on free licences alone, all the way down', () => {
    const seen = new Map<string, string>();
    const visit = (folder: string): void => {
      const real = realpathSync(folder);
      const {
        name,
        license,
        version,
        dependencies = {},
      } = JSON.parse(readFileSync(join(real, 'package.json'), 'utf8')) as Manifest;
      const key = `${name}@${version}`;
      if (seen.has(key)) return;
      seen.set(key, license ?? licenceText(real));
      for (const below of Object.keys(dependencies)) {
        const own = join(real, 'node_modules', below);
        // pnpm lays what a package needs beside it.
        const beside = join(real.slice(0, real.lastIndexOf('node_modules')), 'node_modules', below);
        visit(existsSync(own) ? own : beside);
      }
    };
    for (const folder of folders.slice(1)) visit(join(root, folder));
    expect(seen.size).toBeGreaterThan(10);
    const free = /^\(?(MIT|ISC|0BSD|BSD-2-Clause|BSD-3-Clause|Apache-2\.0|BlueOak-1\.0\.0|CC0-1\.0|Unlicense)\b/;
    expect([...seen].filter(([, license]) => !free.test(license))).toEqual([]);
  });
});

describe('the lock file', () => {
  const text = read('pnpm-lock.yaml');

  it('names no address, and no source but the registry that the reader has set [requirement]', () => {
    expect(text).not.toMatch(/https?:|registry|tarball:|git\+|codeload|github:|file:[./]/);
  });

  it('has a hash of every package [requirement]', () => {
    // Names under `packages:` are indented by two, a blank line between; YAML's own reader takes half a second for all that is not looked at.
    const packages = /^packages:\n([\s\S]*?)^\S/m.exec(text)![1]!.trim().split(/\n\n+/);
    const bare = packages.filter(
      (entry) => !/^\S.*:\n {4}resolution: \{integrity: sha512-[\w+/=]{88}\}/.test(entry.trim()),
    );
    expect(packages.length).toBe(text.match(/^ {4}resolution:/gm)!.length);
    expect(packages.length).toBeGreaterThan(100);
    expect(bare).toEqual([]);
  });
});

describe('releases', () => {
  it('changesets know the three packages, which share one version [requirement]', () => {
    const { fixed, access } = JSON.parse(read('.changeset/config.json')) as { fixed: string[][]; access: string };
    expect(fixed).toEqual([manifests.slice(1).map(({ name }) => name)]);
    expect(access).toBe('public');
    expect(new Set(manifests.slice(1).map(({ version }) => version)).size).toBe(1);
    for (const folder of folders.slice(1)) expect(existsSync(join(root, folder, 'README.md'))).toBe(true);
  });
});
