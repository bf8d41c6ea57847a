import { normalLattice } from '@/lib/stats/numeric/normal-lattice';
import { findRoot } from '@/lib/stats/numeric/root';
import { normalCdf, normalUpper, normalUpperQuantile } from '@/lib/stats/distributions/normal';

/** One explanation's view of some contrasts: normal with this mean and covariance (row-major), mm and mm². */
export interface Part {
  weight: number;
  mean: Float64Array;
  covariance: Float64Array;
}

/** Points of the lattice; a probability is good to a few thousandths. */
const POINTS = 24;
/** Explanations below this weight together move no figure that is shown. */
const NEGLIGIBLE = 1e-4;
/** So near to 0 or 1 a contrast decides by itself. */
const DECIDED = 1e-3;

/** Expected value of contrast `at`, mm. */
export const meanOf = (parts: readonly Part[], at = 0): number =>
  parts.reduce((sum, { weight, mean }) => sum + weight * (mean[at] ?? 0), 0);

/** P(contrast `at` beyond `limit` in the direction of `sign`), exact. */
export const beyond = (parts: readonly Part[], limit: number, sign: number, at = 0): number =>
  parts.reduce((sum, part) => sum + part.weight * marginal(part, at, limit, sign), 0);

/** The value that contrast 0 is below with probability p, mm. */
export function quantile(parts: readonly Part[], p: number): number {
  const spread = parts.map(({ mean, covariance }) => ({
    mean: mean[0] ?? 0,
    // A contrast that is known exactly has no density; a thousandth of a millimetre gives it one.
    sd: Math.max(1e-3, Math.sqrt(Math.max(0, covariance[0] ?? 0))),
  }));
  const below = (x: number) =>
    spread.reduce((sum, { mean, sd }, i) => sum + (parts[i]?.weight ?? 0) * normalCdf((x - mean) / sd), 0);
  const total = parts.reduce((sum, { weight }) => sum + weight, 0);
  const low = Math.min(...spread.map(({ mean, sd }) => mean - 9 * sd));
  const high = Math.max(...spread.map(({ mean, sd }) => mean + 9 * sd));
  return findRoot((x) => below(x) - p * total, low, high);
}

/** Whether `allBeyond` can be more than zero, by contrast 0 with its limit alone. */
export const mayBeBeyond = (parts: readonly Part[], limit: number, sign: number): boolean =>
  parts.some((part) => part.weight >= NEGLIGIBLE && marginal(part, 0, limit, sign) >= DECIDED);

/**
 * P(every contrast beyond its limit, all in the direction of `sign`): the normal distribution of each part by a fixed
 * lattice (`normalLattice`), so that the same round gives the same figure. A part that a single contrast decides, one
 * way or the other, takes no lattice.
 */
export function allBeyond(parts: readonly Part[], limits: readonly number[], sign: number): number {
  const n = limits.length;
  let sum = 0;
  for (const part of parts) {
    if (part.weight < NEGLIGIBLE) continue;
    const alone = limits.map((limit, at) => marginal(part, at, limit, sign));
    if (Math.min(...alone) < DECIDED) continue;
    const open = alone.flatMap((p, at) => (p > 1 - DECIDED ? [] : [at]));
    if (open.length <= 1) sum += part.weight * (alone[open[0] ?? -1] ?? 1);
    else sum += part.weight * share(part, n, open, limits, sign);
  }
  return sum;
}

/** P(contrast `at` beyond its limit) of one part. */
function marginal({ mean, covariance }: Part, at: number, limit: number, sign: number): number {
  const sd = Math.sqrt(Math.max(0, covariance[at * mean.length + at] ?? 0));
  const beyondBy = sign * (mean[at] ?? 0) - limit;
  return sd === 0 ? Number(beyondBy > 0) : normalCdf(beyondBy / sd);
}

/**
 * P(the contrasts `open` beyond their limits) of one part: one contrast after the other, each given those before it,
 * averaged over a lattice. Source: Genz (1992), Numerical computation of multivariate normal probabilities (from memory).
 */
function share(
  { mean, covariance }: Part,
  size: number,
  open: readonly number[],
  limits: readonly number[],
  sign: number,
): number {
  const n = open.length;
  const root = semiRoot(
    Float64Array.from({ length: n * n }, (_, i) => {
      const [row, column] = [open[Math.floor(i / n)] ?? 0, open[i % n] ?? 0];
      return covariance[row * size + column] ?? 0;
    }),
    n,
  );
  const needed = open.map((at) => (limits[at] ?? 0) - sign * (mean[at] ?? 0));
  const lattice = normalLattice(n - 1, POINTS);
  const drawn = new Float64Array(n);
  let sum = 0;
  for (const z of lattice) {
    let product = 1;
    for (let i = 0; i < n && product > 1e-6; i++) {
      let rest = needed[i] ?? 0;
      for (let j = 0; j < i; j++) rest -= (root[i * n + j] ?? 0) * (drawn[j] ?? 0);
      const pivot = root[i * n + i] ?? 0;
      const beyondIt = pivot === 0 ? Number(rest < 0) : normalUpper(rest / pivot);
      product *= beyondIt;
      // A draw of the part beyond the limit: the upper tail's share that the lattice says.
      if (i < n - 1) drawn[i] = pivot === 0 ? 0 : tailAt(normalCdf(z[i] ?? 0) * beyondIt);
    }
    sum += product;
  }
  return sum / lattice.length;
}

/** The value that a standard normal variable exceeds with probability q, as far out as matters. */
const tailAt = (q: number): number => normalUpperQuantile(Math.min(1 - 1e-12, Math.max(1e-12, q)));

/** Lower triangular root of a covariance; contrasts that depend on those before them get no part of their own. */
function semiRoot(covariance: Float64Array, n: number): Float64Array {
  const root = new Float64Array(n * n);
  for (let i = 0; i < n; i++) {
    for (let j = 0; j <= i; j++) {
      let rest = covariance[i * n + j] ?? 0;
      for (let k = 0; k < j; k++) rest -= (root[i * n + k] ?? 0) * (root[j * n + k] ?? 0);
      const pivot = root[j * n + j] ?? 0;
      if (i === j) root[i * n + i] = rest > 1e-12 ? Math.sqrt(rest) : 0;
      else root[i * n + j] = pivot === 0 ? 0 : rest / pivot;
    }
  }
  return root;
}
