// The table of sizes in docs/guides/sizes-and-speeds.md: written from what was measured, or compared with it.
import { readFileSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { root } from './run.mjs';

const page = join(root, 'docs/guides/sizes-and-speeds.md');
const MARKED = /(<!-- sizes: [^\n]*-->\n)[\s\S]*?(<!-- end of sizes -->)/;

/** A tenth more or less is no news. */
const SAME = 0.1;

/** @param measured - Name, minified and gzipped kB; installed sizes as MB, without a second number. */
export function checkSizesPage(measured) {
  const rows = measured.filter(([, one]) => one > 0.1);
  const text = readFileSync(page, 'utf8');
  const lines = rows.map(([name, one, other]) =>
    other === undefined ? `| ${name} | ${one.toFixed(1)} MB | |` : `| ${name} | ${kB(one)} | ${kB(other)} |`,
  );
  const table = ['| | minified, or on disk | gzipped |', '| --- | --- | --- |', ...lines].join('\n');
  if (process.argv.includes('--write')) {
    writeFileSync(
      page,
      text.replace(MARKED, (_, from, to) => `${from}\n${table}\n\n${to}`),
    );
    return;
  }
  const written = [...(MARKED.exec(text)?.[0] ?? '').matchAll(/^\| ([^|]+) \| ([\d.]+) [kM]B \| ([\d.]*)/gm)];
  for (const [name, one] of rows) {
    const stated = Number(written.find(([, word]) => word === name)?.[2]);
    if (!(Math.abs(stated / one - 1) < SAME))
      throw new Error(
        `docs/guides/sizes-and-speeds.md states ${stated} for "${name}", found ${one.toFixed(1)}: run node scripts/check-packages.mjs --write`,
      );
  }
}

const kB = (size) => `${size < 10 ? size.toFixed(1) : size.toFixed(0)} kB`;
