import type { ReactNode } from 'react';
import { Table } from '@/app/_look/table';
import { percent } from '@/app/_words/numbers';
import { WordsOnDevice } from '@/app/_words/on-device';
import { monthName } from '@/app/_words/times';
import { words } from '@/app/_words/words';
import { LiveLeaf } from './live-leaf';
import { pointsAsText, type RatePoint, type RateWords } from './point';
import { Still } from './still';
import styles from './rates-over-time.module.css';

interface RatesOverTimeProps {
  words: RateWords;
  points: readonly RatePoint[];
  /** The rate over all months, drawn as a line. */
  overall: number | null;
  /** How the dots are to be read. */
  children: ReactNode;
}

/** A share by month: a dot a month on its 95 % interval, and the same as a table. */
export function RatesOverTime({ words: said, points, overall, children }: RatesOverTimeProps) {
  const t = words('figures');
  const label = sentence(said, points, overall);
  return (
    <figure className={styles.figure}>
      <WordsOnDevice parts={['figures']}>
        <LiveLeaf words={said} points={pointsAsText(points)} shop={overall} label={label}>
          <Still points={points} shop={overall} label={label} />
        </LiveLeaf>
      </WordsOnDevice>
      <figcaption className={styles.caption}>{children}</figcaption>
      <details>
        <summary>{t('overTime.table')}</summary>
        <Table
          caption={t('overTime.caption', { title: said.title })}
          rows={points}
          rowKey={(point) => point.month}
          columns={[
            { key: 'month', head: t('overTime.month'), names: true, cell: (point) => monthName(point.month) },
            {
              key: 'hits',
              head: said.title,
              numeric: true,
              cell: (point) => t(`overTime.hits.${said.unit}`, { hits: point.hits, n: point.of }),
            },
            {
              key: 'rate',
              head: t('overTime.rate'),
              numeric: true,
              cell: (point) => (point.rate === null ? t('none') : percent(point.rate)),
            },
            {
              key: 'interval',
              head: t('interval'),
              numeric: true,
              cell: (point) =>
                point.low === null || point.high === null
                  ? t('none')
                  : t('range', { low: percent(point.low), high: percent(point.high) }),
            },
          ]}
        />
      </details>
    </figure>
  );
}

/** What the figure shows, for those who hear it. */
function sentence({ title, unit }: RateWords, points: readonly RatePoint[], overall: number | null): string {
  const t = words('figures');
  const first = points[0];
  const last = points.at(-1);
  if (first === undefined || last === undefined) return t(`overTime.nothing.${unit}`);
  const one = ({ month, rate, low, high, of }: RatePoint) =>
    rate === null || low === null || high === null
      ? t('overTime.noneIn', { month: monthName(month) })
      : t(`overTime.one.${unit}`, {
          month: monthName(month),
          rate: percent(rate),
          n: of,
          low: percent(low),
          high: percent(high),
        });
  const told = {
    title,
    from: monthName(first.month),
    to: monthName(last.month),
    first: one(first),
    last: one(last),
  };
  return overall === null
    ? t('overTime.told', told)
    : t('overTime.toldOverAll', { ...told, overall: percent(overall) });
}
