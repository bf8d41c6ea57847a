import { Table, type Column } from '@/app/_look/table';
import { setupAnchor } from '@/app/_words/address';
import { sectionName } from '@/app/_words/jobs';
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
  const columns: Column<RecordedDimension>[] = [
    {
      key: 'point',
      head: rows[0]?.quantity === 'length' ? 'Length' : 'Point',
      names: true,
      cell: (row) => row.point.replace('-', '–'),
    },
    {
      key: 'deviation',
      head: 'Deviation',
      numeric: true,
      cell: (row) => <DeviationCell deviation={row.deviation} within={row.within} />,
    },
    ...(extra === undefined ? [] : [extra]),
    {
      key: 'section',
      head: 'Section',
      cell: (row) => (row.section === null ? 'not named' : sectionName(row.section)),
    },
    { key: 'sheet', head: 'Sheet', numeric: true, cell: (row) => bareMillimetres(row.nominal) },
    { key: 'read', head: 'Read', numeric: true, cell: (row) => bareMillimetres(row.nominal + row.deviation) },
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
      cell: (row) => expanded(uncertainties.get(setupDimensionKey(row.setup, row))),
    },
    {
      key: 'setup',
      head: 'Setup',
      whole: true,
      cell: (row) => (
        <a href={`#${setupAnchor(`${name} ${row.setup}`)}`}>
          {row.setup}, {row.gauge}, {row.technician}
          {row.setups > 1 && ` (last of ${row.setups})`}
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
