/**
 * Cholesky factor of a symmetric positive definite matrix, in place.
 *
 * `matrix` holds n × n elements by rows from `offset` on; the lower triangle is replaced by L with L L' = the matrix.
 * Returns the first row whose pivot is not above `least` times its diagonal element (the matrix is then not
 * positive definite, or that row depends on those before it), or −1 where all are.
 * Source: Golub & Van Loan (2013), Matrix Computations, 4th ed., algorithm 4.2.1 by rows.
 */
export function choleskyInPlace(matrix: Float64Array, n: number, offset = 0, least = 0): number {
  for (let i = 0; i < n; i++) {
    const rowI = offset + i * n;
    for (let j = 0; j < i; j++) {
      const rowJ = offset + j * n;
      matrix[rowI + j] =
        ((matrix[rowI + j] as number) - dotRows(matrix, rowI, matrix, rowJ, j)) /
        (matrix[rowJ + j] as number);
    }
    const diagonal = matrix[rowI + i] as number;
    const pivot = diagonal - dotRows(matrix, rowI, matrix, rowI, i);
    if (!(pivot > least * diagonal)) return i;
    matrix[rowI + i] = Math.sqrt(pivot);
  }
  return -1;
}

/** Σ a[i] b[i] over `length` elements from two offsets, in four running sums. */
export function dotRows(a: Float64Array, ia: number, b: Float64Array, ib: number, length: number): number {
  let s0 = 0;
  let s1 = 0;
  let s2 = 0;
  let s3 = 0;
  const whole = length & ~3;
  let k = 0;
  for (; k < whole; k += 4) {
    s0 += (a[ia + k] as number) * (b[ib + k] as number);
    s1 += (a[ia + k + 1] as number) * (b[ib + k + 1] as number);
    s2 += (a[ia + k + 2] as number) * (b[ib + k + 2] as number);
    s3 += (a[ia + k + 3] as number) * (b[ib + k + 3] as number);
  }
  for (; k < length; k++) s0 += (a[ia + k] as number) * (b[ib + k] as number);
  return s0 + s1 + (s2 + s3);
}

/** Solves L z = b in place, `lower` as `choleskyInPlace` leaves it, b in `vector` from `from` on. */
export function solveLower(lower: Float64Array, n: number, vector: Float64Array, from = 0, offset = 0): void {
  for (let i = 0; i < n; i++) {
    const row = offset + i * n;
    vector[from + i] =
      ((vector[from + i] as number) - dotRows(lower, row, vector, from, i)) / (lower[row + i] as number);
  }
}

/** Solves L' x = z in place. */
export function solveUpper(lower: Float64Array, n: number, vector: Float64Array, from = 0, offset = 0): void {
  for (let i = n - 1; i >= 0; i--) {
    const row = offset + i * n;
    const x = (vector[from + i] as number) / (lower[row + i] as number);
    vector[from + i] = x;
    for (let k = 0; k < i; k++)
      vector[from + k] = (vector[from + k] as number) - (lower[row + k] as number) * x;
  }
}

/** Inverse (L L')⁻¹, both triangles, written to `target` from `into` on. */
export function inverseFromCholesky(
  lower: Float64Array,
  n: number,
  target: Float64Array,
  offset = 0,
  into = 0,
): void {
  const inverse = new Float64Array(n * n);
  for (let i = 0; i < n; i++) {
    const own = i * n;
    inverse[own + i] = 1 / (lower[offset + i * n + i] as number);
    for (let k = i + 1; k < n; k++) {
      const row = offset + k * n;
      inverse[own + k] = -dotRows(lower, row + i, inverse, own + i, k - i) / (lower[row + k] as number);
    }
  }
  for (let i = 0; i < n; i++) {
    for (let j = 0; j <= i; j++) {
      const value = dotRows(inverse, i * n + i, inverse, j * n + i, n - i);
      target[into + i * n + j] = value;
      target[into + j * n + i] = value;
    }
  }
}
