import type { Job } from '@/lib/measure/types';

/** Within-setup sums of squares and degrees of freedom of one technician. */
export interface Within {
  ss: number;
  df: number;
}

/** Repeats with the gauge untouched, by technician. */
export function withinSetups(jobs: readonly Job[]): Map<string, Within> {
  const found = new Map<string, Within>();
  for (const job of jobs) {
    for (const round of job.rounds) {
      for (const setup of round.setups) {
        const entry = found.get(setup.technician) ?? { ss: 0, df: 0 };
        for (const seen of setup.observations) {
          entry.ss += seen.ss;
          entry.df += seen.n - 1;
        }
        found.set(setup.technician, entry);
      }
    }
  }
  return found;
}

/** Degrees of freedom that the shop's own repeatability lends to a technician with few repeats. */
const LENT_DF = 6;

/** Reading sd by technician, drawn towards the shop's where repeats are few; 0.5 mm where there are none. */
export function readingSds(jobs: readonly Job[]): { shop: number; of: (technician: string) => number } {
  const within = withinSetups(jobs);
  let ss = LENT_DF * 0.25;
  let df = LENT_DF;
  for (const entry of within.values()) {
    ss += entry.ss;
    df += entry.df;
  }
  const shop = ss / df;
  return {
    shop: Math.sqrt(shop),
    of: (technician) => {
      const own = within.get(technician) ?? { ss: 0, df: 0 };
      return Math.sqrt((own.ss + LENT_DF * shop) / (own.df + LENT_DF));
    },
  };
}
