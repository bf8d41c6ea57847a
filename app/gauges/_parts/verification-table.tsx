import { Table } from '@/app/_look/table';
import { Tag } from '@/app/_look/tag';
import { millimetres, probability, signedMillimetres } from '@/app/_words/numbers';
import { day } from '@/app/_words/times';
import {
  ASSUMED_UNCERTAINTY,
  type GaugeVerdict,
  type GaugeVerification,
  type VerificationKind,
} from '@/lib/access';

const KINDS: Record<VerificationKind, string> = {
  'reference-length': 'reference length',
  'check-standard': 'check standard',
  'looked-at': 'looked at',
  'reported-dropped': 'report',
};

interface VerificationTableProps {
  verifications: GaugeVerification[];
  verdict: GaugeVerdict;
  timeZone: string;
}

export function VerificationTable({ verifications, verdict, timeZone }: VerificationTableProps) {
  const called = new Map(verdict.verifications.map((one) => [one.at, one]));
  return (
    <Table
      caption="Newest first"
      rows={[...verifications].sort((a, b) => b.at - a.at)}
      rowKey={(one) => String(one.at)}
      empty="None on record. Verify against a reference length before this gauge is relied on."
      columns={[
        { key: 'at', head: 'Day', names: true, cell: (one) => day(one.at, timeZone) },
        { key: 'result', head: 'Result', cell: (one) => <Result of={one} call={called.get(one.at)?.call} /> },
        {
          key: 'error',
          head: 'Error found',
          numeric: true,
          cell: (one) => (one.error === null ? 'not measured' : signedMillimetres(one.error, 2)),
        },
        {
          key: 'uncertainty',
          head: '± (k = 2)',
          numeric: true,
          cell: (one) =>
            one.error === null
              ? ''
              : one.uncertainty === null
                ? `${millimetres(2 * ASSUMED_UNCERTAINTY, 2)}, assumed`
                : millimetres(2 * one.uncertainty, 2),
        },
        {
          key: 'within',
          head: 'Within what is allowed',
          numeric: true,
          cell: (one) => {
            const within = called.get(one.at)?.within;
            return within === undefined ? '' : probability(within);
          },
        },
        {
          key: 'kind',
          head: 'Held against',
          cell: ({ kind, error, reference }) =>
            error !== null && kind === 'looked-at'
              ? 'not recorded'
              : `${KINDS[kind]}${reference === null ? '' : `, ${millimetres(reference)}`}`,
        },
        { key: 'by', head: 'By', cell: (one) => one.by ?? 'not named' },
        { key: 'note', head: 'Note', cell: (one) => one.note ?? '' },
      ]}
    />
  );
}

function Result({ of, call }: { of: GaugeVerification; call: string | undefined }) {
  if (of.kind === 'reported-dropped') return <Tag name="caution">reported dropped</Tag>;
  if (of.error === null)
    return of.passed ? <Tag name="within">nothing seen</Tag> : <Tag name="caution">looks bent</Tag>;
  if (of.passed) return <Tag name="within">passed</Tag>;
  return call === 'undecided' ? <Tag name="undecided">decides nothing</Tag> : <Tag name="out">failed</Tag>;
}
