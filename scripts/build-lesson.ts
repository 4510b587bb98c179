// Builds the lesson page, out/tank-week.html: one file with the simulation core, a year of weather and no need of a server. Run:
//     tsx --conditions=@noonloop/source scripts/build-lesson.ts [output]
import { mkdirSync, readFileSync, writeFileSync } from 'node:fs';
import { dirname, resolve } from 'node:path';
import { fileURLToPath } from 'node:url';
import { gzipSync } from 'node:zlib';
import { build } from 'esbuild';

const root = fileURLToPath(new URL('..', import.meta.url));
const page = `${root}docs/lessons/page`;

/** The page as one text. */
export async function lessonPage(): Promise<string> {
  const { outputFiles } = await build({
    entryPoints: [`${page}/page.ts`],
    absWorkingDir: root,
    bundle: true,
    write: false,
    minify: true,
    format: 'iife',
    platform: 'browser',
    target: 'es2023',
    conditions: ['@noonloop/source'],
    external: ['node:*'], // reading files by path, which a page never does
    legalComments: 'none',
    logLevel: 'silent',
  });
  const weather = new Uint8Array(readFileSync(`${root}docs/examples/weather/invented-valley.csv`));
  const parts: Record<string, string> = {
    STYLE: readFileSync(`${page}/page.css`, 'utf8'),
    WEATHER: gzipSync(weather, { level: 9 }).toString('base64'),
    // A closing tag inside a string of the script would end it.
    SCRIPT: outputFiles[0]!.text.replaceAll('</script', '<\\/script'),
  };
  const template = readFileSync(`${page}/page.html`, 'utf8');
  return template.replace(/\/\*(STYLE|WEATHER|SCRIPT)\*\//g, (_, name: string) => parts[name]!);
}

if (process.argv[1] === fileURLToPath(import.meta.url)) {
  const output = resolve(process.argv[2] ?? `${root}out/tank-week.html`);
  const text = await lessonPage();
  mkdirSync(dirname(output), { recursive: true });
  writeFileSync(output, text);
  console.log(`${output}: ${(Buffer.byteLength(text) / 1e3).toFixed(0)} kB`);
}
