import { choleskyInPlace } from '@/lib/stats/linear-algebra/cholesky';
import type { Equations } from './equations';
import type { MixedModel } from './mixed-model';

/**
 * Factorises A = Λ X' W X Λ + I: the sparse columns one by one as L D L', what remains by Cholesky.
 *
 * Returns ln |A|, or the column (from 0) whose pivot is not above `least` times its diagonal element: a fixed
 * column that depends on others.
 */
export function factorise(
  equations: Equations,
  least = 0,
): { logDeterminant: number } | { dependent: number } {
  const { model, crossDiagonal, scale, pivot, dense } = equations;
  const { sparse } = model;
  const size = model.columns - sparse;
  const penalty = penaltyByColumn(model);
  scaleSparse(equations, penalty);
  scaleDense(equations, penalty);
  let logDeterminant = 0;
  for (let j = 0; j < sparse; j++) {
    const a = pivot[j] as number;
    const own = scale[j] as number;
    const diagonal = own * own * (crossDiagonal[j] as number) + (penalty[j] as number);
    if (!(a > least * diagonal)) return { dependent: j };
    logDeterminant += Math.log(a);
    eliminate(equations, j);
  }
  for (let i = 1; i < size; i++) {
    for (let j = 0; j < i; j++) dense[i * size + j] = dense[j * size + i] as number;
  }
  const bad = choleskyInPlace(dense, size, 0, least);
  if (bad >= 0) return { dependent: sparse + bad };
  for (let i = 0; i < size; i++) logDeterminant += 2 * Math.log(dense[i * size + i] as number);
  return { logDeterminant };
}

function scaleSparse(
  { model, cross, crossDiagonal, scale, pivot, factor }: Equations,
  penalty: Float64Array,
): void {
  const { sparse, start, row } = model;
  for (let j = 0; j < sparse; j++) {
    const own = scale[j] as number;
    pivot[j] = own * own * (crossDiagonal[j] as number) + (penalty[j] as number);
    const to = start[j + 1] as number;
    for (let t = start[j] as number; t < to; t++) {
      factor[t] = own * (scale[row[t] as number] as number) * (cross[t] as number);
    }
  }
}

/** The upper triangle of the dense remainder (`cross` holds the lower one). */
function scaleDense({ model, cross, crossDiagonal, scale, dense }: Equations, penalty: Float64Array): void {
  const { sparse } = model;
  const size = model.columns - sparse;
  const offset = model.row.length;
  for (let i = 0; i < size; i++) {
    const own = scale[sparse + i] as number;
    for (let j = 0; j < i; j++) {
      dense[j * size + i] = own * (scale[sparse + j] as number) * (cross[offset + i * size + j] as number);
    }
    dense[i * size + i] = own * own * (crossDiagonal[sparse + i] as number) + (penalty[sparse + i] as number);
  }
}

/** Takes column j out: subtracts b b' / a from the columns it meets, and keeps b / a. */
function eliminate({ model, pivot, factor, dense }: Equations, j: number): void {
  const { sparse, start, row } = model;
  const size = model.columns - sparse;
  const from = start[j] as number;
  const to = start[j + 1] as number;
  const a = pivot[j] as number;
  for (let t = from; t < to; t++) {
    const target = row[t] as number;
    const l = (factor[t] as number) / a;
    if (target >= sparse) {
      const line = (target - sparse) * size - sparse;
      for (let u = t; u < to; u++) {
        const place = line + (row[u] as number);
        dense[place] = (dense[place] as number) - l * (factor[u] as number);
      }
    } else {
      pivot[target] = (pivot[target] as number) - l * (factor[t] as number);
      let p = start[target] as number;
      for (let u = t + 1; u < to; u++) {
        while (row[p] !== row[u]) p++;
        factor[p] = (factor[p] as number) - l * (factor[u] as number);
      }
    }
    factor[t] = l;
  }
}

function penaltyByColumn(model: MixedModel): Float64Array {
  const penalty = new Float64Array(model.columns);
  for (const { component, first, width } of model.factors) {
    if (component >= 0) penalty.fill(1, first, first + width);
  }
  return penalty;
}
