/** So many answers are kept of one function: some hundred kilobytes. */
const MOST = 4_000;

/**
 * A slow function of numbers that is asked the same again and again, such as a quantile by its degrees of freedom: what
 * it gave before is given again. All is forgotten where there is too much of it.
 */
export function remembering<Args extends readonly number[]>(
  work: (...args: Args) => number,
): (...args: Args) => number {
  const known = new Map<string, number>();
  return (...args) => {
    const key = args.join(' ');
    const before = known.get(key);
    if (before !== undefined) return before;
    const found = work(...args);
    if (known.size >= MOST) known.clear();
    known.set(key, found);
    return found;
  };
}
