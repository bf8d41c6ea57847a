import Link from 'next/link';
import { DownloadLinks } from '@/app/_figures/download/download-links';
import { StillDrawing } from '@/app/_figures/drawing/still-drawing';
import { Table } from '@/app/_look/table';
import { address } from '@/app/_words/address';
import { monthName } from '@/app/_words/times';
import type { ChartPoint, SignalChart } from '@/lib/assess/signals';
import { chartDrawing } from './chart-drawing';
import styles from './chart-card.module.css';
import { chartName, seriesKey, subjectAddress } from './names';
import { periodWords } from './period-words';

/** One series with its chart and, on demand, its months as a table. */
export function ChartCard({ chart }: { chart: SignalChart }) {
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
        <p>{why}</p>
      ) : (
        <>
          <StillDrawing drawing={chartDrawing(chart)} />
          <details>
            <summary>
              The months as a table<span className="out-of-sight">: {name}</span>
            </summary>
            <Table<ChartPoint>
              caption={`${name}, by month; scores in standard deviations`}
              rows={points}
              rowKey={({ period }) => period}
              columns={[
                { key: 'period', head: 'Month', names: true, cell: ({ period }) => monthName(period) },
                { key: 'value', head: 'Counted', cell: ({ period }) => periodWords(series, period) },
                { key: 'score', head: 'Score', numeric: true, cell: ({ score }) => two(score) },
                { key: 'ewma', head: 'EWMA', numeric: true, cell: ({ ewma }) => two(ewma) },
                { key: 'upper', head: 'CUSUM up', numeric: true, cell: ({ upper }) => two(upper) },
                { key: 'lower', head: 'CUSUM down', numeric: true, cell: ({ lower }) => two(lower) },
                { key: 'alarm', head: 'Beyond', cell: ({ alarm }) => alarm ?? '' },
              ]}
            />
          </details>
          <DownloadLinks of={name} picture={address('/rates/signals/picture', { series: key })} />
        </>
      )}
    </section>
  );
}

const two = (value: number | null): string =>
  value === null ? 'none yet' : value.toFixed(2).replace('-', '−');
