import type { ReactNode } from 'react';
import { Table, type Column } from '@/app/_look/table';
import { grouped, percent } from '@/app/_words/numbers';
import { words } from '@/app/_words/words';
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
  const t = words('figures');
  const band =
    shop === null || shop.low === null || shop.high === null ? null : { low: shop.low, high: shop.high };
  const columns: Column<RateGroup>[] = [
    { key: 'name', head, names: true, cell: (group) => group.name },
    {
      key: 'jobs',
      head: t('groups.rightOfJobs'),
      numeric: true,
      cell: ({ rate }) => t('groups.of', { right: grouped(rate.right), jobs: grouped(rate.jobs) }),
    },
    {
      key: 'rate',
      head: t('groups.rate'),
      numeric: true,
      cell: ({ rate }) => (rate.rate === null ? t('none') : percent(rate.rate)),
    },
    {
      key: 'interval',
      head: t('interval'),
      numeric: true,
      cell: ({ rate }) =>
        rate.low === null || rate.high === null
          ? (rate.why ?? t('none'))
          : t('range', { low: percent(rate.low), high: percent(rate.high) }),
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
      head: t('groups.beside'),
      whole: true,
      cell: ({ rate }) => besideShop(rate, shop),
    });
  }
  return (
    <Table
      caption={caption}
      rows={groups}
      rowKey={(group) => group.key}
      empty={t('groups.none')}
      columns={columns}
    />
  );
}

/** Says a difference only where the interval leaves the shop's rate outside. */
function besideShop(rate: Rate, shop: Rate): string {
  const t = words('figures');
  if (rate.low === null || rate.high === null || shop.rate === null) return t('groups.cannotSay');
  if (rate.high < shop.rate) return t('groups.below');
  if (rate.low > shop.rate) return t('groups.above');
  return t('groups.noDifference');
}
