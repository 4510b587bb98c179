import { createHash } from 'node:crypto';
import { mkdirSync, readFileSync, renameSync, writeFileSync } from 'node:fs';
import { fileURLToPath } from 'node:url';

// What became of a file is kept by its content, name and esbuild's version: a run of the tests starts a dozen processes, of the examples fifty.
const kept = fileURLToPath(new URL('../node_modules/.cache/noonloop-typescript/', import.meta.url));
const { version } = JSON.parse(readFileSync(new URL('../node_modules/esbuild/package.json', import.meta.url), 'utf8'));

/** Node's hook: what is TypeScript goes through esbuild, file by file. */
export async function load(url, context, next) {
  const [address] = url.split('?');
  if (!/\.m?ts$/.test(address)) return next(url, context);
  const sourcefile = fileURLToPath(address);
  const text = readFileSync(sourcefile, 'utf8');
  const path = `${kept}${createHash('sha256').update(`${version}\n${sourcefile}\n${text}`).digest('hex')}.js`;
  let source;
  try {
    source = readFileSync(path, 'utf8');
  } catch {
    source = await translate(text, sourcefile);
    keep(path, source);
  }
  return { format: 'module', source, shortCircuit: true };
}

/** Whole or not at all, for another process may write the same; where nothing can be written nothing is kept. */
function keep(path, source) {
  try {
    mkdirSync(kept, { recursive: true });
    const unfinished = `${path}.${process.pid}-${performance.now()}`;
    writeFileSync(unfinished, source);
    renameSync(unfinished, path);
  } catch {}
}

async function translate(text, sourcefile) {
  const { transform } = await import('esbuild');
  const { code } = await transform(text, {
    loader: 'ts',
    sourcefile,
    sourcemap: 'inline',
    sourcesContent: false,
    target: 'node20.19',
  });
  return code;
}
