import { choleskyInPlace, solveLower, solveUpper } from '@/lib/stats/linear-algebra/cholesky';
import { at } from '@/lib/stats/linear-algebra/element';

/**
 * Step d that lowers g'd + ½ d'H d without taking any x + d below `lower`; 0 for the `held` element.
 *
 * Elements that would fall below their bound are put on it and the rest solved again. Null where H is not positive
 * definite on the free elements or the result is no descent.
 */
export function boundedNewtonStep(
  x: Float64Array,
  gradient: Float64Array,
  hessian: readonly Float64Array[],
  lower: Float64Array,
  held: number,
): Float64Array | null {
  const n = x.length;
  const step = new Float64Array(n);
  const free = new Set<number>();
  for (let i = 0; i < n; i++) {
    const blocked = at(x, i) <= at(lower, i) && at(gradient, i) >= 0;
    if (i !== held && !blocked) free.add(i);
  }
  for (let round = 0; round <= n; round++) {
    if (!solveFree(step, free, gradient, hessian)) return null;
    const fallen = [...free].filter((i) => at(x, i) + at(step, i) < at(lower, i));
    if (fallen.length === 0) break;
    for (const i of fallen) {
      free.delete(i);
      step[i] = at(lower, i) - at(x, i);
    }
  }
  return product(gradient, step) <= 0 ? step : null;
}

/** Solves for the free elements, the others of `step` as they are. */
function solveFree(
  step: Float64Array,
  free: ReadonlySet<number>,
  gradient: Float64Array,
  hessian: readonly Float64Array[],
): boolean {
  const index = [...free];
  const m = index.length;
  if (m === 0) return true;
  const unit = index.map((i) => Math.sqrt(Math.abs(element(hessian, i, i))) || 1);
  const matrix = new Float64Array(m * m);
  const right = new Float64Array(m);
  index.forEach((i, a) => {
    const own = unit[a] ?? 1;
    let known = at(gradient, i);
    for (let k = 0; k < step.length; k++) if (!free.has(k)) known += element(hessian, i, k) * at(step, k);
    right[a] = -known / own;
    index.forEach((k, b) => (matrix[a * m + b] = element(hessian, i, k) / (own * (unit[b] ?? 1))));
  });
  if (choleskyInPlace(matrix, m, 0, 1e-13) >= 0) return false;
  solveLower(matrix, m, right);
  solveUpper(matrix, m, right);
  index.forEach((i, a) => (step[i] = at(right, a) / (unit[a] ?? 1)));
  return true;
}

/** Steps along each element by itself, for where no Newton step is to be had. */
export function coordinateStep(
  x: Float64Array,
  gradient: Float64Array,
  hessian: readonly Float64Array[],
  lower: Float64Array,
  held: number,
): Float64Array {
  return x.map((value, i) => {
    if (i === held) return 0;
    const curvature = element(hessian, i, i) * x.length;
    const full = curvature > 0 ? -at(gradient, i) / curvature : -Math.sign(at(gradient, i)) * (value + 0.01);
    return Math.max(full, at(lower, i) - value);
  });
}

export function element(matrix: readonly Float64Array[], i: number, j: number): number {
  return matrix[i]?.[j] ?? 0;
}

export function product(a: Float64Array, b: Float64Array): number {
  let sum = 0;
  for (let i = 0; i < a.length; i++) sum += at(a, i) * at(b, i);
  return sum;
}
