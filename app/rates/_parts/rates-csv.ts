import type { CsvTable } from '@/app/_figures/download/csv-text';
import { told } from '@/app/_words/told';
import type { FairRates } from '@/lib/assess/rates';

/** The table of rates with all its digits, and the limits of the funnel. */
export const ratesCsv = ({ by, groups }: FairRates): CsvTable => ({
  columns: [
    ...[by, 'jobs', 'right', 'rate', 'rate_low_95', 'rate_high_95'],
    ...['shrunk_rate', 'shrunk_low_95', 'shrunk_high_95', 'small_group_why'],
    ...['funnel_place', 'funnel_low_95', 'funnel_high_95', 'funnel_low_998', 'funnel_high_998'],
    ...[
      'expected_right',
      'observed_over_expected',
      'ratio_low_95',
      'ratio_high_95',
      'p_adjusted',
      'ratio_why',
    ],
  ],
  rows: groups.map(({ name, jobs, right, rate, low, high, shrunk, smallWhy, funnel, adjusted }) => [
    ...[name, jobs, right, rate, low, high],
    ...[shrunk.mean, shrunk.low, shrunk.high, said(smallWhy)],
    ...[funnel.place, funnel.at95.low, funnel.at95.high, funnel.at998.low, funnel.at998.high],
    ...[adjusted.expected, adjusted.ratio, adjusted.low, adjusted.high, adjusted.p, said(adjusted.why)],
  ]),
});

const said = (why: string | null): string | null => (why === null ? null : told(why));
