import { drawnOnce } from '@/app/_look/still';
import Link from 'next/link';
import { Table, type Column } from '@/app/_look/table';
import { HandLink, type Hands } from '@/app/_shop/hand-link';
import { address, jobAddress } from '@/app/_words/address';
import { OutcomeTag, roundName, sectionInSentence } from '@/app/_words/jobs';
import { grouped } from '@/app/_words/numbers';
import { day } from '@/app/_words/times';
import type { Question } from './question';
import styles from './job-table.module.css';
import type { JobRow, JobSort } from '@/lib/access';
import { words } from '@/app/_words/words';

interface JobTableProps {
  rows: readonly JobRow[];
  question: Question;
  timeZone: string;
  caption: string;
  hands: Hands;
}

export const JobTable = drawnOnce(function JobTable({
  rows,
  question,
  timeZone,
  caption,
  hands,
}: JobTableProps) {
  const t = words('jobList');
  const sorted = question.sort ?? 'opened';
  const direction = question.direction ?? (question.sort === undefined ? 'desc' : 'asc');

  const sortable = (sort: JobSort, head: string) => {
    const active = sort === sorted;
    const next = active && direction === 'asc' ? 'desc' : 'asc';
    return {
      head: (
        <Link
          className={styles.sort}
          href={address('/jobs', { ...question, sort, direction: next, page: undefined })}
          prefetch={false}
        >
          {head}
          <span aria-hidden="true">{active ? (direction === 'asc' ? ' ↑' : ' ↓') : ''}</span>
        </Link>
      ),
      sorted: active ? (direction === 'asc' ? ('ascending' as const) : ('descending' as const)) : undefined,
    };
  };

  const columns: Column<JobRow>[] = [
    {
      key: 'job',
      ...sortable('job', t('job')),
      names: true,
      cell: (row) => (
        <Link href={jobAddress(row.job)} prefetch={false}>
          {row.job}
        </Link>
      ),
    },
    {
      key: 'outcome',
      ...sortable('outcome', t('outcome')),
      cell: (row) => <OutcomeTag outcome={row.outcome} />,
    },
    { key: 'sheet', ...sortable('sheet', t('sheet')), cell: (row) => row.sheet ?? t('noneNamed') },
    {
      key: 'opened',
      ...sortable('opened', t('firstRead')),
      whole: true,
      cell: (row) => day(row.openedAt, timeZone),
    },
    {
      key: 'stage',
      ...sortable('stage', t('lastRound')),
      whole: true,
      cell: (row) => roundName(row.stage, row.attempt),
    },
    {
      key: 'technician',
      ...sortable('technician', t('technicians')),
      cell: (row) => (
        <span className={styles.codes}>
          {row.technicians.map((code) => (
            <HandLink key={code} code={code} hands={hands} />
          ))}
        </span>
      ),
    },
    { key: 'setups', head: t('setups'), numeric: true, cell: (row) => grouped(row.setups) },
    { key: 'readings', head: t('readings'), numeric: true, cell: (row) => grouped(row.readings) },
    {
      key: 'out',
      head: t('out'),
      cell: (row) =>
        row.out === null || row.out === 0
          ? (row.out ?? t('notMeasured'))
          : `${row.out} (${row.sectionsOut.map((section) => sectionInSentence(section)).join(', ')})`,
    },
  ];

  return <Table caption={caption} columns={columns} rows={rows} rowKey={(row) => row.job} />;
});
