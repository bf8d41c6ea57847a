/** Covariance of two places of the state, each less what two others carry to it by the levers. */
export function carried(
  C: Float64Array,
  n: number,
  row: number,
  rowA: number,
  rowB: number,
  column: number,
  columnA: number,
  columnB: number,
  wa: number,
  wb: number,
): number {
  const here = row * n;
  const a = rowA * n;
  const b = rowB * n;
  return (
    (C[here + column] ?? 0) -
    wa * (C[here + columnA] ?? 0) -
    wb * (C[here + columnB] ?? 0) -
    wa * ((C[a + column] ?? 0) - wa * (C[a + columnA] ?? 0) - wb * (C[a + columnB] ?? 0)) -
    wb * ((C[b + column] ?? 0) - wa * (C[b + columnA] ?? 0) - wb * (C[b + columnB] ?? 0))
  );
}
