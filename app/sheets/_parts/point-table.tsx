import { drawnOnce } from '@/app/_look/still';
import { Table } from '@/app/_look/table';
import { bareMillimetres, unit } from '@/app/_words/numbers';
import { words } from '@/app/_words/words';
import { FEATURES, type PointRow } from '@/lib/measure/sheet';
import { sayer } from './say';

/** The points of a sheet with what is controlled there; one line where both sides are alike. */
export const PointTable = drawnOnce(function PointTable({ rows }: { rows: readonly PointRow[] }) {
  const t = words('sheets');
  const say = sayer(t);
  const length = (value: number | null) => (value === null ? '' : bareMillimetres(value));
  const head = (column: string) => say(`columns.${column}`, { unit: unit() });
  const feature = (of: string | null) =>
    of === null ? '' : FEATURES.some((one) => one === of) ? say(`features.${of}`) : of;
  return (
    <Table
      caption={t('page.points')}
      captionOutOfSight
      rows={rows}
      rowKey={({ letter, side }) => `${letter} ${side}`}
      empty={t('page.noPoints')}
      columns={[
        { key: 'letter', head: head('letter'), names: true, cell: ({ letter }) => letter },
        { key: 'side', head: head('side'), whole: true, cell: ({ side }) => say(`side.${side}`) },
        {
          key: 'description',
          head: head('description'),
          wraps: true,
          cell: ({ description }) => description ?? '',
        },
        { key: 'feature', head: head('feature'), cell: (row) => feature(row.feature) },
        {
          key: 'section',
          head: head('section'),
          cell: ({ section, zero }) => (
            <>
              {section === null ? '' : say(`section.${section}`)}
              {zero && `, ${t('page.zero')}`}
            </>
          ),
        },
        { key: 'station', head: head('station'), numeric: true, cell: ({ station }) => length(station) },
        { key: 'height', head: head('height'), numeric: true, cell: ({ height }) => length(height) },
        { key: 'half', head: head('halfWidth'), numeric: true, cell: ({ halfWidth }) => length(halfWidth) },
        {
          key: 'tolerance',
          head: head('tolerance'),
          numeric: true,
          cell: ({ tolerance, height, centerline }) =>
            height === null && centerline === null ? '' : length(tolerance),
        },
        { key: 'pin', head: head('centerline'), numeric: true, cell: ({ centerline }) => length(centerline) },
      ]}
    />
  );
});
