import { Table } from '@/app/_look/table';
import { count, percent } from '@/app/_words/numbers';
import { monthName } from '@/app/_words/times';
import { LiveLeaf } from './live-leaf';
import type { RatePoint } from './point';
import { Still } from './still';
import styles from './rates-over-time.module.css';

interface RatesOverTimeProps {
  points: RatePoint[];
  /** The rate over all months, drawn as a line. */
  shop: number | null;
}

/** Right first time by month: a dot a month on its 95 % interval, and the same as a table. */
export function RatesOverTime({ points, shop }: RatesOverTimeProps) {
  const label = sentence(points, shop);
  return (
    <figure className={styles.figure}>
      <LiveLeaf points={points} shop={shop} label={label}>
        <Still points={points} shop={shop} label={label} />
      </LiveLeaf>
      <figcaption className={styles.caption}>
        Each dot is a month’s rate; the stroke through it is its 95 % interval (Wilson). The dashed line is
        the rate over all months. Months whose strokes overlap may not differ at all.
      </figcaption>
      <details>
        <summary>The months as a table</summary>
        <Table
          caption="Right first time by month"
          rows={points}
          rowKey={(point) => point.month}
          columns={[
            { key: 'month', head: 'Month', names: true, cell: (point) => monthName(point.month) },
            { key: 'jobs', head: 'Jobs', numeric: true, cell: (point) => point.jobs },
            { key: 'right', head: 'Right first time', numeric: true, cell: (point) => point.right },
            {
              key: 'rate',
              head: 'Rate',
              numeric: true,
              cell: (point) => (point.rate === null ? 'none' : percent(point.rate)),
            },
            {
              key: 'interval',
              head: '95 % interval',
              numeric: true,
              cell: (point) =>
                point.low === null || point.high === null
                  ? 'none'
                  : `${percent(point.low)} to ${percent(point.high)}`,
            },
          ]}
        />
      </details>
    </figure>
  );
}

/** What the figure shows, for those who hear it. */
function sentence(points: readonly RatePoint[], shop: number | null): string {
  const first = points[0];
  const last = points.at(-1);
  if (first === undefined || last === undefined) return 'No month has a job that came to an answer.';
  const one = (point: RatePoint) =>
    point.rate === null || point.low === null || point.high === null
      ? `${monthName(point.month)}: none`
      : `${monthName(point.month)}: ${percent(point.rate)} of ${count(point.jobs, 'job')}, interval ${percent(point.low)} to ${percent(point.high)}`;
  const over = shop === null ? '' : ` Over all months ${percent(shop)}.`;
  return `Right first time by month from ${monthName(first.month)} to ${monthName(last.month)}.${over} First, ${one(first)}. Last, ${one(last)}. All months stand in the table below.`;
}
