import type { Table } from './types';

/** One mean square with its weight in a variance. */
export interface Term {
  weight: number;
  ms: number;
  df: number;
}

/** A variance as a weighted sum of mean squares. */
export type Combination = Term[];

export interface TrialSize {
  parts: number;
  operators: number;
  repeats: number;
}

/**
 * Every variance of a crossed trial as a combination of the mean squares of its table.
 *
 * part = (MS_part − MS_both) / (o r), operator = (MS_operator − MS_both) / (p r), both = (MS_both − MS_repeat) / r.
 * Source: Burdick & Graybill (1992), section 6.2.
 */
export function combinations(table: Table, { parts: p, operators: o, repeats: r }: TrialSize) {
  const [part, operator, both, repeat] = [table.part, table.operator, table['part:operator'], table.repeat];
  const of = (...weights: [number, number, number, number]): Combination =>
    [part, operator, both, repeat].flatMap(({ ms, df }, i) => {
      const weight = weights[i] ?? 0;
      return weight === 0 ? [] : [{ weight, ms: ms ?? 0, df }];
    });
  return {
    part: of(1 / (o * r), 0, -1 / (o * r), 0),
    operator: of(0, 1 / (p * r), -1 / (p * r), 0),
    'part:operator': of(0, 0, 1 / r, -1 / r),
    repeat: of(0, 0, 0, 1),
    reproducibility: of(0, 1 / (p * r), (p - 1) / (p * r), -1 / r),
    gauge: of(0, 1 / (p * r), (p - 1) / (p * r), (r - 1) / r),
    total: of(1 / (o * r), 1 / (p * r), (p * o - p - o) / (p * o * r), (r - 1) / r),
  };
}

/** The same where part:operator is pooled with the repeats, or cannot be told from them (one repeat). */
export function combinationsWithoutInteraction(
  table: Table,
  { parts: p, operators: o, repeats: r }: TrialSize,
) {
  const own = table.repeat.df > 0 ? table.repeat : table['part:operator'];
  const of = (part: number, operator: number, repeat: number): Combination =>
    [
      { weight: part, line: table.part },
      { weight: operator, line: table.operator },
      { weight: repeat, line: own },
    ].flatMap(({ weight, line }) => (weight === 0 ? [] : [{ weight, ms: line.ms ?? 0, df: line.df }]));
  return {
    part: of(1 / (o * r), 0, -1 / (o * r)),
    operator: of(0, 1 / (p * r), -1 / (p * r)),
    repeat: of(0, 0, 1),
    reproducibility: of(0, 1 / (p * r), -1 / (p * r)),
    gauge: of(0, 1 / (p * r), 1 - 1 / (p * r)),
    total: of(1 / (o * r), 1 / (p * r), 1 - 1 / (p * r) - 1 / (o * r)),
  };
}

export const estimateOf = (combination: Combination): number =>
  combination.reduce((sum, { weight, ms }) => sum + weight * ms, 0);
