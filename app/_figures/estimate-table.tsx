import type { ReactNode } from 'react';
import { Table, type Column } from '@/app/_look/table';
import { bareMillimetres, signed } from '@/app/_words/numbers';
import { axisOver, type Axis } from './axis';
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
  /** What is estimated: a standard deviation is never below zero, a bias has a sign. */
  kind: 'sd' | 'bias';
  /** The shop's own interval, drawn as a band. */
  band?: { low: number | null; high: number | null } | undefined;
  empty?: string;
}

/** Estimates in mm, a dot on its interval a row, in the order given: names, never values. */
export function EstimateTable({ caption, head, estimates, kind, band, empty }: EstimateTableProps) {
  const axis = axisFor(estimates, kind, band);
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
      head: (
        <IntervalScale
          axis={axis}
          text={(tick) =>
            kind === 'bias' ? signed(tick, decimals(axis)) : bareMillimetres(tick, decimals(axis))
          }
        />
      ),
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

/** Wide enough for nearly all intervals; a very uncertain one runs on beyond the end, as its arrow says. */
function axisFor(estimates: Estimate[], kind: 'sd' | 'bias', band: EstimateTableProps['band']): Axis {
  const values = estimates.flatMap((one) => (one.value === null ? [] : [one.value]));
  const ends = [...estimates.flatMap((one) => [one.low, one.high]), band?.low, band?.high].filter(
    (end) => typeof end === 'number',
  );
  const farthest = Math.max(0.1, ...values.map((value) => Math.abs(value) * 2));
  const reach = Math.min(Math.max(0.1, ...ends.map(Math.abs)), farthest * 1.5);
  return kind === 'bias' ? axisOver([], -reach, reach, 4) : axisOver([], 0, reach, 4);
}

function decimals(axis: Axis): number {
  return axis.ticks.every((tick) => Number.isInteger(tick))
    ? 0
    : axis.ticks.every((tick) => Number.isInteger(Math.round(tick * 1e6) / 1e5))
      ? 1
      : 2;
}
