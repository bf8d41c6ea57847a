import { Panel } from '@/app/_look/panel';
import { Table } from '@/app/_look/table';
import { count, grouped } from '@/app/_words/numbers';
import type { FaultGroup } from '../_staging/fault-groups';

/** Runs of lines that are named; the rest is counted. */
const RUNS_SHOWN = 8;

export function FaultList({ faults, total }: { faults: FaultGroup[]; total: number }) {
  const shown = faults.reduce((sum, { lines }) => sum + Math.max(1, lines), 0);
  return (
    <Panel
      id="faults"
      title={count(total, 'fault')}
      note={
        total > shown
          ? `The first ${grouped(faults.length)} different ones stand here; mend them and the rest will show.`
          : undefined
      }
    >
      <Table
        caption="Each fault with every line it stands on; the row of column names is line 1"
        rows={faults.map((fault, index) => ({ ...fault, key: String(index) }))}
        rowKey={(fault) => fault.key}
        columns={[
          { key: 'line', head: 'Line', names: true, wraps: true, cell: lineWords },
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

/** `2`, `2 to 2,001 (2,000 lines)`, `2, 5 to 7, …` */
export function lineWords({ runs, lines }: Pick<FaultGroup, 'runs' | 'lines'>): string {
  if (lines === 0) return 'whole file';
  const shown = runs.slice(0, RUNS_SHOWN);
  const named = shown.map(([from, to]) =>
    from === to ? grouped(from) : `${grouped(from)} to ${grouped(to)}`,
  );
  const rest = lines - shown.reduce((sum, [from, to]) => sum + to - from + 1, 0);
  if (rest > 0) return `${named.join(', ')} and ${grouped(rest)} more lines`;
  return lines > shown.length ? `${named.join(', ')} (${grouped(lines)} lines)` : named.join(', ');
}
