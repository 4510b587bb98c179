// The pages of the repository as the site takes them: a copy of the tree with titles and groups, examples as pages, equations as MathML.
import { cpSync, existsSync, mkdirSync, readdirSync, readFileSync, statSync, writeFileSync } from 'node:fs';
import { basename, dirname, extname, join, normalize } from 'node:path';
import { equationsOf } from './equations.ts';

/** Where pages of a folder stand in the site. */
const GROUPS: Readonly<Record<string, string>> = {
  'docs/guides': 'Guides',
  'docs/lessons': 'Lessons',
  'docs/theory': 'Theory',
  'docs/examples': 'Examples',
  '.': 'Project',
};

/** Pages of the root that the site has; its first page is docs/README.md. */
const PROJECT = ['README.md', 'CONTRIBUTING.md', 'DEVELOPERS.md', 'CHANGELOG.md', 'SECURITY.md'];

/** Pages that compute in a browser, by their file in docs/live of the copy. */
const LIVE: Readonly<Record<string, string>> = {
  'live.html': 'your roof, as you turn the knobs',
  'tank-week.html': 'a week of the tank, hour by hour',
};

/** Examples that are shown as pages; tables of numbers are linked as files. */
const SHOWN: Readonly<Record<string, string>> = { '.ts': 'ts', '.yaml': 'yaml', '.json': 'json', '.sh': 'sh' };

/** Writes the copy. @returns the pages in it, the first page first. */
export function writePages(root: string, out: string): string[] {
  const examples = filesOf(root, 'docs/examples').filter((path) => extname(path) in SHOWN);
  // The first page names guides and theory in the order in which they are best read.
  const index = readFileSync(join(root, 'docs/README.md'), 'utf8');
  const place = (path: string): number => index.lastIndexOf(`(${path.slice('docs/'.length)})`);
  const texts = [
    'docs/README.md',
    ...['docs/guides', 'docs/lessons', 'docs/theory'].flatMap((folder) =>
      readdirSync(join(root, folder))
        .flatMap((name) => (name.endsWith('.md') ? [`${folder}/${name}`] : []))
        .sort((one, other) => place(one) - place(other)),
    ),
    ...PROJECT,
  ];
  const pages = texts.map((path) => writeText(root, out, path));
  for (const path of examples) pages.push(writeExample(root, out, path));
  return pages;
}

const filesOf = (root: string, folder: string): string[] =>
  readdirSync(join(root, folder), { recursive: true, encoding: 'utf8' })
    .map((name) => `${folder}/${name}`)
    .filter((path) => statSync(join(root, path)).isFile())
    .sort();

function writeText(root: string, out: string, path: string): string {
  const text = readFileSync(join(root, path), 'utf8').replace(/^<!--[\s\S]*?-->\n\n?/gm, '');
  const linked = text.replace(/(\]\()([^)#\s]+)/g, (whole, open: string, link: string) => {
    if (link.includes('://')) return whole;
    const target = normalize(join(dirname(path), link));
    if (target.endsWith('.md')) return whole;
    if (target.startsWith('docs/examples') && extname(target) in SHOWN) return `${open}${link}.md`;
    if (statSync(join(root, target)).isDirectory()) throw new Error(`${path}: link a file of ${link}, not the folder`);
    copy(root, out, target);
    return whole;
  });
  const set = path.startsWith('docs/theory/') ? equationsOf(linked) : linked;
  const live = path === 'docs/README.md' ? withLive(set.replace(/^# .*\n/, ''), out) : set;
  const [, heading = basename(path, '.md')] = /^# (.+)$/m.exec(text) ?? [];
  // A colon or a comma would go into names of files.
  const title = heading.split(/[:,?]/)[0]!.replace(/^Lesson (\d)$/, heading.replace(':', ','));
  return putPage(out, path, front(title, path) + live);
}

/** The first page with links to pages that compute, where they have been made beside it. */
function withLive(text: string, out: string): string {
  const links = Object.entries(LIVE).filter(([name]) => existsSync(join(out, 'docs/live', name)));
  if (links.length === 0) return text;
  const words = links.map(([name, what]) => `[${what}](live/${name})`).join(' · ');
  return text.replace(
    '## Where to start',
    `**Runs in this browser, without a network:** ${words}\n\n## Where to start`,
  );
}

function writeExample(root: string, out: string, path: string): string {
  const code = readFileSync(join(root, path), 'utf8');
  const comments = /^(?:(?:\/\/|#(?!!)).*\n)+/m.exec(code)?.[0] ?? '';
  const name = path.slice('docs/examples/'.length);
  const body = `# ${name}\n\n${comments === '' ? '' : 'In the repository: '}\`${path}\`\n\n\`\`\`\`${SHOWN[extname(path)]}\n${code.trimEnd()}\n\`\`\`\`\n`;
  return putPage(out, `${path}.md`, front(name.replaceAll('/', ' / '), path) + body);
}

function front(title: string, path: string): string {
  const folder = Object.keys(GROUPS).find((one) => one !== '.' && path.startsWith(`${one}/`)) ?? '.';
  return `---\ntitle: ${JSON.stringify(title)}\ngroup: ${GROUPS[folder]}\n---\n\n`;
}

function putPage(out: string, path: string, text: string): string {
  const target = join(out, path);
  mkdirSync(dirname(target), { recursive: true });
  writeFileSync(target, text);
  return target;
}

function copy(root: string, out: string, path: string): void {
  mkdirSync(dirname(join(out, path)), { recursive: true });
  cpSync(join(root, path), join(out, path));
}
