import { choleskyInPlace } from '@/lib/stats/linear-algebra/cholesky';
import type { CodedFactor } from './build-model';

/** Above this many cells the check costs more than it is worth; such coincidences belong to tiny designs. */
const MOST_CELLS = 200;

/**
 * Names of the variances (the residual's as null) that no readings of this design can tell apart, or an empty list.
 *
 * Two factors may split the readings differently and yet leave a combination of variances that nothing depends on:
 * in a 2 × 2 Latin square the three factors and the residual are such. The matrices P V_i P, P taking out the fixed
 * effects, are then linearly dependent, and their Gram matrix tr(P V_i P V_j) is singular.
 */
export function dependentVariances(
  random: readonly CodedFactor[],
  fixed: readonly CodedFactor[],
  n: Float64Array,
  readings: number,
): (string | null)[] {
  const cells = n.length;
  if (random.length < 2 || cells > MOST_CELLS) return [];
  const projection = fixedProjection(fixed, n);
  if (projection === null) return [];
  const blocks = random.map((a) => random.map((b) => sumOfSquares(projection, cells, a, b)));
  const traces = random.map((factor) => trace(projection, cells, factor));
  const columns = 1 + fixed.reduce((sum, factor) => sum + factor.levels - 1, 0);
  const gram = [...blocks.map((line, i) => [...line, traces[i] ?? 0]), [...traces, readings - columns]];
  const names = [...random.map(({ name }) => name), null];
  const dependent = firstDependent(gram);
  if (dependent < 0) return [];
  // Those without which the one that depends would no longer do so.
  const among = names.slice(0, dependent + 1);
  return among.filter((_, k) => {
    if (k === dependent) return true;
    const rest = among.map((__, i) => i).filter((i) => i !== k);
    return firstDependent(rest.map((i) => rest.map((j) => gram[i]?.[j] ?? 0))) < 0;
  });
}

/** N − N X (X' N X)⁻¹ X' N over cells, N the counts: tr of it with Z Z' is that over readings. */
function fixedProjection(fixed: readonly CodedFactor[], n: Float64Array): Float64Array | null {
  const cells = n.length;
  const columns: Float64Array[] = [new Float64Array(cells).fill(1)];
  for (const { codes, levels } of fixed) {
    for (let level = 1; level < levels; level++) {
      columns.push(Float64Array.from(codes, (code) => (code === level ? 1 : 0)));
    }
  }
  const p = columns.length;
  const normal = new Float64Array(p * p);
  columns.forEach((a, i) => {
    columns.forEach((b, j) => {
      for (let s = 0; s < cells; s++) {
        normal[i * p + j] =
          (normal[i * p + j] as number) + (n[s] as number) * (a[s] as number) * (b[s] as number);
      }
    });
  });
  if (choleskyInPlace(normal, p, 0, 1e-10) >= 0) return null;
  // Rows of L⁻¹ X' N.
  const solved = columns.map((column) => column.map((value, s) => value * (n[s] as number)));
  solved.forEach((row, i) => {
    for (let k = 0; k < i; k++) {
      const l = normal[i * p + k] as number;
      const other = solved[k] as Float64Array;
      for (let s = 0; s < cells; s++) row[s] = (row[s] as number) - l * (other[s] as number);
    }
    const pivot = normal[i * p + i] as number;
    for (let s = 0; s < cells; s++) row[s] = (row[s] as number) / pivot;
  });
  const projection = new Float64Array(cells * cells);
  for (let s = 0; s < cells; s++) {
    for (let t = 0; t < cells; t++) {
      let value = s === t ? (n[s] as number) : 0;
      for (const row of solved) value -= (row[s] as number) * (row[t] as number);
      projection[s * cells + t] = value;
    }
  }
  return projection;
}

/** tr(P Z_a Z_a' P Z_b Z_b'): the sum of squares of Z_a' P Z_b. */
function sumOfSquares(projection: Float64Array, cells: number, a: CodedFactor, b: CodedFactor): number {
  const block = new Float64Array(a.levels * b.levels);
  for (let s = 0; s < cells; s++) {
    const line = (a.codes[s] as number) * b.levels;
    for (let t = 0; t < cells; t++) {
      const place = line + (b.codes[t] as number);
      block[place] = (block[place] as number) + (projection[s * cells + t] as number);
    }
  }
  return block.reduce((sum, value) => sum + value * value, 0);
}

function trace(projection: Float64Array, cells: number, { codes }: CodedFactor): number {
  let sum = 0;
  for (let s = 0; s < cells; s++) {
    for (let t = 0; t < cells; t++) if (codes[s] === codes[t]) sum += projection[s * cells + t] as number;
  }
  return sum;
}

/** The first row of a Gram matrix that depends on those before it, or −1. */
function firstDependent(gram: readonly (readonly number[])[]): number {
  const size = gram.length;
  const unit = gram.map((line, i) => Math.sqrt(line[i] ?? 0) || 1);
  const scaled = Float64Array.from(
    gram.flatMap((line, i) => line.map((value, j) => value / (unit[i] ?? 1) / (unit[j] ?? 1))),
  );
  return choleskyInPlace(scaled, size, 0, 1e-10);
}
