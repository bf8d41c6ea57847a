/** The middle of some runs with the least and the greatest: `1.2 (1.1 to 1.4)`. */
export function spread(values: readonly number[], digits = 1): string {
  const sorted = [...values].sort((a, b) => a - b);
  const [least = Number.NaN] = sorted;
  const most = sorted.at(-1) ?? Number.NaN;
  const told = (value: number) => value.toFixed(digits);
  if (sorted.length < 2) return told(least);
  return `${told(middleOf(values))} (${told(least)} to ${told(most)})`;
}

export function middleOf(values: readonly number[]): number {
  const sorted = [...values].sort((a, b) => a - b);
  return sorted[Math.floor(sorted.length / 2)] ?? Number.NaN;
}
