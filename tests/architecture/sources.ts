import { readdirSync, readFileSync } from 'node:fs';
import { posix } from 'node:path';
import { fileURLToPath } from 'node:url';

const root = fileURLToPath(new URL('../..', import.meta.url));

/** A file of a package: how long it is, and what it imports of its own package, types too. */
export interface Source {
  /** From the top of the repository. */
  readonly path: string;
  readonly lines: number;
  /** Files that it takes something from, whether it is there when the program runs or a type alone. */
  readonly imports: readonly string[];
}

/** Looks at a file as the formatter leaves it: an import or export begins a line, and its file stands in single quotes before a semicolon. */
export function sourceOf(path: string, text: string): Source {
  const imports = [...text.matchAll(/^(?:import|export)\b[^;']*'(\.[^'\n]*)';/gm)].map(([, from]) =>
    posix.join(posix.dirname(path), from!),
  );
  return { path, lines: text.split('\n').length - 1, imports };
}

/** All sources of the three packages. */
export function readSources(): Source[] {
  return readdirSync(`${root}packages`, { recursive: true, encoding: 'utf8' })
    .filter((file) => /^[^/]+\/src\/.*\.ts$/.test(file) && !file.endsWith('.d.ts'))
    .sort()
    .map((file) => sourceOf(`packages/${file}`, readFileSync(`${root}packages/${file}`, 'utf8')));
}

/** Circles of files: each with all that can be reached from it and leads back to it (Tarjan's components of more than one). */
export function circlesOf(sources: readonly Source[]): string[][] {
  const imports = new Map(sources.map((source) => [source.path, source.imports]));
  const order = new Map<string, number>();
  const lowest = new Map<string, number>();
  const open: string[] = [];
  const circles: string[][] = [];
  const enter = (file: string): void => {
    order.set(file, order.size);
    lowest.set(file, order.get(file)!);
    open.push(file);
    for (const other of imports.get(file) ?? []) {
      if (!imports.has(other)) continue;
      if (!order.has(other)) enter(other);
      if (open.includes(other)) lowest.set(file, Math.min(lowest.get(file)!, lowest.get(other)!));
    }
    if (lowest.get(file) !== order.get(file)) return;
    const circle = open.splice(open.indexOf(file));
    if (circle.length > 1 || imports.get(file)!.includes(file)) circles.push(circle.sort());
  };
  for (const file of imports.keys()) if (!order.has(file)) enter(file);
  return circles;
}
