/**
 * The mixed model on cells: readings that share every level are one cell, known by count, mean and sum of
 * squares. `mean` = fixed effects + Σ random effects (+ the cell's own effect, where one is in the model).
 */

export interface ModelFactor {
  name: string;
  /** Random: the place of its variance among the components. Fixed: −1. */
  component: number;
  /** Column of each cell; −1 where the cell stands at the base level of a fixed factor. */
  column: Int32Array;
  /** Its columns are `first`, …, `first + width − 1`. */
  first: number;
  width: number;
}

export interface MixedModel {
  readings: number;
  cells: number;
  n: Float64Array;
  /** How many cells there are of each n. */
  cellsBySize: ReadonlyMap<number, number>;
  /** Place of each cell in the problem as it was put: cells stand in the order of the first factor's columns. */
  order: Int32Array;
  /** Cell means, shifted and scaled so that they are near 0 and 1. */
  mean: Float64Array;
  /** Sum of squares within cells, on the same scale. */
  withinSs: number;
  /** Number of random components, the residual not counted. */
  components: number;
  /** Component whose levels are the cells themselves, absorbed into the weights; −1 where there is none. */
  cellComponent: number;
  /** In the order of their columns. The cell component has no columns and is not here. */
  factors: ModelFactor[];
  /** The intercept is the last of them. */
  columns: number;
  /** Fixed columns, the intercept counted. */
  fixedColumns: number;
  /** Columns that are eliminated one by one, ahead of the dense remainder. */
  sparse: number;
  /** Column j < sparse meets the columns row[start[j]], …, row[start[j + 1] − 1], rising, all above j. */
  start: Int32Array;
  row: Int32Array;
  /** Where each pair of factors of a cell has its element, for both orders of use; see `positionOf`. */
  pairs: FactorPair[];
}

export interface FactorPair {
  a: number;
  b: number;
  /** The columns of factor b. */
  other: Int32Array;
  /** Element of each cell in the store of off-diagonal elements; −1 where one of the two has no column. */
  position: Int32Array;
}

/** Length of the store of off-diagonal elements: the sparse columns, then the dense remainder by rows. */
export function storeLength(model: MixedModel): number {
  const dense = model.columns - model.sparse;
  return model.row.length + dense * dense;
}

/** Element (i, j), i ≥ j, of the dense remainder in that store. */
export function densePosition(model: MixedModel, i: number, j: number): number {
  return model.row.length + (i - model.sparse) * (model.columns - model.sparse) + (j - model.sparse);
}
