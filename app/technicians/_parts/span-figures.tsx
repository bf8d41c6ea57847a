import { drawnOnce } from '@/app/_look/still';
import { DownloadLinks } from '@/app/_figures/download/download-links';
import { EstimateTable } from '@/app/_figures/estimate-table';
import { told } from '@/app/_words/told';
import { whyTold } from '@/app/_words/why';
import { words } from '@/app/_words/words';
import type { HandSpan } from '@/lib/assess/answers';
import { scatterRows } from './span-rows';

/** A hand in what was asked for, the shop in the same under each figure. */
export const SpanFigures = drawnOnce(function SpanFigures({
  span,
  picture,
}: {
  span: HandSpan;
  picture: string;
}) {
  const t = words('hand');
  const { mean, rounds, shopWhy } = span;
  return (
    <>
      <EstimateTable
        caption={t('span.scatter')}
        head={t('what')}
        kind="sd"
        estimates={scatterRows(span).map((row) => ({ key: row.name, ...row }))}
      />
      <EstimateTable
        caption={t('span.mean')}
        head={t('what')}
        kind="bias"
        estimates={[
          {
            key: 'mean',
            name: t('rows.mean'),
            ...mean,
            value: mean.mean,
            why: whyTold(mean.why),
            rests: t('rests.rounds', { n: rounds }),
          },
        ]}
      />
      {shopWhy !== null && <p>{told(shopWhy)}</p>}
      <DownloadLinks of={t('span.download')} picture={picture} />
    </>
  );
});
