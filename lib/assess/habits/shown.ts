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
  if (setups.length <= most) return distinct(setups, most);
  // Of a long list the most part is older than all that are wanted, and need not be brought in order by its labels.
  const times = Float64Array.from(setups, ({ at }) => at).sort();
  const oldest = times[times.length - most] ?? -Infinity;
  const some = distinct(
    setups.filter(({ at }) => at >= oldest),
    most,
  );
  // Labels that are there twice may have left too few.
  return some.length === most ? some : distinct(setups, most);
}

function distinct(setups: readonly Shown[], most: number): Shown[] {
  const sorted = [...setups].sort((a, b) => b.at - a.at || (a.label < b.label ? 1 : -1));
  const labels = new Set<string>();
  const shown: Shown[] = [];
  for (const one of sorted) {
    if (shown.length === most) break;
    if (labels.has(one.label)) continue;
    labels.add(one.label);
    shown.push(one);
  }
  return shown;
}
