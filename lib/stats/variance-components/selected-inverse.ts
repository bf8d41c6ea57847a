import { inverseFromCholesky } from '@/lib/stats/linear-algebra/cholesky';
import type { Equations } from './equations';

/**
 * Elements of A⁻¹ at the places where X' W X has elements, and its diagonal, from the factor of A.
 *
 * Source: Takahashi, Fagan & Chen (1973), 8th PICA Conference, 63–69; Erisman & Tinney (1975), Comm. ACM 18, 177–179.
 */
export function selectInverse(equations: Equations): void {
  const { model, pivot, factor, dense, inverse, inverseDiagonal } = equations;
  const { sparse, start, row } = model;
  const size = model.columns - sparse;
  const offset = row.length;
  inverseFromCholesky(dense, size, inverse, 0, offset);
  for (let i = 0; i < size; i++) inverseDiagonal[sparse + i] = inverse[offset + i * size + i] as number;
  for (let j = sparse - 1; j >= 0; j--) {
    const from = start[j] as number;
    const to = start[j + 1] as number;
    inverse.fill(0, from, to);
    let t = from;
    for (; (row[t] as number) < sparse; t++) addSparseColumn(equations, t, to);
    addDenseColumns(equations, t, to);
    let diagonal = 1 / (pivot[j] as number);
    for (let u = from; u < to; u++) diagonal -= (factor[u] as number) * (inverse[u] as number);
    inverseDiagonal[j] = diagonal;
  }
}

/** Subtracts the inverse's elements among the dense columns times l, for the elements from `first` to `to`. */
function addDenseColumns({ model, factor, inverse }: Equations, first: number, to: number): void {
  const { sparse, row } = model;
  const size = model.columns - sparse;
  const offset = row.length - sparse;
  for (let t = first; t < to; t++) {
    const l = factor[t] as number;
    const line = offset + ((row[t] as number) - sparse) * size;
    let sum = l * (inverse[line + (row[t] as number)] as number);
    for (let u = t + 1; u < to; u++) {
      const m = inverse[line + (row[u] as number)] as number;
      sum += (factor[u] as number) * m;
      inverse[u] = (inverse[u] as number) - l * m;
    }
    inverse[t] = (inverse[t] as number) - sum;
  }
}

/** The same for element t, whose column is itself a sparse one. */
function addSparseColumn(
  { model, factor, inverse, inverseDiagonal }: Equations,
  t: number,
  to: number,
): void {
  const { start, row } = model;
  const column = row[t] as number;
  const l = factor[t] as number;
  let sum = l * (inverseDiagonal[column] as number);
  let p = start[column] as number;
  for (let u = t + 1; u < to; u++) {
    while (row[p] !== row[u]) p++;
    const m = inverse[p] as number;
    sum += (factor[u] as number) * m;
    inverse[u] = (inverse[u] as number) - l * m;
  }
  inverse[t] = (inverse[t] as number) - sum;
}
