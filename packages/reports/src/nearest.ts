/** Edits (a letter more, less or other, two changed about) from one word to another. */
function edits(a: string, b: string): number {
  const rows: number[][] = [Array.from({ length: b.length + 1 }, (_, column) => column)];
  for (let row = 1; row <= a.length; row++) {
    rows.push([row]);
    for (let column = 1; column <= b.length; column++) {
      const same = a[row - 1] === b[column - 1] ? 0 : 1;
      let least = Math.min(
        rows[row - 1]![column]! + 1,
        rows[row]![column - 1]! + 1,
        rows[row - 1]![column - 1]! + same,
      );
      if (row > 1 && column > 1 && a[row - 1] === b[column - 2] && a[row - 2] === b[column - 1])
        least = Math.min(least, rows[row - 2]![column - 2]! + 1);
      rows[row]!.push(least);
    }
  }
  return rows[a.length]![b.length]!;
}

/** The name that a misspelt word most likely meant; `null` where none is near: more than a third of its letters would change. @internal */
export function nearest(word: string, names: readonly string[]): string | null {
  if (word.length > 60) return null;
  const plain = (text: string): string => text.toLowerCase().replace(/[^a-z0-9]/g, '');
  const ranked = names
    .map((name) => ({ name, distance: edits(plain(word), plain(name)) }))
    .sort((a, b) => a.distance - b.distance);
  const [best] = ranked;
  return best !== undefined && best.distance <= Math.max(1, Math.floor(best.name.length / 3)) ? best.name : null;
}
