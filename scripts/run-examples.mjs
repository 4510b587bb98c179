// Runs every example and every `ts` block of the pages; one that fails, fails the run. A page that quotes what an example prints,
// between the marks `<!-- printed by docs/examples/name.ts -->` and `<!-- end of print -->`, must quote it as it is:
//     node scripts/run-examples.mjs            examples, quotes, blocks
//     node scripts/run-examples.mjs --write    puts the quotes into the pages instead of comparing them
//     node scripts/run-examples.mjs page.md    the blocks of some pages only
import { readdirSync, readFileSync, writeFileSync } from 'node:fs';
import { fileURLToPath } from 'node:url';
import { blocksOf, checkBlocks, forEachInOrder, pagesOf, runBlocks, runScript } from './run-blocks.mjs';

const root = fileURLToPath(new URL('..', import.meta.url));
const write = process.argv.includes('--write');
const chosen = process.argv.slice(2).filter((argument) => argument !== '--write');
const failures = [];

const printed = new Map();
if (chosen.length === 0) {
  const examples = readdirSync(`${root}docs/examples`).filter((file) => file.endsWith('.ts'));
  if (examples.length === 0) throw new Error('no examples found in docs/examples');
  const run = async (example) => {
    const path = `docs/examples/${example}`;
    return { path, ...(await runScript(root, path)) };
  };
  await forEachInOrder(examples, run, ({ path, status, stdout, all }) => {
    process.stdout.write(`\n== ${path}\n${all}`);
    if (status !== 0) failures.push(`${path} ended with ${status}`);
    printed.set(path, stdout);
  });
  console.log(`\n${examples.length} examples ran`);
}

const pages = chosen.length > 0 ? chosen : pagesOf(root);
const QUOTE = /(<!-- printed by (\S+) -->\n)[\s\S]*?(<!-- end of print -->)/g;
let quotes = 0;
for (const page of chosen.length > 0 ? [] : pages) {
  const text = readFileSync(root + page, 'utf8');
  const current = text.replace(QUOTE, (_, from, path, to) => {
    quotes++;
    if (!printed.has(path)) throw new Error(`${page} quotes ${path}, which did not run`);
    const lines = printed
      .get(path)
      .split('\n')
      .map((line) => line.trimEnd());
    return `${from}\n\`\`\`text\n${lines.join('\n').trim()}\n\`\`\`\n\n${to}`;
  });
  if (current === text) continue;
  if (write) writeFileSync(root + page, current);
  else
    failures.push(`${page} quotes other numbers than its example prints; run: node scripts/run-examples.mjs --write`);
}
if (chosen.length === 0) console.log(`${quotes} quotes ${write ? 'written' : 'compared'}`);

const blocksByPage = pages
  .map((page) => [page, blocksOf(readFileSync(root + page, 'utf8'))])
  .filter(([, blocks]) => blocks.length > 0);
await forEachInOrder(
  blocksByPage,
  ([page, blocks]) => runBlocks(root, page, blocks),
  (run) => {
    process.stdout.write(`\n== ${run.page}\n${run.printed}`);
    failures.push(...run.failures);
  },
);
failures.push(...checkBlocks(root, blocksByPage));
console.log(`\n${blocksByPage.reduce((sum, [, blocks]) => sum + blocks.length, 0)} blocks ran, types checked`);

for (const failure of failures) console.error(failure);
if (failures.length > 0) process.exit(1);
