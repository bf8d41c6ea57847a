/** Gaussian predictions of the same future readings under several explanations. */
export interface Prediction {
  weight: number;
  mean: readonly number[] | Float64Array;
  /** Row-major. */
  covariance: readonly number[] | Float64Array;
}

/**
 * Bhattacharyya distance of two normal distributions (Kailath 1967): 1/8 Δᵀ S⁻¹ Δ + 1/2 ln(|S| / √(|A||B|)),
 * S the mean of the covariances.
 */
export function bhattacharyya(a: Prediction, b: Prediction): number {
  return distance(a, b, logDeterminant(a), logDeterminant(b));
}

function distance(a: Prediction, b: Prediction, logA: number, logB: number): number {
  const n = a.mean.length;
  const pooled = new Float64Array(n * n);
  for (let i = 0; i < pooled.length; i++) pooled[i] = ((a.covariance[i] ?? 0) + (b.covariance[i] ?? 0)) / 2;
  const difference = new Float64Array(n);
  for (let i = 0; i < n; i++) difference[i] = (a.mean[i] ?? 0) - (b.mean[i] ?? 0);
  const { logDet, quadratic } = solve(pooled, difference, n);
  return quadratic / 8 + (logDet - (logA + logB) / 2) / 2;
}

const logDeterminant = ({ mean: { length }, covariance }: Prediction): number =>
  solve(Float64Array.from(covariance), new Float64Array(length), length).logDet;

/** ln |M| and vᵀ M⁻¹ v. @param matrix row-major; the lower triangle is replaced by its root. @param vector replaced. */
function solve(matrix: Float64Array, vector: Float64Array, n: number): { logDet: number; quadratic: number } {
  let logDet = 0;
  let quadratic = 0;
  for (let i = 0; i < n; i++) {
    for (let j = 0; j <= i; j++) {
      let sum = matrix[i * n + j] ?? 0;
      for (let k = 0; k < j; k++) sum -= (matrix[i * n + k] ?? 0) * (matrix[j * n + k] ?? 0);
      matrix[i * n + j] = i === j ? Math.sqrt(Math.max(sum, 1e-12)) : sum / (matrix[j * n + j] ?? 1);
    }
    const pivot = matrix[i * n + i] ?? 1;
    logDet += 2 * Math.log(pivot);
    let right = vector[i] ?? 0;
    for (let k = 0; k < i; k++) right -= (matrix[i * n + k] ?? 0) * (vector[k] ?? 0);
    vector[i] = right / pivot;
    quadratic += (vector[i] ?? 0) ** 2;
  }
  return { logDet, quadratic };
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
  const logs = predictions.map(logDeterminant);
  const overlap = predictions.map(() => new Array<number>(predictions.length).fill(1));
  predictions.forEach((a, i) => {
    for (let j = 0; j < i; j++) {
      const b = predictions[j];
      if (!b) continue;
      const value = Math.exp(-distance(a, b, logs[i] ?? 0, logs[j] ?? 0));
      (overlap[i] ?? [])[j] = value;
      (overlap[j] ?? [])[i] = value;
    }
  });
  const information = (members: readonly number[]): number => {
    const total = members.reduce((sum, i) => sum + (predictions[i]?.weight ?? 0), 0);
    if (!(total > 0)) return 0;
    let bits = 0;
    for (const i of members) {
      const w = (predictions[i]?.weight ?? 0) / total;
      const seen = members.reduce(
        (sum, j) => sum + ((predictions[j]?.weight ?? 0) / total) * (overlap[i]?.[j] ?? 0),
        0,
      );
      if (w > 0) bits -= w * Math.log2(seen);
    }
    return bits;
  };
  const byGroup = new Map<string, number[]>();
  groups.forEach((group, i) => byGroup.set(group, [...(byGroup.get(group) ?? []), i]));
  const everything = information(predictions.map((_, i) => i));
  let within = 0;
  let top = 0;
  for (const members of byGroup.values()) {
    const total = members.reduce((sum, i) => sum + (predictions[i]?.weight ?? 0), 0);
    within += total * information(members);
    if (total > 0) top -= total * Math.log2(total);
  }
  return Math.min(top, Math.max(0, everything - within));
}
