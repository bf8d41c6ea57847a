import { collapseByCode } from '@/lib/stats/collapse';
import type { CodedFactor } from './build-model';

/** Readings that share every level, as one. */
export interface Cells<F extends CodedFactor> {
  n: Float64Array;
  mean: Float64Array;
  withinSs: number;
  /** The factors, with a code for each cell. */
  factors: F[];
}

/** Collapses readings that share the levels of all factors. Cost: one pass a factor where they are nested. */
export function formCells<F extends CodedFactor>(values: Float64Array, factors: readonly F[]): Cells<F> {
  const bySize = [...factors].sort((a, b) => b.levels - a.levels);
  let codes = new Int32Array(values.length);
  let count = 1;
  for (const factor of bySize) {
    if (count === 1 && factor.levels > 1) {
      codes = Int32Array.from(factor.codes);
      count = factor.levels;
    } else if (splits(codes, count, factor)) ({ codes, count } = split(codes, factor));
  }
  const { n, mean, ss } = collapseByCode(values, codes, count);
  let withinSs = 0;
  for (const square of ss) withinSs += square;
  return {
    n,
    mean,
    withinSs,
    factors: factors.map((factor) => ({ ...factor, codes: byCell(factor, codes, count) })),
  };
}

/** True where some cell holds readings of more than one level. */
function splits(cells: Int32Array, count: number, factor: CodedFactor): boolean {
  const seen = new Int32Array(count).fill(-1);
  for (let i = 0; i < cells.length; i++) {
    const cell = cells[i] as number;
    const level = factor.codes[i] as number;
    if ((seen[cell] as number) < 0) seen[cell] = level;
    else if ((seen[cell] as number) !== level) return true;
  }
  return false;
}

function split(cells: Int32Array, factor: CodedFactor): { codes: Int32Array<ArrayBuffer>; count: number } {
  const known = new Map<number, number>();
  const codes = new Int32Array(cells.length);
  for (let i = 0; i < cells.length; i++) {
    const key = (cells[i] as number) * factor.levels + (factor.codes[i] as number);
    let cell = known.get(key);
    if (cell === undefined) {
      cell = known.size;
      known.set(key, cell);
    }
    codes[i] = cell;
  }
  return { codes, count: known.size };
}

function byCell(factor: CodedFactor, cells: Int32Array, count: number): Int32Array {
  const codes = new Int32Array(count);
  for (let i = 0; i < cells.length; i++) codes[cells[i] as number] = factor.codes[i] as number;
  return codes;
}
