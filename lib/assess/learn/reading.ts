import type { Within } from './survey';

/** Degrees of freedom that the shop's own repeatability lends to a technician with few repeats. */
const LENT_DF = 6;

/** Reading sd by technician, drawn towards the shop's where repeats are few; 0.5 mm where there are none. */
export function readingSds(within: ReadonlyMap<string, Within>): {
  shop: number;
  of: (technician: string) => number;
} {
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
