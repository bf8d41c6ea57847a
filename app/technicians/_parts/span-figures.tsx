import { DownloadLinks } from '@/app/_figures/download/download-links';
import { EstimateTable } from '@/app/_figures/estimate-table';
import { count } from '@/app/_words/numbers';
import type { HandSpan } from '@/lib/assess/answers';
import { scatterRows } from './span-rows';

/** A hand in what was asked for, the shop in the same under each figure. */
export function SpanFigures({ span, picture }: { span: HandSpan; picture: string }) {
  const { mean, rounds, shopWhy } = span;
  return (
    <>
      <EstimateTable
        caption="Scatter in what was asked for, standard deviations"
        head="What"
        kind="sd"
        estimates={scatterRows(span).map((row) => ({ key: row.name, ...row }))}
      />
      <EstimateTable
        caption="Mean setting error in what was asked for; the heights of a round count once together"
        head="What"
        kind="bias"
        estimates={[
          {
            ...{ key: 'mean', name: 'Mean setting error', ...mean, value: mean.mean },
            rests: count(rounds, 'round'),
          },
        ]}
      />
      {shopWhy !== null && <p>{shopWhy}</p>}
      <DownloadLinks of="scatter in what was asked for" picture={picture} />
    </>
  );
}
