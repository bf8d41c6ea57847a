import { Panel } from '@/app/_look/panel';
import { Table } from '@/app/_look/table';
import { count, grouped } from '@/app/_words/numbers';
import type { CheckedFile } from '../_staging/staged-file';

export function FaultList({ faults, total }: { faults: CheckedFile['faults']; total: number }) {
  return (
    <Panel
      id="faults"
      title={count(total, 'fault')}
      note={
        total > faults.length
          ? `The first ${grouped(faults.length)} stand here; mend them and the rest will show.`
          : undefined
      }
    >
      <Table
        caption="Faults by line; the row of column names is line 1"
        rows={faults.map((fault, index) => ({ ...fault, key: String(index) }))}
        rowKey={(fault) => fault.key}
        columns={[
          {
            key: 'line',
            head: 'Line',
            names: true,
            numeric: true,
            cell: (fault) => (fault.line === null ? 'whole file' : grouped(fault.line)),
          },
          {
            key: 'column',
            head: 'Column',
            whole: true,
            cell: (fault) => (fault.column === null ? 'whole line' : <code>{fault.column}</code>),
          },
          {
            key: 'value',
            head: 'Found',
            cell: (fault) => (fault.value === null ? '' : <code>{fault.value.slice(0, 60)}</code>),
          },
          { key: 'reason', head: 'What is wrong, and how to mend it', cell: (fault) => fault.message },
        ]}
      />
    </Panel>
  );
}
