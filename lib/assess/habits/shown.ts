/** A setup that shows a habit: `job/setup`, and what it is ordered by (the time of its first reading). */
export interface Shown {
  label: string;
  at: number;
}

/** How many setups are kept for each habit. */
export const MOST_SHOWN = 50;

/** How many of them one job adds at most, so that its tally stays small. */
export const MOST_SHOWN_OF_A_JOB = 3;

/** Newest first, each label once. */
export function newest(setups: readonly Shown[], most = MOST_SHOWN): Shown[] {
  if (setups.length <= most) return newestOf([setups], most);
  // Of a long list the most part is older than all that are wanted, and need not be brought in order by its labels.
  const times = Float64Array.from(setups, ({ at }) => at).sort();
  const oldest = times[times.length - most] ?? -Infinity;
  const some = newestOf([setups.filter(({ at }) => at >= oldest)], most);
  // Labels that are there twice may have left too few.
  return some.length === most ? some : newestOf([setups], most);
}

/** Adds a setup to those that are `newest` so far, in their order: what comes one by one need not be sorted. */
export function addToNewest(newest: Shown[], setup: Shown, most: number): void {
  const known = newest.findIndex(({ label }) => label === setup.label);
  if (known >= 0) {
    if ((newest[known]?.at ?? 0) >= setup.at) return;
    newest.splice(known, 1);
  }
  let place = newest.length;
  while (place > 0 && newerFirst(newest[place - 1] ?? setup, setup) > 0) place--;
  if (place >= most) return;
  newest.splice(place, 0, setup);
  if (newest.length > most) newest.pop();
}

/**
 * The newest of several lists together, as `newest` of all of them in one. Lists that are in that order already, as those
 * of sums are, are only looked at as far as something of them is among the newest.
 */
export function newestOf(lists: readonly (readonly Shown[])[], most = MOST_SHOWN): Shown[] {
  const sorted: (readonly Shown[])[] = [];
  const next: number[] = [];
  for (const list of lists) {
    sorted.push(isInOrder(list) ? list : [...list].sort(newerFirst));
    next.push(0);
  }
  const labels = new Set<string>();
  const shown: Shown[] = [];
  while (shown.length < most) {
    let from = -1;
    let best: Shown | undefined;
    for (let i = 0; i < sorted.length; i++) {
      const one = sorted[i]?.[next[i] ?? 0];
      if (one === undefined || (best !== undefined && newerFirst(best, one) <= 0)) continue;
      best = one;
      from = i;
    }
    if (best === undefined) break;
    next[from] = (next[from] ?? 0) + 1;
    if (labels.has(best.label)) continue;
    labels.add(best.label);
    shown.push(best);
  }
  return shown;
}

const newerFirst = (a: Shown, b: Shown): number =>
  b.at - a.at || (a.label === b.label ? 0 : a.label < b.label ? 1 : -1);

function isInOrder(list: readonly Shown[]): boolean {
  for (let i = 1; i < list.length; i++) {
    const [before, one] = [list[i - 1], list[i]];
    if (before !== undefined && one !== undefined && newerFirst(before, one) > 0) return false;
  }
  return true;
}
