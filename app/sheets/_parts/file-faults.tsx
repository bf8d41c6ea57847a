import { Panel } from '@/app/_look/panel';
import { Table } from '@/app/_look/table';
import { told } from '@/app/_words/told';
import { words } from '@/app/_words/words';
import type { Fault } from '@/lib/measure';

/** Every fault of a sheet file with its place and mend; nothing of the file was taken. */
export function FileFaults({ faults }: { faults: readonly Fault[] }) {
  const t = words('sheets');
  return (
    <Panel id="faults" title={t('load.faults', { count: faults.length })} note={t('load.faultsNote')}>
      <Table
        caption={t('load.faults', { count: faults.length })}
        captionOutOfSight
        rows={faults.map((fault, index) => ({ ...fault, key: String(index) }))}
        rowKey={({ key }) => key}
        columns={[
          {
            key: 'line',
            head: t('load.line'),
            names: true,
            cell: ({ line }) => line ?? t('load.whole'),
          },
          {
            key: 'column',
            head: t('load.column'),
            whole: true,
            cell: ({ column }) => (column === null ? '' : <code>{column}</code>),
          },
          { key: 'message', head: t('load.message'), wraps: true, cell: ({ message }) => told(message) },
        ]}
      />
    </Panel>
  );
}
