/** Highest of a part's nodes, or of a column. */
export function hottest(nodes: Float64Array): number {
  let highest = nodes[0]!;
  for (let node = 1; node < nodes.length; node++) if (nodes[node]! > highest) highest = nodes[node]!;
  return highest;
}

/** Lowest of a part's nodes, or of a column. */
export function coldest(nodes: Float64Array): number {
  let lowest = nodes[0]!;
  for (let node = 1; node < nodes.length; node++) if (nodes[node]! < lowest) lowest = nodes[node]!;
  return lowest;
}
