import Link from 'next/link';
import { Table, type Column } from '@/app/_look/table';
import { grouped } from '@/app/_words/numbers';
import { dayAndTime } from '@/app/_words/times';
import { words } from '@/app/_words/words';
import type { BayRoundRow } from '@/lib/access';

interface RoundTableProps {
  rows: readonly BayRoundRow[];
  timeZone: string;
  finished: boolean;
}

/** Rounds that are measured at the moment, or were finished lately. */
export function RoundTable({ rows, timeZone, finished }: RoundTableProps) {
  const t = words('bay');
  const time = (at: number | null) => (at === null ? t('open.nothing') : dayAndTime(at, timeZone));
  const columns: Column<BayRoundRow>[] = [
    {
      key: 'round',
      head: t('open.round'),
      names: true,
      cell: ({ id, job, stage, attempt }) => (
        <Link href={`/bay/${id}`} prefetch={false}>
          {t('round.name', { job, stage, attempt })}
        </Link>
      ),
    },
    { key: 'sheet', head: t('open.sheet'), cell: ({ sheet }) => sheet, wraps: true },
    {
      key: 'begun',
      head: t('open.begun'),
      cell: ({ by, startedAt }) => t('open.byAt', { by, time: time(startedAt) }),
    },
    {
      key: 'last',
      head: t(finished ? 'done.finished' : 'open.last'),
      cell: ({ finishedAt, lastEntryAt }) => time(finished ? finishedAt : lastEntryAt),
    },
    { key: 'readings', head: t('open.readings'), numeric: true, cell: ({ readings }) => grouped(readings) },
  ];
  return (
    <Table
      caption={t(finished ? 'done.caption' : 'open.caption')}
      captionOutOfSight
      columns={columns}
      rows={rows}
      rowKey={({ id }) => String(id)}
      empty={t('open.none')}
    />
  );
}
