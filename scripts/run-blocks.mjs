// The `ts` blocks of the pages, each run as a module of its own. What a block takes for granted stands before it on the page in a
// comment that readers do not see:
//     <!-- before the blocks:
//     const result = …;
//     -->
// and holds for all blocks after it, up to the next such comment.
import { spawn, spawnSync } from 'node:child_process';
import { mkdirSync, readdirSync, rmSync, writeFileSync } from 'node:fs';
import { availableParallelism } from 'node:os';

/** Pages of the project, from its root. */
export function pagesOf(root) {
  const below = readdirSync(`${root}docs`, { recursive: true })
    .map(String)
    .filter((path) => path.endsWith('.md') && !path.startsWith('reference'))
    .map((path) => `docs/${path}`);
  return ['README.md', 'DEVELOPERS.md', 'CONTRIBUTING.md', 'SECURITY.md', 'CHANGELOG.md', ...below.sort()];
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

/** Runs a script from the sources. @returns its exit code, what it printed, and both streams as they came. */
export function runScript(root, path) {
  return new Promise((resolve, reject) => {
    const asSource = ['--conditions=@noonloop/source', '--import', './tests/typescript.mjs'];
    const run = spawn(process.execPath, [...asSource, path], { cwd: root });
    const streams = { stdout: '', all: '' };
    run.stdout.setEncoding('utf8').on('data', (text) => {
      streams.stdout += text;
      streams.all += text;
    });
    run.stderr.setEncoding('utf8').on('data', (text) => {
      streams.all += text;
    });
    run.on('error', reject).on('close', (status) => resolve({ status, ...streams }));
  });
}

/** Does a job for each item, as many at a time as the machine has cores, and hands the results on in the order of the items. */
export async function forEachInOrder(items, job, take) {
  const running = [];
  for (const item of items) {
    running.push(job(item));
    if (running.length >= availableParallelism()) take(await running.shift());
  }
  for (const rest of running) take(await rest);
}

/** Runs blocks in one process, in their order. @returns the page, what it printed and what failed, in words. */
export async function runBlocks(root, page, blocks) {
  // Inside the checkout, so that the packages are found; `out` is not committed.
  const folder = `${root}out/blocks/${page.replaceAll('/', '-')}-${process.pid}`;
  mkdirSync(folder, { recursive: true });
  blocks.forEach((code, index) => {
    writeFileSync(`${folder}/block-${index + 1}.mts`, code);
  });
  const inOrder = blocks.map(
    (_, index) => `console.log('-- block ${index + 1}');\nawait import('./block-${index + 1}.mts');`,
  );
  writeFileSync(`${folder}/all.mts`, inOrder.join('\n'));
  const { status, stdout, all: printed } = await runScript(root, `${folder}/all.mts`);
  rmSync(folder, { recursive: true });
  const last = stdout.match(/-- block (\d+)/g)?.at(-1) ?? 'the first block';
  const failures = status === 0 ? [] : [`${page}: ${last.replace('-- ', '')} ended with ${status}`];
  return { page, printed, failures };
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
