/**
 * Solves A x = b for a symmetric positive definite A (row-major) by Cholesky factors, with the inverse.
 * Throws a RangeError where A is not positive definite.
 */
export function solveSymmetric(
  a: Float64Array,
  b: Float64Array,
): { solution: Float64Array; inverse: Float64Array } {
  const n = b.length;
  const factor = a.slice();
  const at = (i: number, j: number): number => factor[i * n + j] ?? 0;
  for (let j = 0; j < n; j++) {
    let diagonal = at(j, j);
    for (let k = 0; k < j; k++) diagonal -= at(j, k) ** 2;
    if (!(diagonal > 0))
      throw new RangeError(`The matrix is not positive definite (pivot ${j + 1} of ${n}).`);
    const root = Math.sqrt(diagonal);
    factor[j * n + j] = root;
    for (let i = j + 1; i < n; i++) {
      let value = at(i, j);
      for (let k = 0; k < j; k++) value -= at(i, k) * at(j, k);
      factor[i * n + j] = value / root;
    }
  }
  const solve = (right: Float64Array): Float64Array => {
    const x = right.slice();
    for (let i = 0; i < n; i++) {
      let value = x[i] ?? 0;
      for (let k = 0; k < i; k++) value -= at(i, k) * (x[k] ?? 0);
      x[i] = value / at(i, i);
    }
    for (let i = n - 1; i >= 0; i--) {
      let value = x[i] ?? 0;
      for (let k = i + 1; k < n; k++) value -= at(k, i) * (x[k] ?? 0);
      x[i] = value / at(i, i);
    }
    return x;
  };
  const inverse = new Float64Array(n * n);
  for (let j = 0; j < n; j++) {
    const unit = new Float64Array(n);
    unit[j] = 1;
    solve(unit).forEach((value, i) => (inverse[i * n + j] = value));
  }
  return { solution: solve(b), inverse };
}
