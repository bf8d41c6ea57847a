/**
 * Expected number of steps until a Markov chain that starts in state 0 is absorbed, counting the last.
 *
 * `moves[i][j]` is the chance of the move i → j, `absorbed[i]` the chance of absorption from i, given apart so
 * that a tiny one keeps its digits. Both are used up. Eliminates the states from the last to the first with
 * additions, multiplications and divisions of positive numbers only, so that even 1e20 steps come out to
 * nearly full precision, where solving (I − P) t = 1 would return noise.
 * Source: Grassmann, Taksar and Heyman (1985), Operations Research 33, 1107–1116.
 */
export function stepsToAbsorption(moves: Float64Array[], absorbed: Float64Array): number {
  const time = new Float64Array(absorbed.length).fill(1);
  for (let last = absorbed.length - 1; last > 0; last--) {
    const row = moves[last] ?? new Float64Array(0);
    let leaves = absorbed[last] ?? 0;
    for (let j = 0; j < last; j++) leaves += row[j] ?? 0;
    for (let i = 0; i < last; i++) {
      const other = moves[i];
      if (!other) continue;
      const share = (other[last] ?? 0) / leaves;
      if (share === 0) continue;
      for (let j = 0; j < last; j++) other[j] = (other[j] ?? 0) + share * (row[j] ?? 0);
      absorbed[i] = (absorbed[i] ?? 0) + share * (absorbed[last] ?? 0);
      time[i] = (time[i] ?? 0) + share * (time[last] ?? 0);
    }
  }
  return (time[0] ?? 0) / (absorbed[0] ?? 0);
}
