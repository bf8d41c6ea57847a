import { ScrollFrame } from '@/app/_look/scroll-frame';
import { axisOver } from '@/app/_figures/axis';
import { monthName } from '@/app/_words/times';
import type { BrierScore } from '@/lib/assess/calibration';
import styles from './score-figure.module.css';

const WIDTH = 800;
const HEIGHT = 260;
const LEFT = 56;
const RIGHT = 12;
const TOP = 14;
const BOTTOM = 44;

/** The score month by month with its interval, and what it would be if all that was said were right. */
export function ScoreFigure({ months }: { months: readonly (BrierScore & { month: string })[] }) {
  if (months.length < 2) return null;
  const axis = axisOver(
    months.flatMap(({ score, high, ifRight }) => [score ?? 0, high ?? 0, ifRight ?? 0]),
    0,
    0.2,
  );
  const step = (WIDTH - LEFT - RIGHT) / months.length;
  const x = (index: number) => LEFT + (index + 0.5) * step;
  const y = (score: number) => TOP + (1 - axis.place(score)) * (HEIGHT - TOP - BOTTOM);
  const every = Math.ceil(months.length / 12);
  return (
    <figure className={styles.figure}>
      <ScrollFrame name="Picture, scrolls sideways on a small screen">
        <svg
          className={styles.picture}
          viewBox={`0 0 ${WIDTH} ${HEIGHT}`}
          role="img"
          aria-label="Brier score month by month; the same figures stand in the table below."
        >
          {axis.ticks.map((tick) => (
            <g key={tick}>
              <path className={styles.grid} d={`M${LEFT} ${y(tick)}H${WIDTH - RIGHT}`} />
              <text className={styles.tick} x={LEFT - 8} y={y(tick) + 4} textAnchor="end">
                {tick}
              </text>
            </g>
          ))}
          {months.map(({ month, score, low, high, ifRight }, index) => (
            <g key={month}>
              {ifRight !== null && (
                <path className={styles.right} d={`M${x(index) - step * 0.35} ${y(ifRight)}h${step * 0.7}`} />
              )}
              {low !== null && high !== null && (
                <path
                  className={styles.interval}
                  d={`M${x(index) - 5} ${y(low)}h10m-5 0V${y(high)}m-5 0h10`}
                />
              )}
              {score !== null && <circle className={styles.dot} cx={x(index)} cy={y(score)} r={5} />}
              {index % every === 0 && (
                <text className={styles.tick} x={x(index)} y={HEIGHT - 24} textAnchor="middle">
                  {monthName(month).slice(0, 3)}
                </text>
              )}
              {(index === 0 || month.endsWith('-01')) && (
                <text className={styles.tick} x={x(index)} y={HEIGHT - 7} textAnchor="middle">
                  {month.slice(0, 4)}
                </text>
              )}
            </g>
          ))}
        </svg>
      </ScrollFrame>
      <figcaption className={styles.caption}>
        Dots: the score of a month, with its interval. Strokes: what it would be if all that was said were
        right. A dot far above its stroke means that too much was claimed, or that something in the shop
        changed.
      </figcaption>
    </figure>
  );
}
