import type { ReliabilityBin } from '@/lib/assess/calibration';
import styles from './reliability-figure.module.css';
import { words } from '@/app/_words/words';

const SIZE = 420;
const LEFT = 62;
const RIGHT = 14;
const TOP = 12;
const BOTTOM = 52;
const TICKS = [0, 0.2, 0.4, 0.6, 0.8, 1];

/** What was said against what proved so, tenth by tenth, with intervals; on the line, what was said came true. */
export function ReliabilityFigure({ bins, name }: { bins: readonly ReliabilityBin[]; name: string }) {
  const t = words('calibration');
  const x = (share: number) => LEFT + share * (SIZE - LEFT - RIGHT);
  const y = (share: number) => SIZE - BOTTOM - share * (SIZE - TOP - BOTTOM);
  return (
    <svg
      className={styles.figure}
      viewBox={`0 0 ${SIZE} ${SIZE}`}
      role="img"
      aria-label={t('reliability.picture', { name })}
    >
      {TICKS.map((tick) => (
        <g key={tick}>
          <path className={styles.grid} d={`M${x(tick)} ${y(0)}V${y(1)}M${x(0)} ${y(tick)}H${x(1)}`} />
          <text className={styles.tick} x={x(tick)} y={y(0) + 18} textAnchor="middle">
            {Math.round(tick * 100)}
          </text>
          <text className={styles.tick} x={x(0) - 8} y={y(tick) + 4} textAnchor="end">
            {Math.round(tick * 100)}
          </text>
        </g>
      ))}
      <path className={styles.line} d={`M${x(0)} ${y(0)}L${x(1)} ${y(1)}`} />
      {bins.map(({ low, said, share, interval }) =>
        said === null || share === null ? null : (
          <g key={low}>
            {interval.low !== null && interval.high !== null && (
              <path
                className={styles.interval}
                d={`M${x(said) - 5} ${y(interval.low)}h10m-5 0V${y(interval.high)}m-5 0h10`}
              />
            )}
            <circle className={styles.dot} cx={x(said)} cy={y(share)} r={5} />
          </g>
        ),
      )}
      <text className={styles.name} x={x(0.5)} y={SIZE - 8} textAnchor="middle">
        {t('reliability.saidAxis')}
      </text>
      <text className={styles.name} transform={`translate(16 ${y(0.5)}) rotate(-90)`} textAnchor="middle">
        {t('reliability.provedAxis')}
      </text>
    </svg>
  );
}
