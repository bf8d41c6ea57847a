import { axisOver } from '@/app/_figures/axis';
import { told, type Followed, type QuarterPoint } from './quarter-points';
import styles from './quarter-figure.module.css';

const WIDTH = 800;
const HEIGHT = 270;
const LEFT = 78;
const RIGHT = 12;
const TOP = 16;
const BOTTOM = 60;

/** An interval may run this many times beyond the farthest figure before the scale stops following it. */
const BEYOND = 1.6;

interface QuarterFigureProps {
  followed: Followed;
  points: readonly QuarterPoint[];
}

/** One figure by quarter: a dot on its interval, the shop's interval as a band behind. */
export function QuarterFigure({ followed, points }: QuarterFigureProps) {
  const axis = axisFor(points);
  const step = (WIDTH - LEFT - RIGHT) / Math.max(1, points.length);
  const x = (index: number) => LEFT + (index + 0.5) * step;
  const y = (value: number) => TOP + (1 - axis.place(value)) * (HEIGHT - TOP - BOTTOM);
  const band = Math.min(step, 72) / 2;
  const every = Math.ceil(points.length / 10);
  return (
    <svg
      className={styles.figure}
      viewBox={`0 0 ${WIDTH} ${HEIGHT}`}
      role="img"
      aria-label={sentence(followed, points)}
    >
      {axis.ticks.map((tick) => (
        <g key={tick}>
          <path
            className={tick === 0 ? styles.zero : styles.grid}
            d={`M${LEFT} ${y(tick)}H${WIDTH - RIGHT}`}
          />
          <text className={styles.tick} x={LEFT - 8} y={y(tick) + 5} textAnchor="end">
            {String(tick).replace('-', '\u2212')}
          </text>
        </g>
      ))}
      {points.map(({ quarter, own, shop }, index) => (
        <g key={quarter}>
          {shop !== null && shop.low !== null && shop.high !== null && (
            <path
              className={styles.band}
              d={`M${x(index) - band} ${y(shop.high)}h${2 * band}V${Math.max(y(shop.low), y(shop.high) + 3)}h${-2 * band}z`}
            />
          )}
          {own.low !== null && own.high !== null && (
            <path
              className={styles.interval}
              d={`M${x(index)} ${y(own.low)}V${y(own.high)}m-6 0h12M${x(index) - 6} ${y(own.low)}h12`}
            />
          )}
          {own.value !== null && <circle className={styles.dot} cx={x(index)} cy={y(own.value)} r={6} />}
          {index % every === 0 && (
            <text className={styles.tick} x={x(index)} y={HEIGHT - 34} textAnchor="middle">
              {quarter.slice(5)}
            </text>
          )}
          {(index === 0 || quarter.endsWith('Q1')) && (
            <text className={styles.tick} x={x(index)} y={HEIGHT - 7} textAnchor="middle">
              {quarter.slice(0, 4)}
            </text>
          )}
        </g>
      ))}
    </svg>
  );
}

function axisFor(points: readonly QuarterPoint[]) {
  const of = (part: 'value' | 'low' | 'high') =>
    points.flatMap(({ own, shop }) => [own[part], shop?.[part] ?? null]).filter((one) => one !== null);
  const reach = BEYOND * Math.max(0.2, ...of('value').map(Math.abs));
  const ends = [...of('low'), ...of('high')].map((end) => Math.max(-reach, Math.min(reach, end)));
  return axisOver([...of('value'), ...ends], 0, 0.25, 4);
}

/** What the figure shows, for those who hear it. */
function sentence({ title, print }: Followed, points: readonly QuarterPoint[]): string {
  const first = points[0];
  const last = points.at(-1);
  if (first === undefined || last === undefined) return `${title}: no quarter to show.`;
  const one = ({ quarter, own, shop }: QuarterPoint) =>
    `${quarter}: ${told(own, print)}; the shop ${shop === null ? 'not shown' : told(shop, print)}`;
  const ends = first === last ? one(first) : `First, ${one(first)}. Last, ${one(last)}`;
  return `${title} by quarter from ${first.quarter} to ${last.quarter}. ${ends}. All quarters stand in the table below.`;
}
