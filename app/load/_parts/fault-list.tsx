import { Panel } from '@/app/_look/panel';
import { Table } from '@/app/_look/table';
import { grouped } from '@/app/_words/numbers';
import type { FaultGroup } from '../_staging/fault-groups';
import { words } from '@/app/_words/words';
import { told } from '@/app/_words/told';

/** Runs of lines that are named; the rest is counted. */
const RUNS_SHOWN = 8;

export function FaultList({ faults, total }: { faults: FaultGroup[]; total: number }) {
  const t = words('load');
  const shown = faults.reduce((sum, { lines }) => sum + Math.max(1, lines), 0);
  return (
    <Panel
      id="faults"
      title={t('faults.title', { n: total })}
      note={total > shown ? t('faults.first', { n: faults.length }) : undefined}
    >
      <Table
        caption={t('faults.caption')}
        rows={faults.map((fault, index) => ({ ...fault, key: String(index) }))}
        rowKey={(fault) => fault.key}
        columns={[
          { key: 'line', head: t('faults.line'), names: true, wraps: true, cell: lineWords },
          {
            key: 'column',
            head: t('faults.column'),
            whole: true,
            cell: (fault) => (fault.column === null ? t('faults.wholeLine') : <code>{fault.column}</code>),
          },
          {
            key: 'value',
            head: t('faults.found'),
            cell: (fault) => (fault.value === null ? '' : <code>{fault.value.slice(0, 60)}</code>),
          },
          { key: 'reason', head: t('faults.reason'), cell: (fault) => told(fault.message) },
        ]}
      />
    </Panel>
  );
}

/** `2`, `2 to 2,001 (2,000 lines)`, `2, 5 to 7, …` */
export function lineWords({ runs, lines }: Pick<FaultGroup, 'runs' | 'lines'>): string {
  const t = words('load');
  if (lines === 0) return t('faults.wholeFile');
  const shown = runs.slice(0, RUNS_SHOWN);
  const named = shown.map(([from, to]) =>
    from === to ? grouped(from) : t('faults.run', { from: grouped(from), to: grouped(to) }),
  );
  const rest = lines - shown.reduce((sum, [from, to]) => sum + to - from + 1, 0);
  if (rest > 0) return t('faults.more', { named: named.join(', '), rest });
  return lines > shown.length ? t('faults.counted', { named: named.join(', '), lines }) : named.join(', ');
}
