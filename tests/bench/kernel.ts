/** A piece of arithmetic that never changes: what a year's time is measured by, so that a slow machine or a busy hour does not count. */

const NODES = 32;
const ROUNDS = 60_000;

/**
 * Heat along a chain of nodes in typed arrays, with what a year is made of: sums and products, a comparison, a division, a root and an e^x
 * for each few nodes. Its time is what matters; the sum says that nothing was left out.
 *
 * @returns The chain's heat after all rounds; the same bits on one engine.
 */
export function fixedArithmetic(): number {
  const temperature = new Float64Array(NODES).fill(20);
  const rise = new Float64Array(NODES);
  for (let round = 0; round < ROUNDS; round++) {
    const decay = Math.exp(-0.01 - 1e-7 * (round % 1000));
    let inlet = 60 + 20 * Math.sqrt(0.5 + (round % 97) / 200);
    for (let node = 0; node < NODES; node++) {
      const here = temperature[node]!;
      const over = inlet - here;
      const gain = over > 0 ? (over * (1 - decay)) / (1 + 0.01 * over) : 0.5 * over * (1 - decay);
      rise[node] = gain - 0.002 * (here - 18);
      inlet -= gain;
    }
    for (let node = 1; node < NODES; node++) {
      temperature[node]! += rise[node]! + 0.01 * (temperature[node - 1]! - temperature[node]!);
    }
    temperature[0]! += rise[0]!;
  }
  return temperature.reduce((sum, value) => sum + value, 0);
}
