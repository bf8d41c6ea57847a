import { bareMillimetres, signed } from '@/app/_words/numbers';
import type { HandQuarter, QuarterFigures } from '@/lib/assess/my-hand';

/** A figure with its 95 % interval; null where it cannot be had. */
export interface Estimated {
  value: number | null;
  low: number | null;
  high: number | null;
  why: string | null;
}

/** One quarter of one figure, the shop's beside it. */
export interface QuarterPoint {
  /** `2025 Q2`. */
  quarter: string;
  own: Estimated;
  /** Null where the shop's band is withheld. */
  shop: Estimated | null;
}

/** What is followed over time. */
export interface Followed {
  key: 'repeatability' | 'setting' | 'mean';
  title: string;
  /** How a value is printed, mm. */
  print: (value: number) => string;
  of: (figures: QuarterFigures) => Estimated;
}

const plain = (value: number) => bareMillimetres(value, 2);

export const FOLLOWED: readonly Followed[] = [
  {
    key: 'repeatability',
    title: 'Scatter of reading again',
    print: plain,
    of: ({ repeatability: { sd, ...rest } }) => ({ value: sd, ...rest }),
  },
  {
    key: 'setting',
    title: 'Scatter of setting, likely mis-sets set aside',
    print: plain,
    of: ({ setting: { sd, ...rest } }) => ({ value: sd, ...rest }),
  },
  {
    key: 'mean',
    title: 'Mean setting error',
    print: (value) => signed(value, 2),
    of: ({ mean: { mean, ...rest } }) => ({ value: mean, ...rest }),
  },
];

/** The points of one figure, in the order of time. */
export const pointsOf = (quarters: readonly HandQuarter[], { of }: Followed): QuarterPoint[] =>
  quarters.map(({ quarter, own, shop }) => ({
    quarter,
    own: of(own),
    shop: shop === null ? null : of(shop),
  }));

/** `0.51 mm (0.47 to 0.55)`, or why there is none. */
export function told({ value, low, high, why }: Estimated, print: Followed['print']): string {
  if (value === null) return why ?? 'none';
  return low === null || high === null
    ? `${print(value)} mm, no interval`
    : `${print(value)} mm (${print(low)} to ${print(high)})`;
}
