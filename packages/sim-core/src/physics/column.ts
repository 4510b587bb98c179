// What columns and nodes come to. Loops with an index: `reduce` and `Float64Array.from` call out for each number and take ten to twenty times as long.

/** Highest of a part's nodes, or of a column. */
export function highest(nodes: Float64Array): number {
  let most = nodes[0]!;
  for (let node = 1; node < nodes.length; node++) if (nodes[node]! > most) most = nodes[node]!;
  return most;
}

/** Lowest of a part's nodes, or of a column. */
export function lowest(nodes: Float64Array): number {
  let least = nodes[0]!;
  for (let node = 1; node < nodes.length; node++) if (nodes[node]! < least) least = nodes[node]!;
  return least;
}

/** Sum of a column. */
export function total(column: Float64Array): number {
  let sum = 0;
  for (let at = 0; at < column.length; at++) sum += column[at]!;
  return sum;
}

/** A column of the year, hour by hour. Shape [8760]. */
export function everyHour(of: (hour: number) => number): Float64Array {
  const column = new Float64Array(8760);
  for (let hour = 0; hour < column.length; hour++) column[hour] = of(hour);
  return column;
}
