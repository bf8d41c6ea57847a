import { normalUpper } from '@/lib/stats/distributions';

/**
 * p of whole millimetres ending in 0 or 5 as often as seen, where last digits do not matter to the hand.
 *
 * `table` holds counts by remainder (by five) of the sheet value, five rows, and of the deviation, five columns. A
 * reading ends in 0 or 5 where both add up to a multiple of five. If digits do not matter, deviations are spread over
 * the sheet values at random; of all such spreads, mean and variance of the count are exact (Hoeffding 1951, Ann. Math.
 * Statist. 22, 558–566), and it is taken for normal, half a count taken off. Null for fewer than 20 readings, or where
 * the sheet values leave no choice.
 */
export function fivesByChance(
  table: readonly number[],
): { seen: number; expected: number; n: number; p: number } | null {
  const at = (row: number, column: number): number => table[5 * row + column] ?? 0;
  const five = [0, 1, 2, 3, 4];
  const rows = five.map((row) => five.reduce((sum, column) => sum + at(row, column), 0));
  const columns = five.map((column) => five.reduce((sum, row) => sum + at(row, column), 0));
  const n = rows.reduce((sum, count) => sum + count, 0);
  if (n < 20) return null;
  const hits = (row: number, column: number): number => ((row + column) % 5 === 0 ? 1 : 0);
  const rowMean = five.map((row) => five.reduce((sum, c) => sum + hits(row, c) * (columns[c] ?? 0), 0) / n);
  const columnMean = five.map((c) => five.reduce((sum, row) => sum + hits(row, c) * (rows[row] ?? 0), 0) / n);
  const mean = five.reduce((sum, row) => sum + (rowMean[row] ?? 0) * (rows[row] ?? 0), 0) / n;
  let seen = 0;
  let squares = 0;
  for (const row of five) {
    for (const column of five) {
      seen += hits(row, column) * at(row, column);
      const d = hits(row, column) - (rowMean[row] ?? 0) - (columnMean[column] ?? 0) + mean;
      squares += d * d * (rows[row] ?? 0) * (columns[column] ?? 0);
    }
  }
  const variance = squares / (n - 1);
  if (!(variance > 1e-9)) return null;
  const expected = mean * n;
  return { seen, expected, n, p: normalUpper((seen - 0.5 - expected) / Math.sqrt(variance)) };
}
