import type { Interval } from '@/app/_figures/interval-drawing';
import { count } from '@/app/_words/numbers';
import type { SdEstimate } from '@/lib/assess';
import type { HandSpan } from '@/lib/assess/answers';

export interface ScatterRow extends Interval {
  why: string | null;
  /** What it rests on. */
  rests: string;
}

/** Reading and setting of a hand in what was asked for, the shop's under each where it is shown. */
export function scatterRows({ repeatability, setting, shop }: HandSpan): ScatterRow[] {
  const row = (name: string, { sd, low, high, why }: SdEstimate, rests: string): ScatterRow => ({
    ...{ name, value: sd, low, high, why, rests },
  });
  const repeats = ({ df }: SdEstimate) => count(Math.round(df ?? 0), 'repeat');
  const settings = ({ df }: SdEstimate) => count(df === null ? 0 : df + 1, 'setting');
  return [
    row('Reading again', repeatability, repeats(repeatability)),
    ...(shop === null
      ? []
      : [row('The shop, reading again', shop.repeatability, repeats(shop.repeatability))]),
    row('Setting, as judged', setting, settings(setting)),
    ...(shop === null ? [] : [row('The shop, setting', shop.setting, settings(shop.setting))]),
  ];
}
