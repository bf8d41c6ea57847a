import { Table } from '@/app/_look/table';
import { setupAnchor } from '@/app/_words/address';
import { sideName } from '@/app/_words/dimensions';
import { bareMillimetres, signed } from '@/app/_words/numbers';
import { classNames } from '@/app/_look/class-names';
import { isWithin } from '@/lib/measure';
import { CauseCell } from './cause-cell';
import { DeviationCell } from './deviation-cell';
import type { HeightRow } from './heights';
import styles from './dimension-tables.module.css';

interface HeightTableProps {
  rows: HeightRow[];
  clearance: number;
  /** Standard uncertainty by row key, mm. */
  uncertainties: ReadonlyMap<string, number>;
  name: string;
}

export function HeightTable({ rows, clearance, uncertainties, name }: HeightTableProps) {
  return (
    <Table
      caption={`Heights, millimetres; readings include ${bareMillimetres(clearance, 0)} mm of clearance`}
      rows={rows}
      rowKey={(row) => row.key}
      columns={[
        {
          key: 'point',
          head: 'Point',
          names: true,
          cell: (row) => (
            <span className={classNames(!row.last && styles.earlier)}>
              {row.point} {row.side === 'L' ? 'left' : 'right'}
              {row.zero && <small className={styles.aside}> zero station</small>}
              {!row.last && <small className={styles.aside}> earlier setup</small>}
            </span>
          ),
        },
        {
          key: 'deviation',
          head: 'Deviation',
          numeric: true,
          cell: (row) => (
            <DeviationCell deviation={row.deviation} within={isWithin(row.deviation, row.tolerance)} />
          ),
        },
        {
          key: 'cause',
          head: 'Gauge or body',
          cell: (row) => (
            <CauseCell
              told={row.verdict}
              call={row.call}
              evidence={{ address: row.evidence, of: `${row.point} ${sideName(row.side)}` }}
            />
          ),
        },
        { key: 'sheet', head: 'Sheet', numeric: true, cell: (row) => bareMillimetres(row.nominal) },
        { key: 'read', head: 'Read', numeric: true, cell: (row) => bareMillimetres(row.reading) },
        {
          key: 'tolerance',
          head: 'Tolerance',
          numeric: true,
          cell: (row) => `±${bareMillimetres(row.tolerance)}`,
        },
        {
          key: 'uncertainty',
          head: 'Uncertainty',
          numeric: true,
          cell: (row) => expanded(uncertainties.get(row.key)),
        },
        {
          key: 'setup',
          head: 'Setup',
          whole: true,
          cell: (row) => (
            <a href={`#${setupAnchor(`${name} ${row.setup}`)}`}>
              <span className={styles.setup}>
                {row.setup},{' '}
                <small>
                  {row.gauge}, {row.technician}
                </small>
              </span>
            </a>
          ),
        },
      ]}
    />
  );
}

/** Twice the standard uncertainty, as is said beside a deviation. */
export function expanded(standard: number | undefined): string {
  return standard === undefined ? 'not known' : `±${signed(2 * standard).replace('+', '')}`;
}
