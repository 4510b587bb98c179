import { readFile } from 'node:fs/promises';
import { fileURLToPath } from 'node:url';
import { transform } from 'esbuild';

/** Node's hook: what is TypeScript goes through esbuild, file by file. */
export async function load(url, context, next) {
  const [address] = url.split('?');
  if (!/\.m?ts$/.test(address)) return next(url, context);
  const sourcefile = fileURLToPath(address);
  const { code } = await transform(await readFile(sourcefile, 'utf8'), {
    loader: 'ts',
    sourcefile,
    sourcemap: 'inline',
    sourcesContent: false,
    target: 'node20.19',
  });
  return { format: 'module', source: code, shortCircuit: true };
}
