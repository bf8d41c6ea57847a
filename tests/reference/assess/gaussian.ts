/** Plain multivariate normal algebra, written for tests: nothing here is shared with the code under test. */

export type Matrix = readonly (readonly number[])[];

const cell = (a: Matrix, i: number, j: number): number => a[i]?.[j] ?? Number.NaN;

/** Lower Cholesky factor. */
function cholesky(a: Matrix): number[][] {
  const n = a.length;
  const factor: number[][] = Array.from({ length: n }, () => new Array<number>(n).fill(0));
  for (let i = 0; i < n; i++) {
    for (let j = 0; j <= i; j++) {
      let value = cell(a, i, j);
      for (let k = 0; k < j; k++) value -= cell(factor, i, k) * cell(factor, j, k);
      const row = factor[i];
      if (row) row[j] = i === j ? Math.sqrt(value) : value / cell(factor, j, j);
    }
  }
  return factor;
}

/** Solves L z = b. */
function forward(factor: Matrix, b: readonly number[]): number[] {
  const z: number[] = [];
  b.forEach((value, i) => {
    let left = value;
    for (let k = 0; k < i; k++) left -= cell(factor, i, k) * (z[k] ?? Number.NaN);
    z.push(left / cell(factor, i, i));
  });
  return z;
}

const dot = (a: readonly number[], b: readonly number[]): number =>
  a.reduce((sum, value, i) => sum + value * (b[i] ?? Number.NaN), 0);

/** ln density of a multivariate normal distribution. */
export function logNormal(y: readonly number[], mean: readonly number[], covariance: Matrix): number {
  const factor = cholesky(covariance);
  const z = forward(
    factor,
    y.map((value, i) => value - (mean[i] ?? Number.NaN)),
  );
  const logDet = factor.reduce((sum, row, i) => sum + Math.log(row[i] ?? Number.NaN), 0);
  return -0.5 * (y.length * Math.log(2 * Math.PI) + dot(z, z)) - logDet;
}

/** Inverse of a covariance: each column solves L Lᵀ x = e. */
export function inverse(a: Matrix): number[][] {
  const factor = cholesky(a);
  const reached = a.map((_, j) =>
    forward(
      factor,
      a.map((_row, i) => (i === j ? 1 : 0)),
    ),
  );
  return reached.map((column) => reached.map((other) => dot(column, other)));
}

/** Independent blocks of normal variables, and linear combinations of them. */
export class Joint {
  private readonly index = new Map<string, number>();
  private readonly mean: number[] = [];
  private readonly blocks: { from: number; covariance: Matrix }[] = [];

  add(names: readonly string[], mean: readonly number[], covariance: Matrix): void {
    this.blocks.push({ from: this.mean.length, covariance });
    names.forEach((name, i) => {
      this.index.set(name, this.mean.length);
      this.mean.push(mean[i] ?? Number.NaN);
    });
  }

  expected(terms: Terms): number {
    return terms.reduce((sum, [name, weight]) => sum + weight * (this.mean[this.at(name)] ?? Number.NaN), 0);
  }

  covariance(a: Terms, b: Terms): number {
    let sum = 0;
    for (const { from, covariance } of this.blocks) {
      for (const [p, w] of a) {
        for (const [q, v] of b) {
          const [i, j] = [this.at(p) - from, this.at(q) - from];
          if (i < 0 || j < 0 || i >= covariance.length || j >= covariance.length) continue;
          sum += w * v * cell(covariance, i, j);
        }
      }
    }
    return sum;
  }

  /** Mean and covariance of `wanted` given that the combinations `seen` have the values `y`. */
  given(
    seen: readonly Terms[],
    y: readonly number[],
    wanted: readonly Terms[],
  ): { logDensity: number; mean: number[]; covariance: number[][] } {
    const V = seen.map((a) => seen.map((b) => this.covariance(a, b)));
    const expected = seen.map((terms) => this.expected(terms));
    const factor = cholesky(V);
    const z = forward(
      factor,
      y.map((value, i) => value - (expected[i] ?? Number.NaN)),
    );
    const reached = wanted.map((a) =>
      forward(
        factor,
        seen.map((b) => this.covariance(a, b)),
      ),
    );
    return {
      logDensity: logNormal(y, expected, V),
      mean: wanted.map((a, i) => this.expected(a) + dot(reached[i] ?? [], z)),
      covariance: wanted.map((a, i) =>
        wanted.map((b, j) => this.covariance(a, b) - dot(reached[i] ?? [], reached[j] ?? [])),
      ),
    };
  }

  private at(name: string): number {
    const index = this.index.get(name);
    if (index === undefined) throw new RangeError(`There is no variable ${name}.`);
    return index;
  }
}

/** A linear combination: names with their weights. */
export type Terms = readonly (readonly [string, number])[];
