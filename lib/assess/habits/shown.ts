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
