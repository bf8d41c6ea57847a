import { addAt, at, codeAt } from '@/lib/stats/linear-algebra/element';
import { forward, type Equations } from './equations';
import type { MixedModel } from './mixed-model';
import { crossWithCells, type Solution } from './solution';

/** Z' P y of every component by cell, and its sum of squares by level; the residual last (P y itself). */
export interface Scores {
  /** The value that every cell has of V_i P y, relative to the residual variance. */
  vectors: Float64Array[];
  squares: Float64Array;
}

export function squaredScores({ model }: Equations, { weighted }: Solution): Scores {
  const vectors: Float64Array[] = Array.from({ length: model.components + 1 }, () => new Float64Array(0));
  const squares = new Float64Array(model.components + 1);
  for (const factor of model.factors) {
    if (factor.component < 0) continue;
    const level = new Float64Array(factor.width);
    const byCell = new Float64Array(model.cells);
    for (let s = 0; s < model.cells; s++)
      addAt(level, codeAt(factor.column, s) - factor.first, at(weighted, s));
    for (let s = 0; s < model.cells; s++) byCell[s] = at(level, codeAt(factor.column, s) - factor.first);
    vectors[factor.component] = byCell;
    squares[factor.component] = level.reduce((sum, value) => sum + value * value, 0);
  }
  if (model.cellComponent >= 0) {
    vectors[model.cellComponent] = weighted;
    squares[model.cellComponent] = weighted.reduce((sum, value) => sum + value * value, 0);
  }
  const { vector, square } = residualScore(model, weighted);
  vectors[model.components] = vector;
  squares[model.components] = square;
  return { vectors, squares };
}

function residualScore(model: MixedModel, weighted: Float64Array): { vector: Float64Array; square: number } {
  const vector = new Float64Array(model.cells);
  let square = model.withinSs;
  for (let s = 0; s < model.cells; s++) {
    const value = at(weighted, s) / at(model.n, s);
    vector[s] = value;
    square += value * at(weighted, s);
  }
  return { vector, square };
}

/**
 * (V_i P y)' P (V_j P y), relative to the residual variance (to be divided by its cube).
 *
 * Source: Gilmour, Thompson & Cullis (1995), Biometrics 51, 1440–1450.
 */
export function averageInformation(equations: Equations, vectors: readonly Float64Array[]): Float64Array[] {
  const { model, weight, pivot } = equations;
  const solved = vectors.map((vector) => {
    const z = crossWithCells(equations, (s) => at(vector, s));
    forward(equations, z);
    return z;
  });
  const result = vectors.map(() => new Float64Array(vectors.length));
  vectors.forEach((one, i) => {
    for (let k = 0; k <= i; k++) {
      const other = vectors[k] as Float64Array;
      let sum = i === model.components && k === i ? model.withinSs : 0;
      for (let s = 0; s < model.cells; s++) sum += at(weight, s) * at(one, s) * at(other, s);
      const zi = solved[i] as Float64Array;
      const zk = solved[k] as Float64Array;
      for (let j = 0; j < model.columns; j++) {
        sum -= (at(zi, j) * at(zk, j)) / (j < model.sparse ? at(pivot, j) : 1);
      }
      (result[i] as Float64Array)[k] = sum;
      (result[k] as Float64Array)[i] = sum;
    }
  });
  return result;
}
