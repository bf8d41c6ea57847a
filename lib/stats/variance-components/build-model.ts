import { codeAt, countAt } from '@/lib/stats/linear-algebra/element';
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
  const candidates = candidatesOf(input);
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
    n: input.n,
    mean: input.mean,
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
    const level = codeAt(inner.codes, s);
    const known = codeAt(seen, level);
    if (known < 0) seen[level] = codeAt(outer.codes, s);
    else if (known !== codeAt(outer.codes, s)) return false;
  }
  return true;
}

function placeColumns(candidate: Candidate, first: number): ModelFactor {
  const { name, codes, component, levels } = candidate;
  const base = component < 0 ? 1 : 0;
  const column = new Int32Array(codes.length);
  for (let s = 0; s < codes.length; s++) {
    const code = codeAt(codes, s) - base;
    column[s] = code < 0 ? -1 : first + code;
  }
  return { name, component, column, first, width: levels - base };
}

function pairsOf(factors: readonly ModelFactor[], cells: number): FactorPair[] {
  return factors.flatMap((_, a) =>
    factors.slice(a + 1).map((__, i) => ({ a, b: a + 1 + i, position: new Int32Array(cells).fill(-1) })),
  );
}

/** Finds which later columns each eliminated column meets, and where each cell's pairs have their element. */
function layOutSparse(model: MixedModel, chain: number): void {
  const rows: number[] = [];
  const slot = new Int32Array(model.columns).fill(-1);
  const intercept = model.columns - 1;
  for (let f = 0; f < chain; f++) {
    const factor = model.factors[f];
    if (factor === undefined) break;
    const later = model.pairs.filter((pair) => pair.a === f);
    const { order, start } = cellsByColumn(factor, model.cells);
    for (let j = 0; j < factor.width; j++) {
      const found: number[] = [];
      const from = rows.length;
      for (let k = codeAt(start, j); k < codeAt(start, j + 1); k++) {
        for (const { b } of later) {
          const column = codeAt((model.factors[b] as ModelFactor).column, codeAt(order, k));
          if (column >= 0 && codeAt(slot, column) < from) {
            slot[column] = from;
            found.push(column);
          }
        }
      }
      found.sort((x, y) => x - y);
      found.forEach((column, i) => (slot[column] = from + i));
      for (const column of found) rows.push(column);
      rows.push(intercept);
      for (let k = codeAt(start, j); k < codeAt(start, j + 1); k++) {
        const cell = codeAt(order, k);
        for (const pair of later) {
          const column = codeAt((model.factors[pair.b] as ModelFactor).column, cell);
          if (column >= 0) pair.position[cell] = codeAt(slot, column);
        }
      }
      model.start[factor.first + j + 1] = rows.length;
    }
  }
  model.row = Int32Array.from(rows);
}

function layOutDense(model: MixedModel, chain: number): void {
  for (const { a, b, position } of model.pairs) {
    if (a < chain) continue;
    const one = (model.factors[a] as ModelFactor).column;
    const other = (model.factors[b] as ModelFactor).column;
    for (let s = 0; s < model.cells; s++) {
      const j = codeAt(one, s);
      const i = codeAt(other, s);
      if (i >= 0 && j >= 0) position[s] = densePosition(model, i, j);
    }
  }
}

/** Cells in the order of their column in one factor (a counting sort); cells without a column are left out. */
export function cellsByColumn(factor: ModelFactor, cells: number): { order: Int32Array; start: Int32Array } {
  const start = new Int32Array(factor.width + 1);
  for (let s = 0; s < cells; s++) {
    const column = codeAt(factor.column, s);
    if (column >= 0) countAt(start, column - factor.first + 1);
  }
  for (let j = 0; j < factor.width; j++) start[j + 1] = codeAt(start, j + 1) + codeAt(start, j);
  const next = start.slice();
  const order = new Int32Array(codeAt(start, factor.width));
  for (let s = 0; s < cells; s++) {
    const column = codeAt(factor.column, s);
    if (column < 0) continue;
    const j = column - factor.first;
    order[codeAt(next, j)] = s;
    countAt(next, j);
  }
  return { order, start };
}
