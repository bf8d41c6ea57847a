import Link from 'next/link';
import { Table, type Column } from '@/app/_look/table';
import { address, jobAddress, technicianAddress } from '@/app/_words/address';
import { OutcomeTag, roundName, sectionInSentence } from '@/app/_words/jobs';
import { grouped } from '@/app/_words/numbers';
import { day } from '@/app/_words/times';
import type { Question } from './question';
import styles from './job-table.module.css';
import type { JobRow, JobSort } from '@/lib/access';

interface JobTableProps {
  rows: JobRow[];
  question: Question;
  timeZone: string;
  caption: string;
}

export function JobTable({ rows, question, timeZone, caption }: JobTableProps) {
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
      ...sortable('job', 'Job'),
      names: true,
      cell: (row) => (
        <Link href={jobAddress(row.job)} prefetch={false}>
          {row.job}
        </Link>
      ),
    },
    {
      key: 'outcome',
      ...sortable('outcome', 'Outcome'),
      cell: (row) => <OutcomeTag outcome={row.outcome} />,
    },
    { key: 'sheet', ...sortable('sheet', 'Sheet'), cell: (row) => row.sheet ?? 'none named' },
    {
      key: 'opened',
      ...sortable('opened', 'First read'),
      whole: true,
      cell: (row) => day(row.openedAt, timeZone),
    },
    {
      key: 'stage',
      ...sortable('stage', 'Last round'),
      whole: true,
      cell: (row) => roundName(row.stage, row.attempt),
    },
    {
      key: 'technician',
      ...sortable('technician', 'Technicians'),
      cell: (row) => (
        <span className={styles.codes}>
          {row.technicians.map((code) => (
            <Link key={code} href={technicianAddress(code)} prefetch={false}>
              {code}
            </Link>
          ))}
        </span>
      ),
    },
    { key: 'setups', head: 'Setups', numeric: true, cell: (row) => grouped(row.setups) },
    { key: 'readings', head: 'Readings', numeric: true, cell: (row) => grouped(row.readings) },
    {
      key: 'out',
      head: 'Out after repair',
      cell: (row) =>
        row.out === null || row.out === 0
          ? (row.out ?? 'not measured')
          : `${row.out} (${row.sectionsOut.map((section) => sectionInSentence(section)).join(', ')})`,
    },
  ];

  return <Table caption={caption} columns={columns} rows={rows} rowKey={(row) => row.job} />;
}
