import { drawnOnce } from '@/app/_look/still';
import { Table } from '@/app/_look/table';
import { dimensionName } from '@/app/_words/dimensions';
import { bareMillimetres, unit } from '@/app/_words/numbers';
import { dayAndTime } from '@/app/_words/times';
import type { ReadingRevision } from '@/lib/access';
import { words } from '@/app/_words/words';

interface RevisionTableProps {
  history: readonly ReadingRevision[];
  timeZone: string;
}

/** Every revision of every reading, the first value first. */
export const RevisionTable = drawnOnce(function RevisionTable({ history, timeZone }: RevisionTableProps) {
  const t = words('readings');
  return (
    <Table
      caption={t('table.caption')}
      rows={history}
      rowKey={(one) =>
        [one.setup, one.quantity, one.point, one.side, one.nominal, one.repeat, one.revision].join(' ')
      }
      columns={[
        { key: 'setup', head: t('table.setup'), names: true, cell: ({ setup }) => setup },
        { key: 'dimension', head: t('table.dimension'), cell: (one) => dimensionName(one) },
        { key: 'repeat', head: t('table.reading'), numeric: true, cell: ({ repeat }) => repeat },
        {
          key: 'value',
          head: t('table.value', { unit: unit() }),
          numeric: true,
          cell: ({ value }) => bareMillimetres(value),
        },
        { key: 'state', head: t('table.state'), cell: (one) => stateOf(one, history) },
        {
          key: 'by',
          head: t('table.from'),
          cell: ({ by, file, line }) =>
            by ?? (file === null ? '' : t('table.line', { file, line: line ?? '?' })),
        },
        {
          key: 'at',
          head: t('table.when'),
          whole: true,
          cell: ({ enteredAt, takenAt }) => dayAndTime(enteredAt ?? takenAt, timeZone),
        },
        { key: 'why', head: t('table.why'), cell: ({ reason }) => reason ?? '' },
      ]}
    />
  );
});

function stateOf(one: ReadingRevision, history: readonly ReadingRevision[]): string {
  const later = history.some((other) => sameReading(one, other) && other.revision > one.revision);
  const t = words('readings');
  if (later) return t('state.replaced');
  return t(one.excluded ? 'state.excluded' : 'state.counts');
}

export const sameReading = (a: ReadingRevision, b: ReadingRevision): boolean =>
  a.setup === b.setup &&
  a.quantity === b.quantity &&
  a.point === b.point &&
  a.side === b.side &&
  a.nominal === b.nominal &&
  a.repeat === b.repeat;
