/**
 * Mixes water that is warmer than the water above it, as its buoyancy does within minutes. Allocates nothing.
 *
 * Where two neighbours lie upside down, they and whatever then lies upside down next to them become one pool with the mean of its
 * nodes, until the column is in order: the same result as mixing pair by pair in any order (pool adjacent violators). No energy
 * is lost.
 *
 * @param temperature - Equal nodes, bottom first; changed in place. Shape [nodes]. [°C]
 * @returns Whether anything was mixed.
 * @see R. Barlow et al., Statistical Inference under Order Restrictions, 1972 (pool adjacent violators)
 */
export function mixInversions(temperature: Float64Array): boolean {
  const nodes = temperature.length;
  // As a rule the column is in order up to some node, or all of it.
  let ordered = 1;
  while (ordered < nodes && temperature[ordered]! >= temperature[ordered - 1]!) ordered++;
  return ordered < nodes && mixFrom(temperature, temperature, ordered);
}

/**
 * Warms the nodes and then does what {@link mixInversions} does, in one pass where nothing turns over.
 *
 * @param temperature - Nodes, bottom first; warmed in place. Shape [nodes]. [°C]
 * @param rise - Of each. Shape [nodes]. [K]
 * @param mixed - Where the column in order goes; may be `temperature`. Shape [nodes]. [°C]
 */
export function warmAndMix(temperature: Float64Array, rise: Float64Array, mixed: Float64Array): void {
  const nodes = temperature.length;
  let ordered = nodes;
  let below = Number.NEGATIVE_INFINITY;
  for (let node = 0; node < nodes; node++) {
    const here = temperature[node]! + rise[node]!;
    temperature[node] = here;
    mixed[node] = here;
    if (here < below && node < ordered) ordered = node;
    below = here;
  }
  if (ordered < nodes) mixFrom(temperature, mixed, ordered);
}

/** Mixes what lies upside down from node `ordered` on; below it the column is in order. @param mixed - Holds the same, or is the same. */
function mixFrom(temperature: Float64Array, mixed: Float64Array, ordered: number): boolean {
  const nodes = temperature.length;
  let any = false;
  let below = temperature[ordered - 1]!;
  for (let node = ordered; node < nodes; node++) {
    const here = temperature[node]!;
    if (here >= below) {
      below = here;
      continue;
    }
    // Below the pool the column is in order already; the pool grows upwards and downwards until it is too.
    any = true;
    let low = node - 1;
    let high = node;
    let sum = below + here;
    let size = 2;
    for (;;) {
      if (high + 1 < nodes && temperature[high + 1]! * size < sum) {
        high++;
        sum += temperature[high]!;
      } else if (low > 0 && mixed[low - 1]! * size > sum) {
        low--;
        sum += mixed[low]!;
      } else break;
      size++;
    }
    below = sum / size;
    for (let member = low; member <= high; member++) mixed[member] = below;
    node = high;
  }
  return any;
}
