import { densePosition, type FactorPair, type MixedModel, type ModelFactor } from './mixed-model';

/** A factor of the cells: codes from 0 to `levels` − 1. */
export interface CodedFactor {
  name: string;
  codes: Int32Array;
  levels: number;
}

export interface ModelInput {
  n: Float64Array;
  mean: Float64Array;
  withinSs: number;
  readings: number;
  /** In the order of their components. */
  random: (CodedFactor | null)[];
  /** Component that is the cells themselves, with null in its place among `random`; −1 for none. */
  cellComponent: number;
  /** Level 0 is the base and gets no column. */
  fixed: CodedFactor[];
}

interface Candidate extends CodedFactor {
  component: number;
}

/** Below this many levels a factor is not worth eliminating by itself: the dense remainder is faster. */
const WORTH_ELIMINATING = 48;

/**
 * Lays out the columns of the mixed-model equations.
 *
 * The largest factor is eliminated first, and after it every factor that nests all those before it: its block
 * is then still diagonal, so elimination makes no fill beyond the pairs of levels that meet in a cell. The rest
 * (the fixed effects and the intercept among them) is a dense matrix.
 */
export function buildModel(input: ModelInput): MixedModel {
  const cells = input.n.length;
  const given = candidatesOf(input);
  const order = orderOfCells(given[0], cells);
  const candidates = given.map((factor) => ({
    ...factor,
    codes: order.map((s) => factor.codes[s] as number),
  }));
  const n = inOrder(input.n, order);
  const chain = eliminationChain(candidates, cells);
  const ordered = [...chain, ...candidates.filter((factor) => !chain.includes(factor))];
  const factors: ModelFactor[] = [];
  let columns = 0;
  for (const candidate of ordered) {
    const factor = placeColumns(candidate, columns);
    factors.push(factor);
    columns += factor.width;
  }
  const sparse = factors.slice(0, chain.length).reduce((sum, factor) => sum + factor.width, 0);
  const model: MixedModel = {
    readings: input.readings,
    cells,
    n,
    cellsBySize: countSizes(n),
    order,
    mean: inOrder(input.mean, order),
    withinSs: input.withinSs,
    components: input.random.length,
    cellComponent: input.cellComponent,
    factors,
    columns: columns + 1,
    fixedColumns: 1 + input.fixed.reduce((sum, factor) => sum + factor.levels - 1, 0),
    sparse,
    start: new Int32Array(sparse + 1),
    row: new Int32Array(0),
    pairs: pairsOf(factors, cells),
  };
  layOutSparse(model, chain.length);
  layOutDense(model, chain.length);
  return model;
}

/** Cells in the order of the levels of the largest factor, so that the passes over them stay close in memory. */
function orderOfCells(factor: Candidate | undefined, cells: number): Int32Array {
  if (factor === undefined) return Int32Array.from({ length: cells }, (_, s) => s);
  return cellsByColumn({ column: factor.codes, first: 0, width: factor.levels }, cells).order;
}

function inOrder(values: Float64Array, order: Int32Array): Float64Array {
  const result = new Float64Array(order.length);
  for (let s = 0; s < order.length; s++) result[s] = values[order[s] as number] as number;
  return result;
}

function countSizes(n: Float64Array): Map<number, number> {
  const counts = new Map<number, number>();
  for (const size of n) counts.set(size, (counts.get(size) ?? 0) + 1);
  return counts;
}

function candidatesOf(input: ModelInput): Candidate[] {
  const random = input.random.flatMap((factor, component) =>
    factor === null ? [] : [{ ...factor, component }],
  );
  const fixed = input.fixed
    .filter((factor) => factor.levels > 1)
    .map((factor) => ({ ...factor, component: -1 }));
  return [...random, ...fixed].sort((a, b) => b.levels - a.levels);
}

function eliminationChain(candidates: readonly Candidate[], cells: number): Candidate[] {
  const chain: Candidate[] = [];
  for (const candidate of candidates) {
    const first = chain.length === 0;
    if (!first && candidate.levels < WORTH_ELIMINATING) break;
    if (chain.every((inner) => isNested(inner, candidate, cells))) chain.push(candidate);
  }
  return chain;
}

/** True where every level of `inner` lies within one level of `outer`. */
export function isNested(inner: CodedFactor, outer: CodedFactor, cells: number): boolean {
  const seen = new Int32Array(inner.levels).fill(-1);
  for (let s = 0; s < cells; s++) {
    const level = inner.codes[s] as number;
    const known = seen[level] as number;
    if (known < 0) seen[level] = outer.codes[s] as number;
    else if (known !== (outer.codes[s] as number)) return false;
  }
  return true;
}

function placeColumns(candidate: Candidate, first: number): ModelFactor {
  const { name, codes, component, levels } = candidate;
  const base = component < 0 ? 1 : 0;
  const column = new Int32Array(codes.length);
  for (let s = 0; s < codes.length; s++) {
    const code = (codes[s] as number) - base;
    column[s] = code < 0 ? -1 : first + code;
  }
  return { name, component, column, first, width: levels - base };
}

function pairsOf(factors: readonly ModelFactor[], cells: number): FactorPair[] {
  return factors.flatMap((_, a) =>
    factors
      .slice(a + 1)
      .map(({ column }, i) => ({ a, b: a + 1 + i, other: column, position: new Int32Array(cells).fill(-1) })),
  );
}

/** Finds which later columns each eliminated column meets, and where each cell's pairs have their element. */
function layOutSparse(model: MixedModel, chain: number): void {
  const intercept = model.columns - 1;
  const room = model.pairs.reduce((sum, { a }) => sum + (a < chain ? model.cells : 0), model.sparse);
  const rows = new Int32Array(Math.min(room, model.sparse * model.columns));
  const slot = new Int32Array(model.columns).fill(-1);
  let end = 0;
  for (const factor of model.factors.slice(0, chain)) {
    const later = model.pairs.filter((pair) => model.factors[pair.a] === factor);
    const { order, start } = cellsByColumn(factor, model.cells);
    for (let j = 0; j < factor.width; j++) {
      const from = end;
      const first = start[j] as number;
      const last = start[j + 1] as number;
      for (const { other } of later) {
        for (let k = first; k < last; k++) {
          const column = other[order[k] as number] as number;
          if (column >= 0 && (slot[column] as number) < from) {
            slot[column] = from;
            rows[end++] = column;
          }
        }
      }
      sortRange(rows, from, end);
      for (let t = from; t < end; t++) slot[rows[t] as number] = t;
      rows[end++] = intercept;
      for (const { other, position } of later) {
        for (let k = first; k < last; k++) {
          const cell = order[k] as number;
          const column = other[cell] as number;
          if (column >= 0) position[cell] = slot[column] as number;
        }
      }
      model.start[factor.first + j + 1] = end;
    }
  }
  model.row = rows.slice(0, end);
}

function sortRange(values: Int32Array, from: number, to: number): void {
  if (to - from > 40) {
    values.subarray(from, to).sort();
    return;
  }
  for (let t = from + 1; t < to; t++) {
    const value = values[t] as number;
    let u = t - 1;
    for (; u >= from && (values[u] as number) > value; u--) values[u + 1] = values[u] as number;
    values[u + 1] = value;
  }
}

function layOutDense(model: MixedModel, chain: number): void {
  for (const { a, b, position } of model.pairs) {
    if (a < chain) continue;
    const one = (model.factors[a] as ModelFactor).column;
    const other = (model.factors[b] as ModelFactor).column;
    for (let s = 0; s < model.cells; s++) {
      const j = one[s] as number;
      const i = other[s] as number;
      if (i >= 0 && j >= 0) position[s] = densePosition(model, i, j);
    }
  }
}

/** Cells in the order of their column in one factor (a counting sort); cells without a column are left out. */
export function cellsByColumn(
  factor: Pick<ModelFactor, 'column' | 'first' | 'width'>,
  cells: number,
): { order: Int32Array; start: Int32Array } {
  const start = new Int32Array(factor.width + 1);
  for (let s = 0; s < cells; s++) {
    const column = factor.column[s] as number;
    if (column >= 0) start[column - factor.first + 1] = (start[column - factor.first + 1] as number) + 1;
  }
  for (let j = 0; j < factor.width; j++) start[j + 1] = (start[j + 1] as number) + (start[j] as number);
  const next = start.slice();
  const order = new Int32Array(start[factor.width] as number);
  for (let s = 0; s < cells; s++) {
    const column = factor.column[s] as number;
    if (column < 0) continue;
    const j = column - factor.first;
    order[next[j] as number] = s;
    next[j] = (next[j] as number) + 1;
  }
  return { order, start };
}
