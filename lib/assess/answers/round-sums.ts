import { mergeCollapsed } from '@/lib/stats';
import type { SettingSeries } from '../signals';
import type { SettingError } from './setting-errors';

interface Collapsed {
  n: number;
  mean: number;
  ss: number;
}

const NONE: Collapsed = { n: 0, mean: 0, ss: 0 };

/**
 * Setting errors by month for the charts, round by round: the heights of one round share their datum, so the mean of a
 * round is one piece of evidence of a bias, and only what lies within the round is evidence of scatter.
 */
export class RoundSums {
  /** By subject and month: the means of the rounds, and the squares within them. */
  readonly #months = new Map<string, Map<string, { means: Collapsed; df: number; ss: number }>>();

  /** @param errors of one subject in one round, none of them twice. */
  add(kind: 'technician' | 'gauge', name: string, month: string, errors: readonly SettingError[]): void {
    if (errors.length === 0) return;
    const mean = errors.reduce((sum, { error }) => sum + error, 0) / errors.length;
    const ss = errors.reduce((sum, { error }) => sum + (error - mean) ** 2, 0);
    const key = JSON.stringify([kind, name]);
    const months = this.#months.get(key) ?? new Map<string, { means: Collapsed; df: number; ss: number }>();
    this.#months.set(key, months);
    const known = months.get(month) ?? { means: NONE, df: 0, ss: 0 };
    months.set(month, {
      means: mergeCollapsed(known.means, { n: 1, mean, ss: 0 }),
      df: known.df + errors.length - 1,
      ss: known.ss + ss,
    });
  }

  /** Each technician's bias and scatter, each gauge's bias. */
  series(): SettingSeries[] {
    return [...this.#months].sort(inOrder).flatMap(([key, months]): SettingSeries[] => {
      const [kind, name] = JSON.parse(key) as ['technician' | 'gauge', string];
      const subject = { kind, name } as const;
      const sorted = [...months].sort(inOrder);
      const bias: SettingSeries = {
        what: 'setting-bias',
        subject,
        periods: sorted.map(([period, { means }]) => ({
          period,
          n: means.n,
          mean: means.mean,
          ss: means.ss,
        })),
      };
      if (kind === 'gauge') return [bias];
      const periods = sorted.map(([period, { df, ss }]) => ({
        period,
        n: df === 0 ? 0 : df + 1,
        mean: 0,
        ss,
      }));
      return [bias, { what: 'setting-scatter', subject, periods }];
    });
  }
}

const inOrder = ([a]: [string, unknown], [b]: [string, unknown]): number => (a < b ? -1 : 1);
