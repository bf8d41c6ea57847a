import { Table } from '@/app/_look/table';
import { setupAnchor } from '@/app/_words/address';
import { sideName } from '@/app/_words/dimensions';
import { bareMillimetres, millimetres, signed, unit } from '@/app/_words/numbers';
import { words } from '@/app/_words/words';
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
  const t = words('jobs');
  return (
    <Table
      caption={t('tables.heights', { unit: unit(), clearance: millimetres(clearance, 0) })}
      rows={rows}
      rowKey={(row) => row.key}
      columns={[
        {
          key: 'point',
          head: t('tables.point'),
          names: true,
          cell: (row) => (
            <span className={classNames(!row.last && styles.earlier)}>
              {row.point} {sideName(row.side)}
              {row.zero && <small className={styles.aside}> {t('tables.zero')}</small>}
              {!row.last && <small className={styles.aside}> {t('tables.earlier')}</small>}
            </span>
          ),
        },
        {
          key: 'deviation',
          head: t('tables.deviation'),
          numeric: true,
          cell: (row) => (
            <DeviationCell deviation={row.deviation} within={isWithin(row.deviation, row.tolerance)} />
          ),
        },
        {
          key: 'cause',
          head: t('tables.cause'),
          cell: (row) => (
            <CauseCell
              told={row.verdict}
              call={row.call}
              evidence={{ address: row.evidence, of: `${row.point} ${sideName(row.side)}` }}
            />
          ),
        },
        { key: 'sheet', head: t('tables.sheet'), numeric: true, cell: (row) => bareMillimetres(row.nominal) },
        { key: 'read', head: t('tables.read'), numeric: true, cell: (row) => bareMillimetres(row.reading) },
        {
          key: 'tolerance',
          head: t('tables.tolerance'),
          numeric: true,
          cell: (row) => `±${bareMillimetres(row.tolerance)}`,
        },
        {
          key: 'uncertainty',
          head: t('tables.uncertainty'),
          numeric: true,
          cell: (row) => expanded(uncertainties.get(row.key)),
        },
        {
          key: 'setup',
          head: t('tables.setup'),
          whole: true,
          cell: (row) => (
            <a href={`#${setupAnchor(`${name} ${row.setup}`)}`}>
              <span className={styles.setup}>
                {row.setup}
                <span className="out-of-sight">, </span>
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
  return standard === undefined
    ? words('jobs')('cells.notKnown')
    : `±${signed(2 * standard).replace('+', '')}`;
}
