import type { ReactNode } from 'react';
import { Table, type Column } from '@/app/_look/table';
import { bareMillimetres, signed } from '@/app/_words/numbers';
import { estimateAxis, estimateTick, type EstimateKind } from './estimate-axis';
import { IntervalBar, IntervalScale } from './interval-bar';

export interface Estimate {
  key: string;
  name: ReactNode;
  value: number | null;
  low: number | null;
  high: number | null;
  why: string | null;
  /** What it rests on: `212 setups`. */
  rests: ReactNode;
}

interface EstimateTableProps {
  caption: string;
  head: string;
  estimates: Estimate[];
  kind: EstimateKind;
  /** The shop's own interval, drawn as a band. */
  band?: { low: number | null; high: number | null } | undefined;
  empty?: string;
}

/** Estimates in mm, a dot on its interval a row, in the order given: names, never values. */
export function EstimateTable({ caption, head, estimates, kind, band, empty }: EstimateTableProps) {
  const axis = estimateAxis(estimates, kind, band);
  const print = (value: number) => (kind === 'bias' ? signed(value, 2) : bareMillimetres(value, 2));
  const columns: Column<Estimate>[] = [
    { key: 'name', head, names: true, cell: (one) => one.name },
    {
      key: 'value',
      head: kind === 'bias' ? 'Bias, mm' : 'Scatter, mm',
      numeric: true,
      cell: (one) => (one.value === null ? 'none' : print(one.value)),
    },
    {
      key: 'interval',
      head: '95 % interval, mm',
      numeric: true,
      cell: (one) => (one.low === null || one.high === null ? '' : `${print(one.low)} to ${print(one.high)}`),
    },
    {
      key: 'bar',
      head: <IntervalScale axis={axis} text={(tick) => estimateTick(tick, kind, axis)} />,
      cell: (one) =>
        one.value === null ? (
          (one.why ?? 'not enough readings')
        ) : (
          <IntervalBar
            axis={axis}
            value={one.value}
            low={one.low}
            high={one.high}
            line={kind === 'bias' ? 0 : null}
            band={
              band === undefined || band.low === null || band.high === null
                ? null
                : { low: band.low, high: band.high }
            }
          />
        ),
    },
    { key: 'rests', head: 'Rests on', whole: true, cell: (one) => one.rests },
  ];
  return (
    <Table caption={caption} rows={estimates} rowKey={(one) => one.key} columns={columns} empty={empty} />
  );
}
