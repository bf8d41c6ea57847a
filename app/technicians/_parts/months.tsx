import type { RatePoint } from '@/app/_figures/rates-over-time/point';
import { RatesOverTime } from '@/app/_figures/rates-over-time/rates-over-time';
import { Panel } from '@/app/_look/panel';
import { drawnOnce } from '@/app/_look/still';
import { words } from '@/app/_words/words';

/** How often this hand sets wrong, month by month. */
export const Months = drawnOnce(function Months({ months }: { months: readonly RatePoint[] }) {
  const t = words('hand');
  return (
    <Panel id="months" title={t('months.title')} note={t('months.note')}>
      <RatesOverTime
        words={{ title: t('months.rate'), unit: 'setup' }}
        points={months}
        overall={overallOf(months)}
      >
        {t('months.howToRead')}
      </RatesOverTime>
    </Panel>
  );
});

function overallOf(points: readonly RatePoint[]): number | null {
  const of = points.reduce((sum, point) => sum + point.of, 0);
  return of === 0 ? null : points.reduce((sum, point) => sum + point.hits, 0) / of;
}
