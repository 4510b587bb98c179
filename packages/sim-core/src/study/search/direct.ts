/** Points that the DIRECT method wants to know, batch by batch. */

/**
 * What a value is raised by for each point before it. The method divides every box that holds the least value of its size; on whole
 * numbers thousands of boxes hold the same, and all would be divided at once. So the first of them counts as the least.
 */
const TIE_BREAK = 1e-9;

/**
 * DIRECT divides the unit cube into boxes and looks at the middles of those that may hold the minimum for some steepness of the
 * function. Deterministic, no start value, and every point of the cube is reached in the end.
 *
 * The library asks for values one at a time and cannot wait. The points of one round do not depend on the values found in it, so
 * each round is gone through twice from the same state: once to collect its points, once with their values.
 *
 * @param dimensions - Of the cube, at least 1.
 * @yields the points of a round; give back their values in the same order, near 1 in size.
 * @see Jones, Perttunen & Stuckman, J. Optim. Theory Appl. 79 (1993) 157–181.
 */
export async function* directRounds(
  dimensions: number,
): AsyncGenerator<readonly (readonly number[])[], never, readonly number[]> {
  const { default: direct } = await import('ml-direct');
  const lower = new Array<number>(dimensions).fill(0);
  const upper = new Array<number>(dimensions).fill(1);
  let state: unknown = {};
  let asked = 0;
  // The library changes the state that it is given.
  const round = (ask: (point: ArrayLike<number>) => number) =>
    direct(ask, lower, upper, { iterations: 1, initialState: structuredClone(state) }).finalState as unknown;
  for (;;) {
    const points: number[][] = [];
    round((point) => {
      points.push(Array.from(point));
      return 0;
    });
    const values = yield points;
    let at = 0;
    state = round(() => values[at++]! + TIE_BREAK * asked++);
  }
}
