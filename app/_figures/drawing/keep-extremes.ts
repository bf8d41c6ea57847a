/**
 * Which of many points to draw where there is room for about `most`: of every stretch the first, the last and those
 * where some value is largest or smallest, so that no extreme is hidden. All of them where they fit.
 */
export function keepExtremes<Point>(
  points: readonly Point[],
  values: (point: Point) => readonly (number | null)[],
  most: number,
): Point[] {
  if (points.length <= most) return [...points];
  const series = points.map(values);
  const width = Math.max(...series.map((row) => row.length));
  const stretches = Math.max(1, Math.floor(most / (2 + 2 * width)));
  const size = Math.ceil(points.length / stretches);
  const kept = new Set<number>();
  for (let start = 0; start < points.length; start += size) {
    const end = Math.min(points.length, start + size) - 1;
    kept.add(start).add(end);
    for (let value = 0; value < width; value++) {
      let [lowest, highest] = [start, start];
      for (let i = start; i <= end; i++) {
        if (of(series, i, value, Infinity) < of(series, lowest, value, Infinity)) lowest = i;
        if (of(series, i, value, -Infinity) > of(series, highest, value, -Infinity)) highest = i;
      }
      kept.add(lowest).add(highest);
    }
  }
  return points.filter((_, i) => kept.has(i));
}

const of = (
  series: readonly (readonly (number | null)[])[],
  i: number,
  value: number,
  none: number,
): number => series[i]?.[value] ?? none;
