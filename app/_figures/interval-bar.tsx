import { words } from '@/app/_words/words';
import { tidy, tidyPath } from './drawing/drawing';
import type { Axis } from './axis';
import styles from './interval-bar.module.css';

const WIDTH = 220;
const HEIGHT = 26;
const MARGIN = 18;

interface IntervalBarProps {
  axis: Axis;
  value: number | null;
  low: number | null;
  high: number | null;
  /** What the shop as a whole is like, drawn behind as a band. */
  band?: { low: number; high: number } | null;
  /** A line to compare with: no bias, the shop's rate. */
  line?: number | null;
}

/**
 * An estimate as a dot on its interval. Always stands beside the same figures in words, so it is hidden from
 * those who hear the page.
 */
export function IntervalBar({ axis, value, low, high, band = null, line = null }: IntervalBarProps) {
  const x = (at: number) => tidy(MARGIN + axis.place(at) * (WIDTH - 2 * MARGIN));
  const middle = HEIGHT / 2;
  return (
    <svg
      className={styles.bar}
      width={WIDTH}
      height={HEIGHT}
      viewBox={`0 0 ${WIDTH} ${HEIGHT}`}
      aria-hidden="true"
      focusable="false"
    >
      {band !== null && (
        <rect
          className={styles.band}
          x={x(band.low)}
          y={1}
          width={tidy(Math.max(2, x(band.high) - x(band.low)))}
          height={HEIGHT - 2}
        />
      )}
      {axis.ticks.map((tick) => (
        <path key={tick} className={styles.grid} d={`M${x(tick)} 0v${HEIGHT}`} />
      ))}
      {line !== null && <path className={styles.line} d={`M${x(line)} 0v${HEIGHT}`} />}
      {low !== null && high !== null && (
        <path
          className={styles.interval}
          d={tidyPath(
            `M${x(low)} ${middle}H${x(high)}${end(x(low), low < axis.low, -1)}${end(x(high), high > axis.high, 1)}`,
          )}
        />
      )}
      {value !== null && <circle className={styles.dot} cx={x(value)} cy={middle} r={5} />}
    </svg>
  );
}

/** A stroke across where the interval ends, an arrow head where it goes on beyond the axis. */
function end(x: number, beyond: boolean, direction: 1 | -1): string {
  const middle = HEIGHT / 2;
  return beyond
    ? `M${x - 6 * direction} ${middle - 6}L${x} ${middle}L${x - 6 * direction} ${middle + 6}`
    : `M${x} ${middle - 6}v12`;
}

/** The head of a column of interval bars: its scale, and a name for those who hear the page. */
export function IntervalScale({ axis, text }: { axis: Axis; text: (tick: number) => string }) {
  return (
    <>
      <span className="out-of-sight">{words('figures')('drawn')}</span>
      <svg
        className={styles.bar}
        width={WIDTH}
        height={18}
        viewBox={`0 0 ${WIDTH} 18`}
        aria-hidden="true"
        focusable="false"
      >
        {axis.ticks.map((tick) => (
          <text
            key={tick}
            className={styles.tick}
            x={tidy(MARGIN + axis.place(tick) * (WIDTH - 2 * MARGIN))}
            y={14}
            textAnchor="middle"
          >
            {text(tick)}
          </text>
        ))}
      </svg>
    </>
  );
}
