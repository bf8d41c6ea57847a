import type { ReactNode } from 'react';
import { Table, type Column } from '@/app/_look/table';
import { bareMillimetres, signed, unit } from '@/app/_words/numbers';
import { words } from '@/app/_words/words';
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

/** Estimates of lengths, a dot on its interval a row, in the order given: names, never values. */
export function EstimateTable({ caption, head, estimates, kind, band, empty }: EstimateTableProps) {
  const t = words('figures');
  const axis = estimateAxis(estimates, kind, band);
  const print = (value: number) => (kind === 'bias' ? signed(value, 2) : bareMillimetres(value, 2));
  const columns: Column<Estimate>[] = [
    { key: 'name', head, names: true, cell: (one) => one.name },
    {
      key: 'value',
      head: t(kind === 'bias' ? 'estimates.bias' : 'estimates.scatter', { unit: unit() }),
      numeric: true,
      cell: (one) => (one.value === null ? t('none') : print(one.value)),
    },
    {
      key: 'interval',
      head: t('intervalIn', { unit: unit() }),
      numeric: true,
      cell: (one) =>
        one.low === null || one.high === null
          ? ''
          : t('range', { low: print(one.low), high: print(one.high) }),
    },
    {
      key: 'bar',
      head: <IntervalScale axis={axis} text={(tick) => estimateTick(tick, kind, axis)} />,
      cell: (one) =>
        one.value === null ? (
          (one.why ?? t('estimates.tooFew'))
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
    { key: 'rests', head: t('estimates.rests'), whole: true, cell: (one) => one.rests },
  ];
  return (
    <Table caption={caption} rows={estimates} rowKey={(one) => one.key} columns={columns} empty={empty} />
  );
}
