import { bareMillimetres, signed, unit } from '@/app/_words/numbers';
import { told } from '@/app/_words/told';
import { words } from '@/app/_words/words';
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
  /** What a file of figures calls it. */
  figure: string;
  /** How a value in mm is printed. */
  print: (value: number) => string;
  of: (figures: QuarterFigures) => Estimated;
}

const plain = (value: number) => bareMillimetres(value, 2);

export const FOLLOWED: readonly Followed[] = [
  {
    key: 'repeatability',
    figure: 'scatter of reading again',
    print: plain,
    of: ({ repeatability: { sd, ...rest } }) => ({ value: sd, ...rest }),
  },
  {
    key: 'setting',
    figure: 'scatter of setting, likely mis-sets set aside',
    print: plain,
    of: ({ setting: { sd, ...rest } }) => ({ value: sd, ...rest }),
  },
  {
    key: 'mean',
    figure: 'mean setting error',
    print: (value) => signed(value, 2),
    of: ({ mean: { mean, ...rest } }) => ({ value: mean, ...rest }),
  },
];

export const followedTitle = ({ key }: Followed): string => words('hand')(`quarters.followed.${key}`);

/** The points of one figure, in the order of time. */
export const pointsOf = (quarters: readonly HandQuarter[], { of }: Followed): QuarterPoint[] =>
  quarters.map(({ quarter, own, shop }) => ({
    quarter,
    own: of(own),
    shop: shop === null ? null : of(shop),
  }));

/** `0.51 mm (0.47 to 0.55)`, or why there is none. */
export function estimatedWords({ value, low, high, why }: Estimated, print: Followed['print']): string {
  const t = words('hand');
  if (value === null) return why === null ? t('none') : told(why);
  const measured = `${print(value)} ${unit()}`;
  return low === null || high === null
    ? t('quarters.noInterval', { value: measured })
    : t('quarters.withInterval', { value: measured, low: print(low), high: print(high) });
}
