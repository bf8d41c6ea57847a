/** Gaussian predictions of the same future readings under several explanations. */
export interface Prediction {
  weight: number;
  mean: readonly number[] | Float64Array;
  /** Row-major. */
  covariance: readonly number[] | Float64Array;
}

/**
 * Bhattacharyya coefficient of two normal distributions, the integral of the root of both densities (Kailath 1967):
 * exp(−1/8 Δᵀ S⁻¹ Δ) √(√|A| √|B|) / √|S|, S the mean of the covariances. It is exp(−their distance).
 */
export function coefficient(a: Prediction, b: Prediction): number {
  return coefficientOf(a, b, rootDeterminant(a), rootDeterminant(b));
}

/** Room for what is worked out between two predictions, used again for every two. */
let pooled = new Float64Array(64);
let difference = new Float64Array(8);

function room(n: number): void {
  if (difference.length >= n) return;
  pooled = new Float64Array(n * n);
  difference = new Float64Array(n);
}

/** @param rootA √|A|. @param rootB √|B|. */
function coefficientOf(a: Prediction, b: Prediction, rootA: number, rootB: number): number {
  const n = a.mean.length;
  if (n === 2) return ofTwo(a, b, rootA, rootB);
  room(n);
  for (let i = 0; i < n * n; i++) pooled[i] = ((a.covariance[i] ?? 0) + (b.covariance[i] ?? 0)) / 2;
  for (let i = 0; i < n; i++) difference[i] = (a.mean[i] ?? 0) - (b.mean[i] ?? 0);
  solve(pooled, difference, n);
  return (Math.exp(-solved.quadratic / 8) * Math.sqrt(rootA * rootB)) / solved.rootDet;
}

/** The same of two readings, which nearly all checks take: written out. */
function ofTwo({ mean: m, covariance: A }: Prediction, b: Prediction, rootA: number, rootB: number): number {
  const { mean: n, covariance: B } = b;
  const left = ((A[0] ?? 0) + (B[0] ?? 0)) / 2;
  const right = ((A[3] ?? 0) + (B[3] ?? 0)) / 2;
  const both = ((A[1] ?? 0) + (B[1] ?? 0)) / 2;
  const x = (m[0] ?? 0) - (n[0] ?? 0);
  const y = (m[1] ?? 0) - (n[1] ?? 0);
  const det = left * right - both * both;
  const quadratic = (right * x * x - 2 * both * x * y + left * y * y) / det;
  return (Math.exp(-quadratic / 8) * Math.sqrt(rootA * rootB)) / Math.sqrt(det);
}

/** √|covariance|. */
function rootDeterminant({ mean: { length: n }, covariance }: Prediction): number {
  room(n);
  for (let i = 0; i < n * n; i++) pooled[i] = covariance[i] ?? 0;
  difference.fill(0, 0, n);
  solve(pooled, difference, n);
  return solved.rootDet;
}

/** What `solve` has found last. */
const solved = { rootDet: 0, quadratic: 0 };

/** √|M| and vᵀ M⁻¹ v. @param matrix row-major; the lower triangle is replaced by its root. @param vector replaced. */
function solve(matrix: Float64Array, vector: Float64Array, n: number): void {
  let rootDet = 1;
  let quadratic = 0;
  for (let i = 0; i < n; i++) {
    const row = i * n;
    for (let j = 0; j < i; j++) {
      let sum = matrix[row + j] ?? 0;
      for (let k = 0; k < j; k++) sum -= (matrix[row + k] ?? 0) * (matrix[j * n + k] ?? 0);
      matrix[row + j] = sum / (matrix[j * n + j] ?? 1);
    }
    let square = matrix[row + i] ?? 0;
    let right = vector[i] ?? 0;
    for (let k = 0; k < i; k++) {
      const below = matrix[row + k] ?? 0;
      square -= below * below;
      right -= below * (vector[k] ?? 0);
    }
    const pivot = Math.sqrt(Math.max(square, 1e-12));
    matrix[row + i] = pivot;
    rootDet *= pivot;
    right /= pivot;
    vector[i] = right;
    quadratic += right * right;
  }
  solved.rootDet = rootDet;
  solved.quadratic = quadratic;
}

/** Entropy in bits of weights that sum to one. */
export function entropyBits(weights: Iterable<number>): number {
  let bits = 0;
  for (const w of weights) if (w > 0) bits -= w * Math.log2(w);
  return bits;
}

/**
 * Bits that future readings are expected to tell about which group an explanation belongs to: the pairwise
 * lower bound on the information of a mixture, for the explanations and within each group, their difference.
 * Source: Kolchinsky & Tracey (2017), Entropy 19, 361, with the Bhattacharyya distance. Between 0 and the
 * entropy of the groups.
 */
export function expectedBits(predictions: readonly Prediction[], groups: readonly string[]): number {
  const overlaps = overlapsOf(predictions);
  const byGroup = new Map<string, number[]>();
  groups.forEach((group, i) => {
    const members = byGroup.get(group);
    if (members) members.push(i);
    else byGroup.set(group, [i]);
  });
  const all: number[] = [];
  for (let i = 0; i < predictions.length; i++) all.push(i);
  const everything = information(predictions, overlaps, all);
  let within = 0;
  let top = 0;
  for (const members of byGroup.values()) {
    const total = weightOf(predictions, members);
    // One alone tells nothing within its group.
    if (members.length > 1) within += total * information(predictions, overlaps, members);
    if (total > 0) top -= total * Math.log2(total);
  }
  return Math.min(top, Math.max(0, everything - within));
}

/** The coefficient of every two, row-major. */
function overlapsOf(predictions: readonly Prediction[]): Float64Array {
  const count = predictions.length;
  const roots = new Float64Array(count);
  for (let i = 0; i < count; i++) {
    const one = predictions[i];
    if (one) roots[i] = rootDeterminant(one);
  }
  const overlaps = new Float64Array(count * count).fill(1);
  for (let i = 0; i < count; i++) {
    for (let j = 0; j < i; j++) {
      const a = predictions[i];
      const b = predictions[j];
      if (!a || !b) continue;
      const value = coefficientOf(a, b, roots[i] ?? 1, roots[j] ?? 1);
      overlaps[i * count + j] = value;
      overlaps[j * count + i] = value;
    }
  }
  return overlaps;
}

function weightOf(predictions: readonly Prediction[], members: readonly number[]): number {
  let total = 0;
  for (const i of members) total += predictions[i]?.weight ?? 0;
  return total;
}

/** Bits that the readings tell about which of these explanations is true. */
function information(
  predictions: readonly Prediction[],
  overlaps: Float64Array,
  members: readonly number[],
): number {
  const count = predictions.length;
  const total = weightOf(predictions, members);
  if (!(total > 0)) return 0;
  let bits = 0;
  for (const i of members) {
    const w = (predictions[i]?.weight ?? 0) / total;
    let seen = 0;
    for (const j of members) seen += ((predictions[j]?.weight ?? 0) / total) * (overlaps[i * count + j] ?? 0);
    if (w > 0) bits -= w * Math.log2(seen);
  }
  return bits;
}
