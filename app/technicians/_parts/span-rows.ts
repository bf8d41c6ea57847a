import type { Interval } from '@/app/_figures/interval-drawing';
import { whyTold } from '@/app/_words/why';
import { words } from '@/app/_words/words';
import type { SdEstimate } from '@/lib/assess';
import type { HandSpan } from '@/lib/assess/answers';

export interface ScatterRow extends Interval {
  why: string | null;
  /** What it rests on. */
  rests: string;
}

/** Reading and setting of a hand in what was asked for, the shop's under each where it is shown. */
export function scatterRows({ repeatability, setting, shop }: HandSpan): ScatterRow[] {
  const t = words('hand');
  const row = (name: string, { sd, low, high, why }: SdEstimate, rests: string): ScatterRow => ({
    name,
    value: sd,
    low,
    high,
    why: whyTold(why),
    rests,
  });
  const repeats = ({ df }: SdEstimate) => t('rests.repeats', { n: Math.round(df ?? 0) });
  const settings = ({ df }: SdEstimate) => t('rests.settings', { n: df === null ? 0 : df + 1 });
  return [
    row(t('rows.reading'), repeatability, repeats(repeatability)),
    ...(shop === null ? [] : [row(t('rows.shopReading'), shop.repeatability, repeats(shop.repeatability))]),
    row(t('rows.asJudged'), setting, settings(setting)),
    ...(shop === null ? [] : [row(t('rows.shopAsJudged'), shop.setting, settings(shop.setting))]),
  ];
}
