/** Plain data as YAML: a field a line, values as JSON writes them, which YAML reads as they are. */
import type { Plain } from './types.ts';

const isBranch = (value: Plain): value is { readonly [key: string]: Plain } =>
  typeof value === 'object' && value !== null && !Array.isArray(value);

/** Lines of a map. @param comments - lines before the first */
export function plainYaml(fields: { readonly [key: string]: Plain }, comments: readonly string[] = []): string {
  const lines = comments.map((comment) => `# ${comment.replace(/[\r\n]+/g, ' ')}`);
  const walk = (value: { readonly [key: string]: Plain }, depth: number): void => {
    for (const [key, of] of Object.entries(value)) {
      const name = `${'  '.repeat(depth)}${/^[A-Za-z][A-Za-z0-9_]*$/.test(key) ? key : JSON.stringify(key)}:`;
      if (isBranch(of) && Object.keys(of).length > 0) {
        lines.push(name);
        walk(of, depth + 1);
      } else lines.push(`${name} ${JSON.stringify(of)}`);
    }
  };
  walk(fields, 0);
  return `${lines.join('\n')}\n`;
}
