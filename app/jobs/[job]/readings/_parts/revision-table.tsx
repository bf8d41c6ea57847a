import { Table } from '@/app/_look/table';
import { dimensionName } from '@/app/_words/dimensions';
import { bareMillimetres } from '@/app/_words/numbers';
import { dayAndTime } from '@/app/_words/times';
import type { ReadingRevision } from '@/lib/access';

/** Every revision of every reading, the first value first. */
export function RevisionTable({ history, timeZone }: { history: ReadingRevision[]; timeZone: string }) {
  return (
    <Table
      caption="By setup and dimension"
      rows={history}
      rowKey={(one) =>
        [one.setup, one.quantity, one.point, one.side, one.nominal, one.repeat, one.revision].join(' ')
      }
      columns={[
        { key: 'setup', head: 'Setup', names: true, cell: ({ setup }) => setup },
        { key: 'dimension', head: 'Dimension', cell: (one) => dimensionName(one) },
        { key: 'repeat', head: 'Reading', numeric: true, cell: ({ repeat }) => repeat },
        { key: 'value', head: 'As read, mm', numeric: true, cell: ({ value }) => bareMillimetres(value) },
        { key: 'state', head: 'State', cell: (one) => stateOf(one, history) },
        {
          key: 'by',
          head: 'From',
          cell: ({ by, file, line }) => by ?? (file === null ? '' : `${file}, line ${line ?? '?'}`),
        },
        {
          key: 'at',
          head: 'When',
          whole: true,
          cell: ({ enteredAt, takenAt }) => dayAndTime(enteredAt ?? takenAt, timeZone),
        },
        { key: 'why', head: 'Why', cell: ({ reason }) => reason ?? '' },
      ]}
    />
  );
}

function stateOf(one: ReadingRevision, history: readonly ReadingRevision[]): string {
  const later = history.some((other) => sameReading(one, other) && other.revision > one.revision);
  if (later) return 'replaced';
  return one.excluded ? 'excluded' : 'counts';
}

export const sameReading = (a: ReadingRevision, b: ReadingRevision): boolean =>
  a.setup === b.setup &&
  a.quantity === b.quantity &&
  a.point === b.point &&
  a.side === b.side &&
  a.nominal === b.nominal &&
  a.repeat === b.repeat;
