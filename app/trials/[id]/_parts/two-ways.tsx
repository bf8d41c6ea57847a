import { Table } from '@/app/_look/table';
import { bareMillimetres, percent } from '@/app/_words/numbers';
import type { TrialAnalysis } from '@/lib/access';

type Crossed = TrialAnalysis['crossed'];

const LINES = [
  ['repeat', 'Hanging again'],
  ['operator', 'Technician to technician'],
  ['part:operator', 'Technicians from point to point'],
  ['reproducibility', 'Technicians together'],
  ['gauge', 'All of measuring'],
  ['part', 'Point to point of the vehicle'],
  ['total', 'Everything'],
] as const;
const TABLE_LINES = [
  ['part', 'Points'],
  ['operator', 'Technicians'],
  ['part:operator', 'Technicians by points'],
  ['repeat', 'Hangings again'],
] as const;

/** The analysis of variance of the hangings' means beside restricted maximum likelihood. */
export function TwoWays({ crossed }: { crossed: Crossed }) {
  const { components, intervals, table, notes, why } = crossed;
  return (
    <>
      <Table
        caption="Scatter as an sd in mm with 95 % limits, both ways; a hanging's mean is one value"
        rows={LINES}
        rowKey={([line]) => line}
        columns={[
          { key: 'name', head: 'Source', names: true, wraps: true, cell: ([, name]) => name },
          {
            key: 'anova',
            head: 'Analysis of variance',
            numeric: true,
            cell: ([line]) => root(components.truncated?.[line] ?? null),
          },
          {
            key: 'limits',
            head: 'Limits',
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
            head: 'Maximum likelihood (REML)',
            numeric: true,
            cell: ([line]) => root(components.reml?.[line] ?? null),
          },
          {
            key: 'profile',
            head: 'Limits',
            numeric: true,
            cell: ([line]) =>
              line === 'reproducibility' || line === 'gauge' || line === 'total'
                ? 'none: a sum'
                : limitsOf(intervals.reml?.[line]),
          },
        ]}
      />
      {table !== null && (
        <details>
          <summary>The table of the analysis of variance</summary>
          <Table
            caption="Sums of squares in mm², of the hangings' means"
            rows={TABLE_LINES}
            rowKey={([line]) => line}
            columns={[
              { key: 'name', head: 'Source', names: true, cell: ([, name]) => name },
              { key: 'df', head: 'Degrees of freedom', numeric: true, cell: ([line]) => table[line].df },
              {
                key: 'ss',
                head: 'Sum of squares',
                numeric: true,
                cell: ([line]) => table[line].ss.toFixed(3),
              },
              {
                key: 'ms',
                head: 'Mean square',
                numeric: true,
                cell: ([line]) => table[line].ms?.toFixed(3) ?? '',
              },
              { key: 'f', head: 'F', numeric: true, cell: ([line]) => table[line].f?.toFixed(2) ?? '' },
              {
                key: 'p',
                head: 'Chance of as much',
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
        <p key={note}>{note}</p>
      ))}
    </>
  );
}

const root = (variance: number | null) =>
  variance === null ? 'none' : bareMillimetres(Math.sqrt(Math.max(0, variance)), 2);

function limitsOf(limits: { low: number | null; high: number | null } | null | undefined): string {
  if (limits == null || (limits.low === null && limits.high === null)) return 'none';
  return `${limits.low === null ? 'open' : root(limits.low)} to ${limits.high === null ? 'open' : root(limits.high)}`;
}
