/** Results that several runs share: computed once, the latest kept within a budget of memory. */

const MEGABYTE = 2 ** 20;

/**
 * Hands out the kept result for what it depends on, or computes it. What has not been asked for longest goes first when the budget is full; the
 * latest always stays.
 *
 * @param dependsOn - All that the result depends on, of plain data.
 */
export type Latest<T> = (dependsOn: unknown, compute: () => T) => T;

/**
 * Makes such a memory. Its results are shared by all.
 *
 * @param budget_MB - Most that it keeps. [MB]
 * @param bytesOf - Size of one result. [B]
 */
export function latest<T>(budget_MB: number, bytesOf: (result: T) => number): Latest<T> {
  const known = new Map<string, T>();
  let bytes = 0;
  return (dependsOn, compute) => {
    const key = JSON.stringify(dependsOn);
    const kept = known.get(key);
    if (kept !== undefined) {
      known.delete(key);
      known.set(key, kept);
      return kept;
    }
    const result = compute();
    known.set(key, result);
    bytes += bytesOf(result);
    for (const [oldest, value] of known) {
      if (bytes <= budget_MB * MEGABYTE || known.size === 1) break;
      known.delete(oldest);
      bytes -= bytesOf(value);
    }
    return result;
  };
}
