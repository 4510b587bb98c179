// Names that the command takes from a library come from the files in which they are made. By the library's index the bundler would lay all that any word
// needs of it into one piece, and each word would load that.
import { readFileSync } from 'node:fs';
import { createRequire } from 'node:module';
import { dirname, join } from 'node:path';

const STATIC = /^(import|export) \{([^}]*)\} from '(@noonloop\/[^']+)';$/gm;
const ASKED = /const \{([^}]*)\} = await import\('(@noonloop\/(?:sim-core|weather-io))'\)/g;

const { resolve } = createRequire(import.meta.url);
const known = new Map();

/** File in which each name that a file hands out is made. */
function homesOf(file) {
  if (known.has(file)) return known.get(file);
  const homes = new Map();
  known.set(file, homes);
  const text = readFileSync(file, 'utf8');
  for (const [, name] of text.matchAll(/^export (?:async )?(?:function\*?|class|const|let) ([\w$]+)/gm))
    homes.set(name, file);
  for (const [, star, names, from] of text.matchAll(/^export (?:(\*)|\{([^}]*)\}) from ["'](\.[^"']+)["'];/gm)) {
    const theirs = homesOf(join(dirname(file), from));
    for (const [name, home] of theirs) if (star !== undefined || listed(names).includes(name)) homes.set(name, home);
  }
  return homes;
}

const listed = (names) =>
  names
    .split(',')
    .map((name) => name.trim())
    .filter((name) => name !== '');

/** One statement for each file; a name that no file of the library itself makes stays with its index. */
function statements(word, names, library) {
  const homes = homesOf(resolve(library));
  const from = (name) => JSON.stringify(homes.get(name.split(' as ')[0]) ?? library);
  return listed(names)
    .map((name) => `${word} { ${name} } from ${from(name)};`)
    .join(' ');
}

/** @param resolveDir - Where the libraries are found from. */
export const onlyNamed = (resolveDir) => ({
  name: 'only-named',
  setup({ onLoad, onResolve }) {
    onLoad({ filter: /[\\/](reports|sim-core|weather-io)[\\/]dist[\\/].*\.js$/ }, ({ path }) => ({
      contents: readFileSync(path, 'utf8')
        .replace(STATIC, (_, word, names, library) => statements(word, names, library))
        .replace(ASKED, (_, names, library) => `const {${names}} = await import('only:${listed(names)}:${library}')`),
    }));
    onResolve({ filter: /^only:/ }, ({ path }) => ({ path, namespace: 'only' }));
    onLoad({ filter: /^only:/, namespace: 'only' }, ({ path }) => {
      const [, names, library] = path.split(':');
      return { contents: statements('export', names, library), resolveDir };
    });
  },
});
