import { axisOver } from '@/app/_figures/axis';
import { bareMillimetres, briefMillimetres, signed, signedMillimetres, unit } from '@/app/_words/numbers';
import { day } from '@/app/_words/times';
import type { GaugeVerdict } from '@/lib/access';
import styles from './verification-chart.module.css';
import { words } from '@/app/_words/words';

const WIDTH = 800;
const HEIGHT = 300;
const LEFT = 84;
const RIGHT = 20;
const TOP = 34;
const BOTTOM = 48;

interface VerificationChartProps {
  gauge: string;
  verdict: GaugeVerdict;
  /** Half width of what the gauge may be off, mm. */
  allowed: number;
  /** Times at which it was reported dropped, or looked bent. */
  doubts: readonly number[];
  timeZone: string;
}

/** Every measured error with its uncertainty over time, what is allowed behind it, and reports of drops. */
export function VerificationChart({ gauge, verdict, allowed, doubts, timeZone }: VerificationChartProps) {
  const t = words('gauges');
  const { verifications, chart } = verdict;
  const times = [...verifications.map(({ at }) => at), ...doubts];
  const [first, last] = [Math.min(...times), Math.max(...times)];
  const ends = verifications.flatMap(({ error, uncertainty }) => [
    error - 2 * uncertainty,
    error + 2 * uncertainty,
  ]);
  const axis = axisOver(ends, -1.5 * allowed, 1.5 * allowed, 5);
  const x = (at: number) =>
    LEFT + 24 + (last === first ? 0.5 : (at - first) / (last - first)) * (WIDTH - LEFT - RIGHT - 48);
  const y = (error: number) => TOP + (1 - axis.place(error)) * (HEIGHT - TOP - BOTTOM);
  const limits = chart.low === null || chart.high === null ? [] : [chart.low, chart.high];
  return (
    <figure className={styles.figure}>
      <svg
        className={styles.still}
        viewBox={`0 0 ${WIDTH} ${HEIGHT}`}
        role="img"
        aria-label={sentence(gauge, verdict, allowed, doubts, timeZone)}
      >
        <rect
          className={styles.allowed}
          x={LEFT}
          y={y(allowed)}
          width={WIDTH - LEFT - RIGHT}
          height={y(-allowed) - y(allowed)}
        />
        {axis.ticks.map((tick) => (
          <g key={tick}>
            <path
              className={tick === 0 ? styles.zero : styles.grid}
              d={`M${LEFT} ${y(tick)}H${WIDTH - RIGHT}`}
            />
            <text className={styles.tick} x={LEFT - 8} y={y(tick) + 5} textAnchor="end">
              {signed(tick, axis.ticks.every(Number.isInteger) ? 0 : 1)}
            </text>
          </g>
        ))}
        {[-allowed, allowed].map((limit) => (
          <path key={limit} className={styles.limit} d={`M${LEFT} ${y(limit)}H${WIDTH - RIGHT}`} />
        ))}
        {limits.map((limit) => (
          <path key={limit} className={styles.chart} d={`M${LEFT} ${y(limit)}H${WIDTH - RIGHT}`} />
        ))}
        {doubts.map((at) => (
          <g key={at}>
            <path className={styles.event} d={`M${x(at)} ${TOP}V${HEIGHT - BOTTOM}`} />
            <text className={styles.eventName} x={x(at)} y={TOP - 12} textAnchor="middle">
              {t('chart.inDoubt')}
            </text>
          </g>
        ))}
        {verifications.map(({ at, error, uncertainty, call }) => (
          <g key={at}>
            <path
              className={styles.whisker}
              d={`M${x(at) - 6} ${y(error + 2 * uncertainty)}h12M${x(at)} ${y(error + 2 * uncertainty)}V${y(error - 2 * uncertainty)}m-6 0h12`}
            />
            {call === 'fail' ? (
              <rect className={styles.failed} x={x(at) - 7} y={y(error) - 7} width={14} height={14} />
            ) : (
              <circle className={styles.dot} cx={x(at)} cy={y(error)} r={6} />
            )}
          </g>
        ))}
        <text className={styles.tick} x={LEFT} y={HEIGHT - 12}>
          {day(first, timeZone)}
        </text>
        {last !== first && (
          <text className={styles.tick} x={WIDTH - RIGHT} y={HEIGHT - 12} textAnchor="end">
            {day(last, timeZone)}
          </text>
        )}
      </svg>
      <figcaption className={styles.caption}>
        {t('chart.caption', { unit: unit(), allowed: briefMillimetres(allowed) })}{' '}
        {t(limits.length > 0 ? 'chart.limits' : 'chart.noLimits')}
      </figcaption>
    </figure>
  );
}

function sentence(
  gauge: string,
  { verifications }: GaugeVerdict,
  allowed: number,
  doubts: readonly number[],
  timeZone: string,
): string {
  const t = words('gauges');
  const each = verifications.map(({ at, error, uncertainty, call }) =>
    t(`chart.each.${call}`, {
      day: day(at, timeZone),
      error: signedMillimetres(error, 2),
      uncertainty: bareMillimetres(2 * uncertainty, 2),
    }),
  );
  const doubted = doubts.map((at) => day(at, timeZone)).join(', ');
  const all = t('chart.told', {
    n: verifications.length,
    gauge,
    allowed: briefMillimetres(allowed),
    each: each.join('; '),
  });
  return doubts.length === 0 ? all : `${all} ${t('chart.doubts', { days: doubted })}`;
}
