/** A script as text, with the licences of the foreign code in it. */
export interface LiveScript {
  readonly text: string;
  readonly licences: string;
}

const made = new Map<string, Promise<LiveScript>>();

/**
 * A script of the page. In a checkout it is bundled from the sources, once in a process; a packed package carries the bundles in
 * place of this module (`pack/live.mjs`).
 */
export function liveScript(name: 'worker' | 'page'): Promise<LiveScript> {
  const known = made.get(name) ?? bundled(name);
  made.set(name, known);
  return known;
}

async function bundled(name: string): Promise<LiveScript> {
  // @ts-expect-error: a script of the checkout, without types.
  const maker: unknown = await import('../../pack/live.mjs');
  const { bundle } = maker as { bundle(name: string): Promise<LiveScript> };
  return bundle(name);
}
