import type { ReactNode } from 'react';
import { Table, type Column } from '@/app/_look/table';
import { percent } from '@/app/_words/numbers';
import type { Rate } from '@/lib/assess';
import { axisBetween } from './axis';
import { IntervalBar, IntervalScale } from './interval-bar';

export interface RateGroup {
  key: string;
  name: ReactNode;
  rate: Rate;
}

interface RateGroupsProps {
  caption: string;
  /** What a row is: `Technician`. */
  head: string;
  groups: RateGroup[];
  /** The shop's rate, drawn behind all rows; null where the groups are not parts of the same count. */
  shop: Rate | null;
}

const SHARES = axisBetween(0, 1, [0, 0.25, 0.5, 0.75, 1]);

/** Rates of groups in the order of their names: points are not a ranking, intervals say what is known. */
export function RateGroups({ caption, head, groups, shop }: RateGroupsProps) {
  const band =
    shop === null || shop.low === null || shop.high === null ? null : { low: shop.low, high: shop.high };
  const columns: Column<RateGroup>[] = [
    { key: 'name', head, names: true, cell: (group) => group.name },
    {
      key: 'jobs',
      head: 'Right of jobs',
      numeric: true,
      cell: ({ rate }) => `${rate.right} of ${rate.jobs}`,
    },
    {
      key: 'rate',
      head: 'Rate',
      numeric: true,
      cell: ({ rate }) => (rate.rate === null ? 'none' : percent(rate.rate)),
    },
    {
      key: 'interval',
      head: '95 % interval',
      numeric: true,
      cell: ({ rate }) =>
        rate.low === null || rate.high === null
          ? (rate.why ?? 'none')
          : `${percent(rate.low)} to ${percent(rate.high)}`,
    },
    {
      key: 'bar',
      head: <IntervalScale axis={SHARES} text={(share) => `${share * 100} %`} />,
      cell: ({ rate }) => (
        <IntervalBar axis={SHARES} value={rate.rate} low={rate.low} high={rate.high} band={band} />
      ),
    },
  ];
  if (shop !== null) {
    columns.push({
      key: 'beside',
      head: 'Beside the shop',
      whole: true,
      cell: ({ rate }) => besideShop(rate, shop),
    });
  }
  return (
    <Table
      caption={caption}
      rows={groups}
      rowKey={(group) => group.key}
      empty="No job has come to an answer yet."
      columns={columns}
    />
  );
}

/** Says a difference only where the interval leaves the shop's rate outside. */
function besideShop(rate: Rate, shop: Rate): string {
  if (rate.low === null || rate.high === null || shop.rate === null) return 'cannot say';
  if (rate.high < shop.rate) return 'below the shop’s rate';
  if (rate.low > shop.rate) return 'above the shop’s rate';
  return 'no clear difference';
}
