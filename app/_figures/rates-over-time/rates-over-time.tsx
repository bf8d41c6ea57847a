import type { ReactNode } from 'react';
import { Table } from '@/app/_look/table';
import { count, percent } from '@/app/_words/numbers';
import { monthName } from '@/app/_words/times';
import { LiveLeaf } from './live-leaf';
import type { RatePoint, RateWords } from './point';
import { Still } from './still';
import styles from './rates-over-time.module.css';

interface RatesOverTimeProps {
  words: RateWords;
  points: RatePoint[];
  /** The rate over all months, drawn as a line. */
  overall: number | null;
  /** How the dots are to be read. */
  children: ReactNode;
}

/** A share by month: a dot a month on its 95 % interval, and the same as a table. */
export function RatesOverTime({ words, points, overall, children }: RatesOverTimeProps) {
  const label = sentence(words, points, overall);
  return (
    <figure className={styles.figure}>
      <LiveLeaf words={words} points={points} shop={overall} label={label}>
        <Still points={points} shop={overall} label={label} />
      </LiveLeaf>
      <figcaption className={styles.caption}>{children}</figcaption>
      <details>
        <summary>The months as a table</summary>
        <Table
          caption={`${words.title} by month`}
          rows={points}
          rowKey={(point) => point.month}
          columns={[
            { key: 'month', head: 'Month', names: true, cell: (point) => monthName(point.month) },
            {
              key: 'hits',
              head: words.title,
              numeric: true,
              cell: (point) => `${point.hits} of ${count(point.of, words.unit)}`,
            },
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
function sentence({ title, unit }: RateWords, points: readonly RatePoint[], overall: number | null): string {
  const first = points[0];
  const last = points.at(-1);
  if (first === undefined || last === undefined) return `No month has a ${unit} to count.`;
  const one = (point: RatePoint) =>
    point.rate === null || point.low === null || point.high === null
      ? `${monthName(point.month)}: none`
      : `${monthName(point.month)}: ${percent(point.rate)} of ${count(point.of, unit)}, interval ${percent(point.low)} to ${percent(point.high)}`;
  const over = overall === null ? '' : ` Over all months ${percent(overall)}.`;
  return `${title} by month from ${monthName(first.month)} to ${monthName(last.month)}.${over} First, ${one(first)}. Last, ${one(last)}. All months stand in the table below.`;
}
