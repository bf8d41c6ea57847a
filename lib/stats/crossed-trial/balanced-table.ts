import { fUpper } from '@/lib/stats/distributions';
import { CompensatedSum } from '@/lib/stats/linear-algebra/compensated-sum';
import type { Table, TableLine } from './types';

/** A complete trial: readings[part][operator] holds the same number of repeats everywhere. */
export interface BalancedTrial {
  readings: number[][][];
  parts: number;
  operators: number;
  repeats: number;
}

/**
 * Analysis of variance of a balanced two-way crossed trial, both factors random.
 *
 * Source: Burdick & Graybill (1992), Confidence Intervals on Variance Components, section 6.2 (expected mean
 * squares of the two-fold crossed design).
 */
export function balancedTable({ readings, parts, operators, repeats }: BalancedTrial): Table {
  const origin = readings[0]?.[0]?.[0] ?? 0;
  const cells = readings.map((line) => line.map((cell) => mean(cell.map((value) => value - origin))));
  const byPart = cells.map(mean);
  const byOperator = Array.from({ length: operators }, (_, o) => mean(cells.map((line) => line[o] ?? 0)));
  const grand = mean(byPart);
  const part = squares(byPart.map((m) => m - grand)) * operators * repeats;
  const operator = squares(byOperator.map((m) => m - grand)) * parts * repeats;
  const both = squares(
    cells.flatMap((line, p) => line.map((m, o) => m - (byPart[p] ?? 0) - (byOperator[o] ?? 0) + grand)),
  );
  const repeat = squares(
    readings.flatMap((line, p) =>
      line.flatMap((cell, o) => cell.map((value) => value - origin - (cells[p]?.[o] ?? 0))),
    ),
  );
  const error = plain(repeat, parts * operators * (repeats - 1));
  const interaction = against(both * repeats, (parts - 1) * (operators - 1), error);
  return {
    part: against(part, parts - 1, interaction),
    operator: against(operator, operators - 1, interaction),
    'part:operator': interaction,
    repeat: error,
  };
}

/** The table with part:operator pooled with the repeats, which then are what the others are compared with. */
export function pooledTable(table: Table): Table {
  const both = table['part:operator'];
  const repeat = plain(both.ss + table.repeat.ss, both.df + table.repeat.df);
  return {
    part: against(table.part.ss, table.part.df, repeat),
    operator: against(table.operator.ss, table.operator.df, repeat),
    'part:operator': { ss: 0, df: 0, ms: null, f: null, p: null },
    repeat,
  };
}

const plain = (ss: number, df: number): TableLine => ({
  ss,
  df,
  ms: df > 0 ? ss / df : null,
  f: null,
  p: null,
});

function against(ss: number, df: number, other: TableLine): TableLine {
  const line = plain(ss, df);
  if (line.ms === null || other.ms === null || other.ms === 0) return line;
  const f = line.ms / other.ms;
  return { ...line, f, p: fUpper(f, df, other.df) };
}

/** Mean in two passes. */
function mean(values: readonly number[]): number {
  const rough = total(values) / values.length;
  return rough + total(values.map((value) => value - rough)) / values.length;
}

const squares = (values: readonly number[]): number => total(values.map((value) => value * value));

function total(values: readonly number[]): number {
  const sum = new CompensatedSum();
  for (const value of values) sum.add(value);
  return sum.value;
}
