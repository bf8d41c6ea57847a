import { drawnOnce } from '@/app/_look/still';
import { Table } from '@/app/_look/table';
import { bareMillimetres, unit } from '@/app/_words/numbers';
import { speech } from '@/app/_words/speech';
import { words } from '@/app/_words/words';
import { lengthName, type SheetRows } from '@/lib/measure/sheet';
import { fitWords } from './fit-words';
import { sayer } from './say';

/** The lengths of a sheet, and how each fits its points. */
export const LengthTable = drawnOnce(function LengthTable({
  rows: { points, lengths },
}: {
  rows: SheetRows;
}) {
  const t = words('sheets');
  const say = sayer(t);
  const head = (column: string) => say(`columns.${column}`, { unit: unit() });
  return (
    <Table
      caption={t('page.lengths')}
      captionOutOfSight
      rows={lengths}
      rowKey={(length) => `${lengthName(length)} ${length.nominal}`}
      empty={t('page.noLengths')}
      columns={[
        { key: 'name', head: t('columns.length'), names: true, cell: ({ from, to }) => `${from}–${to}` },
        {
          key: 'nominal',
          head: head('nominal'),
          numeric: true,
          cell: ({ nominal }) => bareMillimetres(nominal),
        },
        {
          key: 'tolerance',
          head: head('tolerance'),
          numeric: true,
          cell: ({ tolerance }) => bareMillimetres(tolerance),
        },
        {
          key: 'fits',
          head: t('columns.fits'),
          wraps: true,
          cell: (length) => fitWords(length, points, say, speech()) ?? '',
        },
      ]}
    />
  );
});
