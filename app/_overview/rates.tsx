import Link from 'next/link';
import { RateGroups } from '@/app/_figures/rate-groups';
import { monthPoints } from '@/app/_figures/rates-over-time/months';
import { RatesOverTime } from '@/app/_figures/rates-over-time/rates-over-time';
import { Panel } from '@/app/_look/panel';
import { drawnOnce } from '@/app/_look/still';
import { rateOf } from '@/app/_shop/rate-of';
import { address, technicianAddress } from '@/app/_words/address';
import { sectionName } from '@/app/_words/jobs';
import { words } from '@/app/_words/words';
import { inOrder } from '@/app/_words/in-order';
import type { OutcomeCount } from '@/lib/access';
import { SECTIONS } from '@/lib/measure';

interface MonthsProps {
  counts: readonly OutcomeCount[];
  /** The rate over all months. */
  overall: number | null;
}

/** Right first time, month by month. */
export const Months = drawnOnce(function Months({ counts, overall }: MonthsProps) {
  const t = words('overview');
  return (
    <Panel id="months" title={t('months.title')} note={t('months.note')}>
      <RatesOverTime
        words={{ title: t('right'), unit: 'job' }}
        points={monthPoints(counts.map(({ key, jobs: of, right }) => ({ month: key, of, hits: right })))}
        overall={overall}
      >
        {t('months.reading')}
      </RatesOverTime>
    </Panel>
  );
});

interface GroupsProps {
  /** The shop's. */
  rate: ReturnType<typeof rateOf>;
  technicians: readonly OutcomeCount[];
  sections: readonly OutcomeCount[];
  sheets: readonly OutcomeCount[];
}

/** Right first time by technician, by section and by sheet. */
export const Groups = drawnOnce(function Groups({ rate, technicians, sections, sheets }: GroupsProps) {
  const t = words('overview');
  return (
    <Panel id="groups" title={t('groups.title')} note={t('groups.note')}>
      <RateGroups
        caption={t('groups.technicians')}
        head={t('groups.technician')}
        shop={rate}
        groups={byKey(technicians).map(({ key, jobs: of, right }) => ({
          key,
          name: <Link href={technicianAddress(key)}>{key}</Link>,
          rate: rateOf(right, of),
        }))}
      />
      <RateGroups
        caption={t('groups.sections')}
        head={t('groups.section')}
        shop={null}
        groups={SECTIONS.flatMap((section) =>
          sections
            .filter(({ key }) => key === section)
            .map(({ jobs: of, right }) => ({
              key: section,
              name: sectionName(section),
              rate: rateOf(right, of),
            })),
        )}
      />
      <RateGroups
        caption={t('groups.sheets')}
        head={t('groups.sheet')}
        shop={rate}
        groups={byKey(sheets).map(({ key, jobs: of, right }) => ({
          key,
          name:
            key === '' ? t('groups.noneNamed') : <Link href={address('/jobs', { sheet: key })}>{key}</Link>,
          rate: rateOf(right, of),
        }))}
      />
    </Panel>
  );
});

function byKey<Counted extends { key: string }>(counts: readonly Counted[]): Counted[] {
  return [...counts].sort((a, b) => inOrder(a.key, b.key));
}
