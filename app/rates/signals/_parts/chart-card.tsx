import { drawnOnce } from '@/app/_look/still';
import Link from 'next/link';
import { DownloadLinks } from '@/app/_figures/download/download-links';
import { StillDrawing } from '@/app/_figures/drawing/still-drawing';
import { Table } from '@/app/_look/table';
import { address } from '@/app/_words/address';
import { decimal } from '@/app/_words/numbers';
import { monthName } from '@/app/_words/times';
import { told } from '@/app/_words/told';
import { words } from '@/app/_words/words';
import type { ChartPoint, SignalChart } from '@/lib/assess/signals';
import { chartDrawing } from './chart-drawing';
import styles from './chart-card.module.css';
import { chartName, seriesKey, subjectAddress } from './names';
import { periodWords } from './period-words';

/** Months that the table under a chart tells; the file has all of them. */
const TOLD = 24;

/** One series with its chart and, on demand, its months as a table. */
export const ChartCard = drawnOnce(function ChartCard({ chart }: { chart: SignalChart }) {
  const t = words('rates');
  const { series, points, why } = chart;
  const key = seriesKey(series.what, series.subject);
  const name = chartName(chart);
  return (
    <section id={key} className={styles.card} aria-labelledby={`${key}-name`}>
      <h3 id={`${key}-name`}>
        <Link href={subjectAddress(series.what, series.subject)} prefetch={false}>
          {name}
        </Link>
      </h3>
      {why !== null ? (
        <p>{told(why)}</p>
      ) : (
        <>
          <StillDrawing drawing={chartDrawing(chart)} />
          <details>
            <summary>
              {t('signals.table')}
              <span className="out-of-sight">: {name}</span>
            </summary>
            <Table<ChartPoint>
              caption={
                points.length > TOLD
                  ? t('signals.captionNewest', { name, n: TOLD, of: points.length })
                  : t('signals.caption', { name })
              }
              rows={points.slice(-TOLD)}
              rowKey={({ period }) => period}
              columns={[
                {
                  key: 'period',
                  head: t('signals.month'),
                  names: true,
                  cell: ({ period }) => monthName(period),
                },
                {
                  key: 'value',
                  head: t('signals.counted'),
                  cell: ({ period }) => periodWords(series, period),
                },
                { key: 'score', head: t('signals.score'), numeric: true, cell: ({ score }) => two(score) },
                { key: 'ewma', head: t('signals.ewma'), numeric: true, cell: ({ ewma }) => two(ewma) },
                { key: 'upper', head: t('signals.upper'), numeric: true, cell: ({ upper }) => two(upper) },
                { key: 'lower', head: t('signals.lower'), numeric: true, cell: ({ lower }) => two(lower) },
                {
                  key: 'alarm',
                  head: t('signals.alarm'),
                  cell: ({ alarm }) => (alarm === null ? '' : t(`signals.alarms.${alarm}`)),
                },
              ]}
            />
          </details>
          <DownloadLinks of={name} picture={address('/rates/signals/picture', { series: key })} />
        </>
      )}
    </section>
  );
});

const two = (value: number | null): string =>
  value === null ? words('rates')('signals.noneYet') : decimal(value, 2);
