// The `ts` blocks of the pages, each run as a module of its own. What a block takes for granted stands before it on the page in a
// comment that readers do not see:
//     <!-- before the blocks:
//     const result = …;
//     -->
// and holds for all blocks after it, up to the next such comment.
import { spawnSync } from 'node:child_process';
import { mkdirSync, readdirSync, rmSync, writeFileSync } from 'node:fs';

/** Pages of the project, from its root. */
export function pagesOf(root) {
  const below = readdirSync(`${root}docs`, { recursive: true })
    .map(String)
    .filter((path) => path.endsWith('.md') && !path.startsWith('reference'))
    .map((path) => `docs/${path}`);
  return ['README.md', 'DEVELOPERS.md', ...below.sort()];
}

/** Blocks of a page with what stands before them. */
export function blocksOf(text) {
  const blocks = [];
  let before = '';
  for (const [, setup, code] of text.matchAll(/<!-- before the blocks:\n([\s\S]*?)-->|^```ts\n([\s\S]*?)^```/gm)) {
    if (setup !== undefined) before = setup;
    else blocks.push(joined(before, code));
  }
  return blocks;
}

/** A block after its setup; of two imports of one name the block's own stays. */
function joined(before, code) {
  if (before === '') return code;
  const namesOf = (list) => list.split(',').map((name) => name.trim());
  const own = new Set([...code.matchAll(/^import (?:type )?\{([^}]*)\}/gm)].flatMap(([, list]) => namesOf(list)));
  const setup = before.replace(/^import \{([^}]*)\}/gm, (_, list) => {
    return `import { ${namesOf(list)
      .filter((name) => !own.has(name))
      .join(', ')} }`;
  });
  return `${setup}\n${code}`; // imports are hoisted wherever they stand
}

/** Runs blocks in one process, in their order. @returns what failed, in words. */
export function runBlocks(root, page, blocks) {
  // Inside the checkout, so that the packages are found; `out` is not committed.
  const folder = `${root}out/blocks/${page.replaceAll('/', '-')}-${process.pid}`;
  mkdirSync(folder, { recursive: true });
  blocks.forEach((code, index) => {
    writeFileSync(`${folder}/block-${index + 1}.mts`, code);
  });
  const all = blocks.map(
    (_, index) => `console.log('-- block ${index + 1}');\nawait import('./block-${index + 1}.mts');`,
  );
  writeFileSync(`${folder}/all.mts`, all.join('\n'));
  const run = spawnSync('node_modules/.bin/tsx', ['--conditions=@noonloop/source', `${folder}/all.mts`], {
    cwd: root,
    encoding: 'utf8',
    maxBuffer: 1 << 26,
  });
  process.stdout.write(run.stdout);
  process.stderr.write(run.stderr);
  rmSync(folder, { recursive: true });
  if (run.status === 0) return [];
  const last = run.stdout.match(/-- block (\d+)/g)?.at(-1) ?? 'the first block';
  return [`${page}: ${last.replace('-- ', '')} ended with ${run.status}`];
}

/** Type-checks the blocks of all pages as a reader's strict TypeScript would. @returns what failed, in words. */
export function checkBlocks(root, blocksByPage) {
  const folder = `${root}out/blocks/types-${process.pid}`;
  mkdirSync(folder, { recursive: true });
  for (const [page, blocks] of blocksByPage) {
    blocks.forEach((code, index) => {
      writeFileSync(`${folder}/${page.replaceAll('/', '-')}-${index + 1}.mts`, `${code}\nexport {};\n`);
    });
  }
  writeFileSync(
    `${folder}/tsconfig.json`,
    JSON.stringify({ extends: '../../../tsconfig.check.json', include: ['*.mts'] }),
  );
  const { status, stdout } = spawnSync('node_modules/.bin/tsc', ['-p', folder], { cwd: root, encoding: 'utf8' });
  rmSync(folder, { recursive: true });
  return status === 0 ? [] : [`types of the blocks:\n${stdout}`];
}
