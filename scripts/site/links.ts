// Looks whether every relative link of a built site leads to a file, and to a place in it.
import { existsSync, readdirSync, readFileSync, statSync } from 'node:fs';
import { dirname, join, relative } from 'node:path';

/** Links of all pages below a folder, and those that lead nowhere, as `page: link`. */
export function brokenLinks(folder: string): { readonly links: number; readonly broken: readonly string[] } {
  const pages = readdirSync(folder, { recursive: true, encoding: 'utf8' }).filter((name) => name.endsWith('.html'));
  const places = new Map<string, ReadonlySet<string>>();
  const placesOf = (file: string): ReadonlySet<string> => {
    let known = places.get(file);
    if (known === undefined) {
      known = new Set([...readFileSync(file, 'utf8').matchAll(/\s(?:id|name)="([^"]+)"/g)].map(([, id]) => id!));
      places.set(file, known);
    }
    return known;
  };
  const broken: string[] = [];
  let links = 0;
  for (const page of pages) {
    const file = join(folder, page);
    for (const [, link] of readFileSync(file, 'utf8').matchAll(
      /<(?:a|img|link|script)\s[^>]*?(?:href|src)="([^"]+)"/g,
    )) {
      if (/^(?:[a-z]+:|#$)/.test(link!)) continue;
      links++;
      const [path, place] = decodeURI(link!.replaceAll('&amp;', '&')).split('#') as [string, string?];
      const target = path === '' ? file : join(dirname(file), path.replace(/\?.*/, ''));
      const there = existsSync(target) && statSync(target).isFile();
      if (!there || (place && target.endsWith('.html') && !placesOf(target).has(place)))
        broken.push(`${relative(folder, file)}: ${link}`);
    }
  }
  return { links, broken };
}
