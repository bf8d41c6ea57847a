import { changeOf, type Change } from './change';
import type { Series } from './types';

/** From such a probability by chance on a change counts as one that divides a series. */
const CLEAR = 0.05;

/**
 * The change behind an alarm: the last one to its side. A long series changes more than once, and its clearest change may
 * be an old one to the other side, so what comes after a change is looked through again by itself, as long as that shows
 * another clear one. Looking again is counted into `p`.
 * @param side to which the series is beyond its limit; null for its clearest change to either.
 * @returns null where no change to that side can be told apart.
 */
export function changeBehind(series: Series, side: Change['side'] | null): Change | null {
  if (side === null) return changeOf(series);
  let found: Change | null = null;
  let from = 0;
  for (let looked = 1; ; looked++) {
    const change = changeOf(after(series, from));
    if (change === null) return found;
    const p = change.p === null ? null : Math.min(1, looked * change.p);
    const isClear = p !== null && p < CLEAR;
    const at = from + change.at;
    if (change.side !== side && isClear) found = null;
    if (change.side === side && (isClear || found === null))
      found = { ...change, p, at, since: from === 0 ? null : (series.periods[from]?.period ?? null) };
    if (found !== null && !isClear) return found;
    from = at;
  }
}

function after(series: Series, from: number): Series {
  if (series.what === 'right-first-time') return { ...series, periods: series.periods.slice(from) };
  return { ...series, periods: series.periods.slice(from) };
}
