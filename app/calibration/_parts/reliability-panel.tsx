import { drawnOnce } from '@/app/_look/still';
import { Panel } from '@/app/_look/panel';
import { Table } from '@/app/_look/table';
import { decimal, grouped, percent } from '@/app/_words/numbers';
import { calibrationError, type ReliabilityBin } from '@/lib/assess/calibration';
import type { Cause } from '@/lib/measure';
import { ReliabilityFigure } from './reliability-figure';
import styles from './reliability-panel.module.css';
import { words } from '@/app/_words/words';

interface ReliabilityPanelProps {
  cause: Cause;
  title: string;
  bins: readonly ReliabilityBin[];
}

/** In so few heights of a tenth no share says anything; the interval shows it, the word says it. */
const FEW = 10;

/** One cause: of the heights of which it was said with 80 %, how many proved so. */
export const ReliabilityPanel = drawnOnce(function ReliabilityPanel({
  cause,
  title,
  bins,
}: ReliabilityPanelProps) {
  const error = calibrationError(bins);
  const t = words('calibration');
  return (
    <Panel id={cause} title={title} note={t('reliability.note')}>
      <div className={styles.beside}>
        <ReliabilityFigure bins={bins} name={title} />
        <div className={styles.table}>
          <Table
            caption={t('reliability.caption')}
            rows={bins}
            rowKey={({ low }) => String(low)}
            columns={[
              {
                key: 'said',
                head: t('reliability.said'),
                names: true,
                cell: ({ low, high }) => t('range', { low: Math.round(low * 100), high: percent(high) }),
              },
              { key: 'heights', head: t('heights'), numeric: true, cell: (bin) => grouped(bin.heights) },
              {
                key: 'proved',
                head: t('reliability.proved'),
                numeric: true,
                cell: (bin) => grouped(bin.proved),
              },
              {
                key: 'share',
                head: t('reliability.share'),
                numeric: true,
                cell: ({ share }) => (share === null ? t('none') : percent(share)),
              },
              {
                key: 'interval',
                head: t('interval'),
                numeric: true,
                cell: ({ interval: { low, high } }) =>
                  low === null || high === null ? '' : t('range', { low: percent(low), high: percent(high) }),
              },
              {
                key: 'few',
                head: t('reliability.enough'),
                cell: (bin) =>
                  bin.heights === 0 ? '' : t(bin.heights < FEW ? 'reliability.tooFew' : 'reliability.yes'),
              },
              { key: 'open', head: t('open.name'), numeric: true, cell: ({ open }) => grouped(open) },
            ]}
          />
        </div>
      </div>
      {error !== null && (
        <p>
          {t.rich('reliability.error', {
            n: bins.reduce((sum, bin) => sum + bin.heights, 0),
            points: decimal(100 * error, 1),
            b: (chunks) => <b>{chunks}</b>,
          })}
        </p>
      )}
    </Panel>
  );
});
