import { Panel } from '@/app/_look/panel';
import { Table } from '@/app/_look/table';
import { count, grouped, percent } from '@/app/_words/numbers';
import { calibrationError, reliability, type Foretold } from '@/lib/assess/calibration';
import type { Cause } from '@/lib/measure';
import { ReliabilityFigure } from './reliability-figure';
import styles from './reliability-panel.module.css';

interface ReliabilityPanelProps {
  cause: Cause;
  title: string;
  heights: readonly Foretold[];
}

/** In so few heights of a tenth no share says anything; the interval shows it, the word says it. */
const FEW = 10;

/** One cause: of the heights of which it was said with 80 %, how many proved so. */
export function ReliabilityPanel({ cause, title, heights }: ReliabilityPanelProps) {
  const bins = reliability(heights, cause);
  const error = calibrationError(bins);
  return (
    <Panel
      id={cause}
      title={title}
      note="On the dashed line, what was said came true. Above it, too little was said; below it, too much."
    >
      <div className={styles.beside}>
        <ReliabilityFigure bins={bins} name={title} />
        <div className={styles.table}>
          <Table
            caption="What was said before the check, and what the check proved"
            rows={bins}
            rowKey={({ low }) => String(low)}
            columns={[
              {
                key: 'said',
                head: 'Said',
                names: true,
                cell: ({ low, high }) => `${Math.round(low * 100)} to ${percent(high)}`,
              },
              { key: 'heights', head: 'Heights', numeric: true, cell: (bin) => grouped(bin.heights) },
              { key: 'proved', head: 'Proved so', numeric: true, cell: (bin) => grouped(bin.proved) },
              {
                key: 'share',
                head: 'Share',
                numeric: true,
                cell: ({ share }) => (share === null ? 'none' : percent(share)),
              },
              {
                key: 'interval',
                head: '95 % interval',
                numeric: true,
                cell: ({ interval: { low, high } }) =>
                  low === null || high === null ? '' : `${percent(low)} to ${percent(high)}`,
              },
              {
                key: 'few',
                head: 'Enough?',
                cell: (bin) => (bin.heights === 0 ? '' : bin.heights < FEW ? 'too few' : 'yes'),
              },
              { key: 'open', head: 'Left open', numeric: true, cell: ({ open }) => grouped(open) },
            ]}
          />
        </div>
      </div>
      {error !== null && (
        <p>
          Mean distance of what was said from what proved so, over{' '}
          {count(
            bins.reduce((sum, bin) => sum + bin.heights, 0),
            'height',
          )}
          : <b>{(100 * error).toFixed(1)}&nbsp;percentage points</b>. Chance alone leaves some of it, and more
          where heights are few.
        </p>
      )}
    </Panel>
  );
}
