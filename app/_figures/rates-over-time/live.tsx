'use client';

import {
  CartesianGrid,
  ComposedChart,
  ErrorBar,
  Line,
  ReferenceLine,
  ResponsiveContainer,
  Tooltip,
  XAxis,
  YAxis,
} from 'recharts';
import { useTranslations } from 'use-intl/react';
import { percent } from '@/app/_words/numbers';
import { useSpeech } from '@/app/_words/speech/device';
import { monthName } from '@/app/_words/times';
import { dotFor, linesOf, topOf, type RatePoint, type RateWords } from './point';
import styles from './rates-over-time.module.css';

/** Months; of more, one's name alone does not say which it is. */
const A_YEAR = 12;

interface LiveProps {
  words: RateWords;
  points: readonly RatePoint[];
  shop: number | null;
  label: string;
}

/** The figure that answers to pointer and arrow keys: the numbers of one month at a time. */
export default function Live({ words, points, shop, label }: LiveProps) {
  const speech = useSpeech();
  const data = points.map((point) => ({
    ...point,
    whisker:
      point.rate === null || point.low === null || point.high === null
        ? [0, 0]
        : [point.rate - point.low, point.high - point.rate],
  }));
  const radius = dotFor(points.length);
  const monthBelow = (month: string) => {
    const name = monthName(month, speech).slice(0, 3);
    return points.length > A_YEAR ? `${name} ${month.slice(0, 4)}` : name;
  };
  return (
    <ResponsiveContainer width="100%" aspect={8 / 3}>
      <ComposedChart
        data={data}
        title={label}
        accessibilityLayer
        margin={{ top: 14, right: 12, bottom: 4, left: 0 }}
      >
        <CartesianGrid vertical={false} stroke="var(--grid)" />
        <XAxis
          dataKey="month"
          tickFormatter={monthBelow}
          padding={{ left: 28, right: 28 }}
          tick={{ fill: 'var(--ink-soft)' }}
          stroke="var(--line-strong)"
        />
        <YAxis
          domain={[0, topOf(points)]}
          ticks={linesOf(topOf(points))}
          tickFormatter={percent}
          tick={{ fill: 'var(--ink-soft)' }}
          stroke="var(--line-strong)"
          width={64}
        />
        {shop !== null && (
          <ReferenceLine y={shop} stroke="var(--band-line)" strokeDasharray="6 5" strokeWidth={2} />
        )}
        <Tooltip
          content={<Told unit={words.unit} />}
          cursor={{ stroke: 'var(--line-strong)' }}
          isAnimationActive={false}
        />
        <Line
          dataKey="rate"
          stroke="none"
          dot={{ r: radius, fill: 'var(--surface)', stroke: 'var(--accent)', strokeWidth: 3 }}
          activeDot={{ r: 8, fill: 'var(--accent)' }}
          isAnimationActive={false}
        >
          <ErrorBar
            dataKey="whisker"
            width={radius}
            strokeWidth={2.5}
            stroke="var(--accent)"
            isAnimationActive={false}
          />
        </Line>
      </ComposedChart>
    </ResponsiveContainer>
  );
}

interface ToldProps {
  unit: RateWords['unit'];
  active?: boolean;
  payload?: readonly { payload?: RatePoint }[];
}

function Told({ unit, active, payload }: ToldProps) {
  const t = useTranslations('figures');
  const speech = useSpeech();
  const point = payload?.[0]?.payload;
  if (active !== true || point === undefined) return null;
  return (
    <div className={styles.told}>
      <p>{monthName(point.month, speech)}</p>
      {point.rate === null || point.low === null || point.high === null ? (
        <p>{t(`overTime.notCounted.${unit}`)}</p>
      ) : (
        <>
          <p>
            {t('overTime.withInterval', {
              rate: percent(point.rate),
              low: percent(point.low),
              high: percent(point.high),
            })}
          </p>
          <p>{t(`overTime.hits.${unit}`, { hits: point.hits, n: point.of })}</p>
        </>
      )}
    </div>
  );
}
