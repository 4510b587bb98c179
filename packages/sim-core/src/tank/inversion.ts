/**
 * Mixes water that is warmer than the water above it, as its buoyancy does within minutes. Allocates nothing.
 *
 * Pools neighbours that lie upside down until the column is in order: the same result as mixing pair by pair in any order,
 * found in one pass (pool adjacent violators). Each pool keeps the mean of its nodes, so no energy is lost.
 *
 * @param temperature - Equal nodes, bottom first; changed in place. Shape [nodes]. [°C]
 * @param poolSum - Scratch. Shape [nodes].
 * @param poolSize - Scratch. Shape [nodes].
 * @returns Whether anything was mixed.
 * @see R. Barlow et al., Statistical Inference under Order Restrictions, 1972 (pool adjacent violators)
 */
export function mixInversions(temperature: Float64Array, poolSum: Float64Array, poolSize: Int32Array): boolean {
  const nodes = temperature.length;
  let node = 1;
  while (node < nodes && temperature[node]! >= temperature[node - 1]!) node++;
  if (node === nodes) return false;

  let pools = 0;
  for (node = 0; node < nodes; node++) {
    let sum = temperature[node]!;
    let size = 1;
    while (pools > 0 && poolSum[pools - 1]! * size > sum * poolSize[pools - 1]!) {
      pools--;
      sum += poolSum[pools]!;
      size += poolSize[pools]!;
    }
    poolSum[pools] = sum;
    poolSize[pools] = size;
    pools++;
  }
  node = 0;
  for (let pool = 0; pool < pools; pool++) {
    const size = poolSize[pool]!;
    const mean = poolSum[pool]! / size;
    for (let member = 0; member < size; member++) temperature[node++] = mean;
  }
  return true;
}
