// Builds the site, out/site: guides, lessons, theory, examples and the reference of every public name. Static, opens from disk. Run:
//     tsx --conditions=@noonloop/source scripts/build-site.ts
import { mkdirSync, readdirSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { fileURLToPath } from 'node:url';
import { Application } from 'typedoc';
import { lessonPage } from './build-lesson.ts';
import { demoPage } from './build-live.ts';
import { brokenLinks } from './site/links.ts';
import { writePages } from './site/pages.ts';

const root = fileURLToPath(new URL('..', import.meta.url));
const out = `${root}out/site`;

const copies = `${root}out/pages`;
rmSync(copies, { recursive: true, force: true });
mkdirSync(`${copies}/docs/live`, { recursive: true });
writeFileSync(`${copies}/docs/live/tank-week.html`, await lessonPage());
writeFileSync(`${copies}/docs/live/live.html`, await demoPage());
const [first, ...pages] = writePages(root, copies);
process.chdir(root);
const app = await Application.bootstrapWithPlugins({
  options: `${root}typedoc.json`,
  readme: first!,
  projectDocuments: pages,
  out,
});
const project = await app.convert();
if (project === undefined) throw new Error('the reference was not made');
app.validate(project);
await app.generateDocs(project, out);
if (app.logger.hasErrors() || app.logger.hasWarnings()) throw new Error('warnings of typedoc are errors here');
// The first page is linked as a folder, which a disk would list.
for (const name of readdirSync(out, { recursive: true, encoding: 'utf8' })) {
  if (!name.endsWith('.html')) continue;
  const text = readFileSync(`${out}/${name}`, 'utf8');
  if (text.includes('href="../"'))
    writeFileSync(`${out}/${name}`, text.replaceAll('href="../"', 'href="../index.html"'));
}
const { links, broken } = brokenLinks(out);
if (broken.length > 0) throw new Error(`links that lead nowhere:\n${broken.join('\n')}`);
console.log(`${out}/index.html: ${pages.length + 1} pages beside the reference, ${links} links lead somewhere`);
