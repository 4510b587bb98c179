import { existsSync, readFileSync } from 'node:fs';
import { dirname, join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { describe, expect, it } from 'vitest';
import { blocksOf, pagesOf } from '../../scripts/run-blocks.mjs';

const root = fileURLToPath(new URL('../..', import.meta.url));
const pages: string[] = pagesOf(root);

describe('pages of the documentation [requirement]', () => {
  it.each(pages)('%s leads to files that are there, and names such', (page) => {
    const text = readFileSync(root + page, 'utf8');
    const links = [...text.matchAll(/\]\(([^)#\s]+)[^)]*\)/g)].map(([, link]) => link!);
    const broken = links.filter((link) => !link.includes('://') && !existsSync(join(root, dirname(page), link)));
    expect(broken).toEqual([]);
    const named = [...text.matchAll(/`((?:packages|tests|scripts)\/[\w./-]+)`/g)].map(([, path]) => path!);
    expect(named.filter((path) => !existsSync(join(root, path)))).toEqual([]);
  });

  it('stand in docs/README.md, guides and theory all', () => {
    const index = readFileSync(`${root}docs/README.md`, 'utf8');
    const listed = pages.filter((page) => /^docs\/(guides|theory)\//.test(page));
    expect(listed.filter((page) => !index.includes(`(${page.slice('docs/'.length)})`))).toEqual([]);
  });

  it('each name a picture for those who do not see it', () => {
    const bare = pages.flatMap((page) =>
      [...readFileSync(root + page, 'utf8').matchAll(/!\[([^\]]*)\]\(/g)]
        .filter(([, words]) => words!.length < 20)
        .map(([match]) => `${page}: ${match}`),
    );
    expect(bare).toEqual([]);
  });
});

describe('blocks of a page [requirement]', () => {
  it('take what stands before them on the page, and keep their own imports', () => {
    const text = [
      '<!-- before the blocks:',
      "import { a, b } from 'x';",
      'const c = a;',
      '-->',
      '```ts',
      "import { b } from 'y';",
      'b(c);',
      '```',
      '```text',
      'no code',
      '```',
    ].join('\n');
    expect(blocksOf(text)).toEqual(["import { a } from 'x';\nconst c = a;\n\nimport { b } from 'y';\nb(c);\n"]);
  });
});
