/** A longer word is like none of ours. */
const LONGEST = 60;

/** The option most like the word, or null where none is like it. A third of the letters may differ. */
export function nearest(word: string, options: readonly string[]): string | null {
  if (word.length > LONGEST) return null;
  const ranked = options
    .filter((option) => option.length <= LONGEST)
    .map((option) => ({ option, distance: editDistance(word.toLowerCase(), option.toLowerCase()) }))
    .sort((a, b) => a.distance - b.distance);
  const [best] = ranked;
  if (best === undefined) return null;
  const allowed = Math.floor(Math.max(word.length, best.option.length) / 3);
  return best.distance <= allowed ? best.option : null;
}

/** Letters to insert, drop, replace or swap with the next (optimal string alignment). */
function editDistance(a: string, b: string): number {
  let before: number[] = [];
  let above = Array.from({ length: b.length + 1 }, (_, j) => j);
  for (let i = 1; i <= a.length; i++) {
    const row = [i];
    for (let j = 1; j <= b.length; j++) {
      const same = a[i - 1] === b[j - 1];
      let best = Math.min((row[j - 1] ?? 0) + 1, (above[j] ?? 0) + 1, (above[j - 1] ?? 0) + (same ? 0 : 1));
      if (i > 1 && j > 1 && a[i - 1] === b[j - 2] && a[i - 2] === b[j - 1]) {
        best = Math.min(best, (before[j - 2] ?? 0) + 1);
      }
      row.push(best);
    }
    before = above;
    above = row;
  }
  return above[b.length] ?? a.length;
}
