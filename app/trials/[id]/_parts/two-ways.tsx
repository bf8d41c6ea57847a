import { Table } from '@/app/_look/table';
import { bareMillimetres, decimal, percent, unit } from '@/app/_words/numbers';
import { told } from '@/app/_words/told';
import { words } from '@/app/_words/words';
import { millimetresToInches } from '@/lib/measure/units';
import type { TrialAnalysis } from '@/lib/access';

type Crossed = TrialAnalysis['crossed'];

/** The lines as the analysis and as the catalogue call them. */
const LINES = [
  ['repeat', 'repeat'],
  ['operator', 'operator'],
  ['part:operator', 'partOperator'],
  ['reproducibility', 'reproducibility'],
  ['gauge', 'gauge'],
  ['part', 'part'],
  ['total', 'total'],
] as const;
const TABLE_LINES = [
  ['part', 'part'],
  ['operator', 'operator'],
  ['part:operator', 'partOperator'],
  ['repeat', 'repeat'],
] as const;

/** The analysis of variance of the hangings' means beside restricted maximum likelihood. */
export function TwoWays({ crossed }: { crossed: Crossed }) {
  const t = words('trials');
  const { components, intervals, table, notes, why } = crossed;
  return (
    <>
      <Table
        caption={t('ways.caption', { unit: unit() })}
        rows={LINES}
        rowKey={([line]) => line}
        columns={[
          {
            key: 'name',
            head: t('source'),
            names: true,
            wraps: true,
            cell: ([, name]) => t(`ways.lines.${name}`),
          },
          {
            key: 'anova',
            head: t('ways.anova'),
            numeric: true,
            cell: ([line]) => root(components.truncated?.[line] ?? null),
          },
          {
            key: 'limits',
            head: t('ways.limits'),
            numeric: true,
            cell: ([line]) => {
              const limits =
                line === 'reproducibility'
                  ? intervals.satterthwaite?.reproducibility
                  : intervals.modifiedLargeSample?.[line];
              return limitsOf(limits);
            },
          },
          {
            key: 'reml',
            head: t('ways.reml'),
            numeric: true,
            cell: ([line]) => root(components.reml?.[line] ?? null),
          },
          {
            key: 'profile',
            head: t('ways.limits'),
            numeric: true,
            cell: ([line]) =>
              line === 'reproducibility' || line === 'gauge' || line === 'total'
                ? t('ways.sum')
                : limitsOf(intervals.reml?.[line]),
          },
        ]}
      />
      {table !== null && (
        <details>
          <summary>{t('ways.table')}</summary>
          <Table
            caption={t('ways.tableCaption', { unit: unit() })}
            rows={TABLE_LINES}
            rowKey={([line]) => line}
            columns={[
              {
                key: 'name',
                head: t('source'),
                names: true,
                cell: ([, name]) => t(`ways.tableLines.${name}`),
              },
              { key: 'df', head: t('ways.df'), numeric: true, cell: ([line]) => table[line].df },
              {
                key: 'ss',
                head: t('ways.ss'),
                numeric: true,
                cell: ([line]) => squared(table[line].ss),
              },
              {
                key: 'ms',
                head: t('ways.ms'),
                numeric: true,
                cell: ([line]) => squared(table[line].ms),
              },
              {
                key: 'f',
                head: t('ways.f'),
                numeric: true,
                cell: ([line]) => {
                  const { f } = table[line];
                  return f === null ? '' : decimal(f, 2);
                },
              },
              {
                key: 'p',
                head: t('ways.p'),
                numeric: true,
                cell: ([line]) => {
                  const { p } = table[line];
                  return p === null ? '' : percent(p);
                },
              },
            ]}
          />
        </details>
      )}
      {[...notes, ...(why === null ? [] : [why])].map((note) => (
        <p key={note}>{told(note)}</p>
      ))}
    </>
  );
}

/** A sum of squares or its mean, given in mm², in the square of the reader's unit. */
function squared(value: number | null): string {
  if (value === null) return '';
  return unit() === 'mm' ? decimal(value, 3) : decimal(millimetresToInches(millimetresToInches(value)), 6);
}

const root = (variance: number | null) =>
  variance === null ? words('trials')('none') : bareMillimetres(Math.sqrt(Math.max(0, variance)), 2);

function limitsOf(limits: { low: number | null; high: number | null } | null | undefined): string {
  const t = words('trials');
  if (limits == null || (limits.low === null && limits.high === null)) return t('none');
  return t('range', {
    low: limits.low === null ? t('ways.open') : root(limits.low),
    high: limits.high === null ? t('ways.open') : root(limits.high),
  });
}
