/** The stretch grown from the likeliest place, always towards the likelier neighbour, until it holds the level. */
export function stretch(
  probabilities: readonly number[],
  at: number,
  level: number,
): { low: number; high: number } {
  let low = at;
  let high = at;
  let held = probabilities[at] ?? 0;
  while (held < level && (low > 0 || high < probabilities.length - 1)) {
    const left = probabilities[low - 1] ?? -1;
    const right = probabilities[high + 1] ?? -1;
    if (left >= right) low--;
    else high++;
    held += Math.max(left, right);
  }
  return { low, high };
}
