import { grouped } from '@/lib/measure/grouped';
import { monthOf, quarterOf } from '@/lib/measure/month-of';
import { mergeCollapsed } from '@/lib/stats';
import type { HandCell, Quarter, ShopQuarter } from '../my-hand';
import type { SettingSeries } from '../signals';
import { RoundSums } from './round-sums';
import type { SettingError } from './setting-errors';

interface Sum {
  n: number;
  mean: number;
  ss: number;
  readingDf: number;
  readingSs: number;
}

const NONE: Readonly<Sum> = { n: 0, mean: 0, ss: 0, readingDf: 0, readingSs: 0 };

/** Takes one more value into a sum in its place: there are as many as the shop has heights. */
function grow(sums: Map<string, Sum>, key: string, { error, readingDf, readingSs }: SettingError): void {
  let sum = sums.get(key);
  if (sum === undefined) sums.set(key, (sum = { ...NONE }));
  const gap = error - sum.mean;
  sum.n += 1;
  sum.mean += gap / sum.n;
  sum.ss += gap * (error - sum.mean);
  sum.readingDf += readingDf;
  sum.readingSs += readingSs;
}

/** How a place is told apart from others: section, side, distance; last the tag of the gauge, which may have gaps. */
const PLACE = /^(\S*) (\S*) (\S*) (.*)$/s;

/** Setting errors summed by whom, with what, where and when: cost follows the sums, not the history. */
export class SettingSums {
  readonly #timeZone: string;
  readonly #rounds = new RoundSums();
  readonly #quarters = new Map<string, Map<string, Sum>>();
  readonly #cells = new Map<string, Map<string, Sum>>();

  constructor(timeZone: string) {
    this.#timeZone = timeZone;
  }

  /** @param errors of one round. */
  addRound(errors: readonly SettingError[]): void {
    const [first] = errors;
    if (first === undefined) return;
    const month = monthOf(first.at, this.#timeZone);
    const quarter = quarterOf(month);
    for (const [name, own] of grouped(errors, ({ technician }) => technician))
      this.#rounds.add('technician', name, month, own);
    for (const [name, own] of grouped(errors, ({ gauge }) => gauge))
      this.#rounds.add('gauge', name, month, own);
    for (const error of errors) {
      const { technician, gauge, section, side, distance } = error;
      grow(within(this.#quarters, technician), quarter, error);
      // To half a metre: places nearer together are one kind of place.
      const place = [section, side, Math.ceil(distance / 500) * 500, gauge].join(' ');
      grow(within(this.#cells, technician), place, error);
    }
  }

  /** By month: each technician's scatter and mean, each gauge's mean. */
  series(): SettingSeries[] {
    return this.#rounds.series();
  }

  cells(technician: string): HandCell[] {
    return [...(this.#cells.get(technician) ?? [])].sort(inOrder).map(([key, sum]) => {
      const [, section = '', side = '', distance = '', gauge = ''] = PLACE.exec(key) ?? [];
      return {
        section: section as HandCell['section'],
        side: side as HandCell['side'],
        gauge,
        distance: Number(distance),
        ...sum,
      };
    });
  }

  quarters(technician: string): Quarter[] {
    return [...(this.#quarters.get(technician) ?? [])].sort(inOrder).map(quarterSums);
  }

  /** The shop by quarter, with how many technicians stand behind each. */
  shopQuarters(): ShopQuarter[] {
    const shop = new Map<string, { sum: Sum; technicians: number }>();
    for (const quarters of this.#quarters.values())
      for (const [quarter, sum] of quarters) {
        const known = shop.get(quarter) ?? { sum: NONE, technicians: 0 };
        shop.set(quarter, {
          sum: {
            ...mergeCollapsed(known.sum, sum),
            readingDf: known.sum.readingDf + sum.readingDf,
            readingSs: known.sum.readingSs + sum.readingSs,
          },
          technicians: known.technicians + 1,
        });
      }
    return [...shop]
      .sort(inOrder)
      .map(([quarter, { sum, technicians }]) => ({ ...quarterSums([quarter, sum]), technicians }));
  }
}

const quarterSums = ([quarter, { n, mean, ss, readingDf, readingSs }]: [string, Sum]): Quarter => ({
  quarter,
  reading: { df: readingDf, ss: readingSs },
  setting: { n, mean, ss },
});

function within(sums: Map<string, Map<string, Sum>>, key: string): Map<string, Sum> {
  const known = sums.get(key) ?? new Map<string, Sum>();
  sums.set(key, known);
  return known;
}

const inOrder = ([a]: [string, unknown], [b]: [string, unknown]): number => (a < b ? -1 : 1);
