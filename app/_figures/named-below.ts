/** What a name and a year take below an axis, in units of a drawing 800 wide, as a phone shows them, with a gap. */
const A_NAME = 58;
const A_YEAR = 64;

/** Every how many months or quarters may have a name: always the same ones of a year. */
const EVERY = { months: [1, 2, 3, 6, 12, 24, 60], quarters: [1, 2, 4, 8, 20] };

interface Named {
  /** Where it stands among the periods. */
  at: number;
  /** Written below it where it is the first named one of a year. */
  year: string | null;
}

/**
 * The months or quarters that are named below an axis, and the years below those, but for names and years that would lie
 * over one another. A January is among them wherever it has room, so that a year stands below its own beginning. A year
 * that begins there goes before one that is under way at the left end.
 * @param periods one after another, each beginning with its year: `2025-03`, `2025-Q1`
 * @param step units of the drawing from one to the next
 */
export function namedBelow(periods: readonly string[], step: number): Named[] {
  const isQuarters = periods[0]?.includes('Q') === true;
  const all = isQuarters ? EVERY.quarters : EVERY.months;
  const every = all.find((one) => one * step >= A_NAME) ?? all.at(-1) ?? 1;
  const named = periods.map(sinceYear0).flatMap((since, at) => (since % every === 0 ? [at] : []));
  const years = yearsOf(
    named.map((at) => periods[at] ?? ''),
    every * step,
  );
  return named.map((at, index) => ({ at, year: years[index] ?? null }));
}

/** So many months, or quarters, after the beginning of the year 0. */
function sinceYear0(period: string): number {
  const year = Number(period.slice(0, 4));
  const part = period.slice(5);
  return part.startsWith('Q') ? year * 4 + Number(part.slice(1)) - 1 : year * 12 + Number(part) - 1;
}

/** By named period, the year to be written below it or null. */
function yearsOf(named: readonly string[], step: number): (string | null)[] {
  const years = named.map((period) => period.slice(0, 4));
  const next = years.findIndex((year, at) => at > 0 && year !== years[at - 1]);
  const isCrowded = next > 0 && next * step < A_YEAR && !beginsYear(named[0] ?? '');
  let last = isCrowded ? next : 0;
  return years.map((year, at) => {
    if (at < last || (at !== last && (year === years[at - 1] || (at - last) * step < A_YEAR))) return null;
    last = at;
    return year;
  });
}

const beginsYear = (period: string): boolean => period.endsWith('-01') || period.endsWith('-Q1');
