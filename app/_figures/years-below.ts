/** What a year takes below an axis, in units of the drawing: four figures as a phone shows them, and a gap. */
const A_YEAR = 64;

/**
 * The years to be written below months or quarters: where one begins, and below the first of all, but for those that would
 * lie over one another. A year that begins there goes before one that is under way at the left end.
 * @param periods one after another, each beginning with its year: `2025-03`, `2025-Q1`
 * @param step units of the drawing from one to the next
 * @returns by period, its year or null
 */
export function yearsBelow(periods: readonly string[], step: number): (string | null)[] {
  const years = periods.map((period) => period.slice(0, 4));
  const next = years.findIndex((year, at) => at > 0 && year !== years[at - 1]);
  const isCrowded = next > 0 && next * step < A_YEAR && !beginsYear(periods[0] ?? '');
  let last = isCrowded ? next : 0;
  return years.map((year, at) => {
    if (at < last || (at !== last && (year === years[at - 1] || (at - last) * step < A_YEAR))) return null;
    last = at;
    return year;
  });
}

const beginsYear = (period: string): boolean => period.endsWith('-01') || period.endsWith('-Q1');
