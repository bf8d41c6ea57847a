import Link from 'next/link';
import { drawnOnce } from '@/app/_look/still';
import { Table } from '@/app/_look/table';
import { Tag } from '@/app/_look/tag';
import { jobAddress } from '@/app/_words/address';
import { sectionInSentence } from '@/app/_words/jobs';
import { monthName } from '@/app/_words/times';
import { words } from '@/app/_words/words';
import type { RateJob } from '@/lib/assess/rates';
import { SECTIONS } from '@/lib/measure';

interface JobsTableProps {
  jobs: readonly RateJob[];
  /** Told are sections, not whole jobs. */
  ofSections: boolean;
}

/** The jobs that a rate counts, each with how it counts. */
export const JobsTable = drawnOnce(function JobsTable({ jobs, ofSections }: JobsTableProps) {
  const t = words('rates');
  return (
    <Table
      caption={t('jobs.caption')}
      rows={jobs}
      rowKey={({ job }) => job}
      empty={t('jobs.empty')}
      columns={[
        {
          key: 'job',
          head: t('jobs.job'),
          names: true,
          cell: ({ job }) => (
            <Link href={jobAddress(job)} prefetch={false}>
              {job}
            </Link>
          ),
        },
        {
          key: 'right',
          head: t(ofSections ? 'jobs.section' : 'jobs.outcome'),
          cell: ({ right: was }) => (
            <Tag name={was ? 'within' : 'out'}>{t(was ? 'jobs.right' : 'jobs.wrong')}</Tag>
          ),
        },
        { key: 'technician', head: t('jobs.technician'), cell: ({ technician }) => technician },
        { key: 'sheet', head: t('jobs.sheet'), cell: ({ sheet }) => sheet ?? t('jobs.noSheet') },
        { key: 'month', head: t('jobs.month'), whole: true, cell: ({ month }) => monthName(month) },
        { key: 'gauges', head: t('jobs.gauges'), cell: ({ gauges }) => gauges.join(', ') },
        {
          key: 'out',
          head: t('jobs.outBefore'),
          numeric: true,
          cell: ({ start }) => (start.measured ? start.out : t('jobs.notMeasured')),
        },
        {
          key: 'sections',
          head: t('jobs.outAfter'),
          cell: ({ sections }) =>
            SECTIONS.filter((section) => sections.some((one) => one.section === section && !one.right))
              .map(sectionInSentence)
              .join(', ') || t('none'),
        },
      ]}
    />
  );
});
