import type { Block } from '@/app/_record';
import { rateOf } from '@/app/_shop/rate-of';
import { decimal, percent, signedDecimal } from '@/app/_words/numbers';
import { monthName } from '@/app/_words/times';
import { words } from '@/app/_words/words';
import type { Rate } from '@/lib/assess';
import { rateDifference } from '@/lib/stats';
import type { MonthLetter } from './gather';

/** So many months stand in the table; those before them are in the sum alone. */
const MONTHS = 7;
/** More job numbers than this are told as a count. */
const NAMED = 12;

/** How the month's jobs came out, beside all months before it. */
export function monthBlocks({ month, months, jobs }: MonthLetter): Block[] {
  const t = words('letter');
  const own = months.at(-1);
  if (own === undefined) return [];
  const earlier = months.slice(0, -1);
  const sum = (of: 'right' | 'jobs') => earlier.reduce((total, one) => total + one[of], 0);
  const before = rateOf(sum('right'), sum('jobs'));
  const wrong = jobs.filter(({ right }) => !right).map(({ job }) => job);
  return [
    {
      kind: 'paragraph',
      text: [
        t('month.rate', { month: monthName(month), jobs: own.jobs, right: own.right, rate: rateSaid(own) }),
        ...(own.small ? [t('month.small')] : []),
        before.jobs === 0
          ? t('month.first')
          : t('month.before', { jobs: before.jobs, right: before.right, rate: rateSaid(before) }),
        ...(before.jobs === 0 ? [] : [differenceSaid(own, before)]),
      ].join(' '),
    },
    ...(wrong.length === 0
      ? []
      : [
          {
            kind: 'paragraph',
            lead: t('month.wrong'),
            text:
              wrong.slice(0, NAMED).join(', ') +
              (wrong.length > NAMED ? t('month.more', { n: wrong.length - NAMED }) : ''),
          } as const,
        ]),
    {
      kind: 'table',
      caption: t('month.caption'),
      columns: [
        { head: t('month.month'), width: 30 },
        { head: t('month.jobs'), width: 26, numeric: true },
        { head: t('month.value'), width: 20, numeric: true },
        { head: t('month.interval'), width: 36, numeric: true },
        { head: t('month.shrunk'), width: 46, numeric: true },
      ],
      rows: months.slice(-MONTHS).map((one) => ({
        strong: one.name === month,
        cells: [
          monthName(one.name),
          t('month.of', { right: one.right, jobs: one.jobs }),
          one.rate === null ? words('print')('none') : percent(one.rate),
          intervalSaid(one),
          one.shrunk.mean === null
            ? words('print')('none')
            : `${percent(one.shrunk.mean)} (${intervalSaid(one.shrunk)})`,
        ],
      })),
    },
    { kind: 'paragraph', aside: true, text: t('month.rests', { months: months.length }) },
  ];
}

const rateSaid = ({ rate, low, high }: Rate): string =>
  rate === null || low === null || high === null
    ? words('print')('none')
    : words('print')('withInterval', { value: percent(rate), low: percent(low), high: percent(high) });

const intervalSaid = ({ low, high }: { low: number | null; high: number | null }): string =>
  low === null || high === null
    ? words('print')('none')
    : words('print')('interval', { low: percent(low), high: percent(high) });

/** The month less those before it in points, and whether that may be chance. */
function differenceSaid(own: Rate, before: Rate): string {
  const t = words('letter');
  const { difference, low, high } = rateDifference(
    { x: own.right, n: own.jobs },
    { x: before.right, n: before.jobs },
  );
  if (difference === null || low === null || high === null) return t('month.noDifference');
  const points = {
    value: signedDecimal(100 * difference, 0),
    low: signedDecimal(100 * low, 0),
    high: signedDecimal(100 * high, 0),
  };
  return low <= 0 && high >= 0 ? t('month.chance', points) : t('month.differs', points);
}

/** A count that is expected, with its limits. */
export const expectedSaid = ({
  expected,
  low,
  high,
}: {
  expected: number | null;
  low: number | null;
  high: number | null;
}): string => {
  const print = words('print');
  if (expected === null) return print('none');
  const value = decimal(expected, 1);
  return low === null || high === null
    ? print('noInterval', { value })
    : print('withInterval', { value, low: String(low), high: String(high) });
};
