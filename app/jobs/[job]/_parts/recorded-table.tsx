import { Table, type Column } from '@/app/_look/table';
import { setupAnchor } from '@/app/_words/address';
import { sectionName } from '@/app/_words/jobs';
import { words } from '@/app/_words/words';
import { bareMillimetres } from '@/app/_words/numbers';
import { setupDimensionKey, type RecordedDimension } from '@/lib/assess';
import { DeviationCell } from './deviation-cell';
import { expanded } from './height-table';

interface RecordedTableProps {
  caption: string;
  rows: RecordedDimension[];
  uncertainties: ReadonlyMap<string, number>;
  name: string;
  /** A column of its own kind, beside the deviation. */
  extra?: Column<RecordedDimension>;
}

/** Lengths, or readings of the centerline, as they count for the record. */
export function RecordedTable({ caption, rows, uncertainties, name, extra }: RecordedTableProps) {
  const t = words('jobs');
  const columns: Column<RecordedDimension>[] = [
    {
      key: 'point',
      head: rows[0]?.quantity === 'length' ? t('tables.length') : t('tables.point'),
      names: true,
      cell: (row) => row.point.replace('-', '–'),
    },
    {
      key: 'deviation',
      head: t('tables.deviation'),
      numeric: true,
      cell: (row) => <DeviationCell deviation={row.deviation} within={row.within} />,
    },
    ...(extra === undefined ? [] : [extra]),
    {
      key: 'section',
      head: t('tables.section'),
      cell: (row) => (row.section === null ? t('tables.noSection') : sectionName(row.section)),
    },
    { key: 'sheet', head: t('tables.sheet'), numeric: true, cell: (row) => bareMillimetres(row.nominal) },
    {
      key: 'read',
      head: t('tables.read'),
      numeric: true,
      cell: (row) => bareMillimetres(row.nominal + row.deviation),
    },
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
      cell: (row) => expanded(uncertainties.get(setupDimensionKey(row.setup, row))),
    },
    {
      key: 'setup',
      head: t('tables.setup'),
      whole: true,
      cell: (row) => (
        <a href={`#${setupAnchor(`${name} ${row.setup}`)}`}>
          {t(row.setups > 1 ? 'tables.lastOf' : 'tables.hung', {
            setup: row.setup,
            gauge: row.gauge,
            technician: row.technician,
            n: row.setups,
          })}
        </a>
      ),
    },
  ];
  return (
    <Table
      caption={caption}
      rows={rows}
      rowKey={(row) => setupDimensionKey(row.setup, row)}
      columns={columns}
    />
  );
}
