import { normalQuantile, normalUpper } from '@/lib/stats/distributions';
import { benjaminiHochberg } from '@/lib/stats/multiplicity';

/** One of several like figures: its estimate with a 95 % interval. */
export interface Estimated {
  key: string;
  value: number | null;
  low: number | null;
  high: number | null;
}

/** A figure that differs from the mean of the others by more than chance explains. */
export interface Beyond {
  key: string;
  side: 'above' | 'below';
  value: number;
  /** Mean of the others: geometric for scatter, arithmetic for bias. */
  others: number;
}

/** How often, among the differences that are named, chance alone is accepted to have made one. */
const FALSE_CALLS = 0.05;

/**
 * Which figures differ from the mean of the others beyond chance, in the order given; no pair of them is compared.
 *
 * Scatter is compared by logarithms (a ratio), a bias as it is. Standard errors are those of the intervals; z-tests,
 * two-sided, the p-values adjusted over all figures by Benjamini and Hochberg (1995) at 5 %. The figures are taken
 * as independent. A figure without an interval, or a scatter of 0, takes no part.
 */
export function beyondChance(figures: readonly Estimated[], kind: 'scatter' | 'bias'): Beyond[] {
  const known = figures.flatMap((one) => normalForm(one, kind));
  if (known.length < 2) return [];
  const sum = known.reduce((total, { at }) => total + at, 0);
  const variance = known.reduce((total, { se }) => total + se ** 2, 0);
  const rest = known.length - 1;
  const compared = known.map(({ key, at, se }) => {
    const others = (sum - at) / rest;
    const spread = Math.sqrt(se ** 2 + (variance - se ** 2) / rest ** 2);
    return { key, at, others, p: 2 * normalUpper(Math.abs(at - others) / spread) };
  });
  const adjusted = benjaminiHochberg(compared.map(({ p }) => Math.min(1, p)));
  const back = (at: number) => (kind === 'scatter' ? Math.exp(at) : at);
  return compared.flatMap(({ key, at, others }, index) =>
    (adjusted[index] ?? 1) > FALSE_CALLS
      ? []
      : [
          {
            key,
            side: at > others ? ('above' as const) : ('below' as const),
            value: back(at),
            others: back(others),
          },
        ],
  );
}

function normalForm({ key, value, low, high }: Estimated, kind: 'scatter' | 'bias') {
  if (value === null || low === null || high === null || high <= low) return [];
  if (kind === 'scatter' && low <= 0) return [];
  const on = (number: number) => (kind === 'scatter' ? Math.log(number) : number);
  return [{ key, at: on(value), se: (on(high) - on(low)) / (2 * normalQuantile(0.975)) }];
}
