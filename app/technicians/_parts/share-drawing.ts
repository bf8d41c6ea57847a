import { axisOver, type Axis } from '@/app/_figures/axis';
import type { Drawing } from '@/app/_figures/drawing/drawing';
import { intervalDrawing } from '@/app/_figures/interval-drawing';
import { percentTaken } from '@/app/_words/numbers';
import { whyTold } from '@/app/_words/why';
import { words } from '@/app/_words/words';
import type { HandAnswer } from '@/lib/assess/answers';

/** What a hand takes of the tolerance, part by part. */
export function shareRows({ shares }: HandAnswer) {
  const t = words('hand');
  const row = (name: string, share: HandAnswer['shares']['both']) => ({
    name,
    ...share,
    why: whyTold(share.why),
  });
  return [
    row(t('rows.reading'), shares.repeatability),
    row(t('rows.setting'), shares.setting),
    row(t('rows.both'), shares.both),
  ];
}

export const shareAxis = (rows: ReturnType<typeof shareRows>): Axis =>
  axisOver(
    rows.flatMap(({ share, high }) => [share ?? 0, Math.min(high ?? 0, 2 * (share ?? 0))]),
    0,
    1,
    4,
  );

/** The shares as a chart; the dashed stroke is the whole of the tolerance. */
export function shareDrawing(hand: HandAnswer): Drawing {
  const rows = shareRows(hand);
  return intervalDrawing({
    what: words('hand')('tolerance.caption'),
    axis: shareAxis(rows),
    intervals: rows.map(({ share, ...row }) => ({ ...row, value: share, reference: 1 })),
    print: percentTaken,
    tick: (tick) => `${Math.round(tick * 100)} %`,
  });
}
