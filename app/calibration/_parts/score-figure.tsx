import { ScrollFrame } from '@/app/_look/scroll-frame';
import { axisOver } from '@/app/_figures/axis';
import { namedBelow } from '@/app/_figures/named-below';
import { monthName } from '@/app/_words/times';
import type { BrierScore } from '@/lib/assess/calibration';
import styles from './score-figure.module.css';
import { words } from '@/app/_words/words';
import { brief } from '@/app/_words/numbers';

const WIDTH = 800;
const HEIGHT = 260;
const LEFT = 56;
const RIGHT = 12;
const TOP = 14;
const BOTTOM = 44;

/** The score month by month with its interval, and what it would be if all that was said were right. */
export function ScoreFigure({ months }: { months: readonly (BrierScore & { month: string })[] }) {
  if (months.length < 2) return null;
  const t = words('calibration');
  const axis = axisOver(
    months.flatMap(({ score, high, ifRight }) => [score ?? 0, high ?? 0, ifRight ?? 0]),
    0,
    0.2,
  );
  const step = (WIDTH - LEFT - RIGHT) / months.length;
  const x = (index: number) => LEFT + (index + 0.5) * step;
  const y = (score: number) => TOP + (1 - axis.place(score)) * (HEIGHT - TOP - BOTTOM);
  const named = namedBelow(
    months.map(({ month }) => month),
    step,
  );
  return (
    <figure className={styles.figure}>
      <ScrollFrame name={t('score.scrolls')}>
        <svg
          className={styles.picture}
          viewBox={`0 0 ${WIDTH} ${HEIGHT}`}
          role="img"
          aria-label={t('score.picture')}
        >
          {axis.ticks.map((tick) => (
            <g key={tick}>
              <path className={styles.grid} d={`M${LEFT} ${y(tick)}H${WIDTH - RIGHT}`} />
              <text className={styles.tick} x={LEFT - 8} y={y(tick) + 4} textAnchor="end">
                {brief(tick)}
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
            </g>
          ))}
          {named.map(({ at, year }) => (
            <g key={at}>
              <text className={styles.tick} x={x(at)} y={HEIGHT - 24} textAnchor="middle">
                {monthName(months[at]?.month ?? '').slice(0, 3)}
              </text>
              {year !== null && (
                <text className={styles.tick} x={x(at)} y={HEIGHT - 7} textAnchor="middle">
                  {year}
                </text>
              )}
            </g>
          ))}
        </svg>
      </ScrollFrame>
      <figcaption className={styles.caption}>{t('score.reading')}</figcaption>
    </figure>
  );
}
