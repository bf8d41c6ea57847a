import { tidy, tidyPath } from '@/app/_figures/drawing/drawing';
import { namedBelow } from '@/app/_figures/named-below';
import { monthName } from '@/app/_words/times';
import { dotFor, linesOf, topOf, type RatePoint } from './point';
import styles from './rates-over-time.module.css';

const WIDTH = 800;
const HEIGHT = 316;
const LEFT = 88;
const RIGHT = 12;
const TOP = 14;
const BOTTOM = 60;

interface StillProps {
  points: readonly RatePoint[];
  shop: number | null;
  label: string;
}

/** The same figure drawn on the server: for the first sight, for print, and where no script runs. */
export function Still({ points, shop, label }: StillProps) {
  const step = (WIDTH - LEFT - RIGHT) / Math.max(1, points.length);
  const x = (index: number) => tidy(LEFT + (index + 0.5) * step);
  const top = topOf(points);
  const y = (share: number) => tidy(TOP + (1 - share / top) * (HEIGHT - TOP - BOTTOM));
  const radius = tidy(dotFor(points.length));
  const named = namedBelow(
    points.map(({ month }) => month),
    step,
  );
  return (
    <svg className={styles.still} viewBox={`0 0 ${WIDTH} ${HEIGHT}`} role="img" aria-label={label}>
      {linesOf(top).map((share) => (
        <g key={share}>
          <path className={styles.grid} d={`M${LEFT} ${y(share)}H${WIDTH - RIGHT}`} />
          <text className={styles.tick} x={LEFT - 8} y={tidy(y(share) + 5)} textAnchor="end">
            {Math.round(share * 100)} %
          </text>
        </g>
      ))}
      {shop !== null && <path className={styles.shop} d={`M${LEFT} ${y(shop)}H${WIDTH - RIGHT}`} />}
      {points.map((point, index) => (
        <g key={point.month}>
          {point.low !== null && point.high !== null && (
            <path
              className={styles.whisker}
              d={tidyPath(
                `M${x(index)} ${y(point.low)}V${y(point.high)}m${-radius} 0h${2 * radius}M${x(index) - radius} ${y(point.low)}h${2 * radius}`,
              )}
            />
          )}
          {point.rate !== null && (
            <circle className={styles.dot} cx={x(index)} cy={y(point.rate)} r={radius} />
          )}
        </g>
      ))}
      {named.map(({ at, year }) => (
        <g key={at}>
          <text className={styles.tick} x={x(at)} y={HEIGHT - 34} textAnchor="middle">
            {monthName(points[at]?.month ?? '').slice(0, 3)}
          </text>
          {year !== null && (
            <text className={styles.tick} x={x(at)} y={HEIGHT - 7} textAnchor="middle">
              {year}
            </text>
          )}
        </g>
      ))}
    </svg>
  );
}
