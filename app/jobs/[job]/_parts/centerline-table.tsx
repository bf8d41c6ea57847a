import { callOf, type RecordedDimension, type RoundVerdict } from '@/lib/assess';
import { unit } from '@/app/_words/numbers';
import { words } from '@/app/_words/words';
import { evidenceAddress, heightAnchor } from '@/app/_words/address';
import { CauseCell } from './cause-cell';
import { RecordedTable } from './recorded-table';

interface CenterlineTableProps {
  rows: RecordedDimension[];
  round: RoundVerdict | null;
  uncertainties: ReadonlyMap<string, number>;
  name: string;
  /** What missing damage costs against a needless re-hang. */
  missCost: number;
}

/** Centre pins: whether the body has swayed or the gauge was hung off centre. */
export function CenterlineTable({ rows, round, uncertainties, name, missCost }: CenterlineTableProps) {
  const t = words('jobs');
  const shown = {
    caption: t('tables.centerline', { unit: unit() }),
    rows,
    uncertainties,
    name,
  };
  if (round === null || round.centerline.length === 0) return <RecordedTable {...shown} />;
  const toldOf = (row: RecordedDimension) =>
    round.centerline.find((one) => one.setup === row.setup && one.point === row.point) ?? null;
  return (
    <RecordedTable
      {...shown}
      extra={{
        key: 'cause',
        head: t('tables.cause'),
        cell: (row) => {
          const told = toldOf(row);
          return (
            <CauseCell
              told={told}
              call={told === null || !round.decidable ? 'undecided' : callOf(told.p, missCost)}
              evidence={{
                address: evidenceAddress(
                  round.job,
                  round.stage,
                  round.attempt,
                  heightAnchor({ setup: row.setup, point: row.point, side: 'C' }),
                ),
                of: t('cells.pin', { point: row.point }),
              }}
            />
          );
        },
      }}
    />
  );
}
