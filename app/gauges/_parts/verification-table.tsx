import { Table } from '@/app/_look/table';
import { Tag } from '@/app/_look/tag';
import { millimetres, probability, signedMillimetres } from '@/app/_words/numbers';
import { day } from '@/app/_words/times';
import { ASSUMED_UNCERTAINTY, type GaugeVerdict, type GaugeVerification } from '@/lib/access';
import { words } from '@/app/_words/words';

interface VerificationTableProps {
  verifications: GaugeVerification[];
  verdict: GaugeVerdict;
  timeZone: string;
}

export function VerificationTable({ verifications, verdict, timeZone }: VerificationTableProps) {
  const called = new Map(verdict.verifications.map((one) => [one.at, one]));
  const t = words('gauges');
  return (
    <Table
      caption={t('table.caption')}
      rows={[...verifications].sort((a, b) => b.at - a.at)}
      rowKey={(one) => String(one.at)}
      empty={t('table.none')}
      columns={[
        { key: 'at', head: t('table.day'), names: true, cell: (one) => day(one.at, timeZone) },
        {
          key: 'result',
          head: t('table.result'),
          cell: (one) => <Result of={one} call={called.get(one.at)?.call} />,
        },
        {
          key: 'error',
          head: t('table.error'),
          numeric: true,
          cell: (one) => (one.error === null ? t('table.notMeasured') : signedMillimetres(one.error, 2)),
        },
        {
          key: 'uncertainty',
          head: t('table.uncertainty'),
          numeric: true,
          cell: (one) =>
            one.error === null
              ? ''
              : one.uncertainty === null
                ? t('table.assumed', { uncertainty: millimetres(2 * ASSUMED_UNCERTAINTY, 2) })
                : millimetres(2 * one.uncertainty, 2),
        },
        {
          key: 'within',
          head: t('table.within'),
          numeric: true,
          cell: (one) => {
            const within = called.get(one.at)?.within;
            return within === undefined ? '' : probability(within);
          },
        },
        {
          key: 'kind',
          head: t('table.against'),
          cell: ({ kind, error, reference }) =>
            error !== null && kind === 'looked-at'
              ? t('notRecorded')
              : [t(`table.kinds.${kind}`), ...(reference === null ? [] : [millimetres(reference)])].join(
                  ', ',
                ),
        },
        { key: 'by', head: t('table.by'), cell: (one) => one.by ?? t('table.notNamed') },
        { key: 'note', head: t('table.note'), cell: (one) => one.note ?? '' },
      ]}
    />
  );
}

function Result({ of, call }: { of: GaugeVerification; call: string | undefined }) {
  const t = words('gauges');
  if (of.kind === 'reported-dropped') return <Tag name="caution">{t('table.results.dropped')}</Tag>;
  if (of.error === null)
    return of.passed ? (
      <Tag name="within">{t('table.results.nothingSeen')}</Tag>
    ) : (
      <Tag name="caution">{t('table.results.bent')}</Tag>
    );
  if (of.passed) return <Tag name="within">{t('table.results.passed')}</Tag>;
  return call === 'undecided' ? (
    <Tag name="undecided">{t('table.results.undecided')}</Tag>
  ) : (
    <Tag name="out">{t('table.results.failed')}</Tag>
  );
}
