import { CAUSES, type Cause } from '@/lib/measure/types';
import { binomialInterval } from '@/lib/stats/intervals';
import { type Call, callOf } from '../round/call';
import type { Interval } from '../types';
import { type Foretold, provedOnly } from './proved';

/** The heights that a call was made of, and what they proved to be. */
export interface CalledHeights {
  call: Call;
  heights: number;
  proved: Record<Cause, number>;
  /** Share that proved to be damaged (body or both), with its 95 % Wilson interval; null without a height. */
  body: { share: number | null } & Interval;
}

/** Every call that was made, at this cost of missing damage, against what was proved. */
export function calledHeights(
  heights: readonly Foretold[],
  calls: readonly Call[],
  missCost: number,
): CalledHeights[] {
  const proved = provedOnly(heights);
  return calls.map((call) => {
    const members = proved.filter(({ p }) => callOf(p, missCost) === call);
    const counts = Object.fromEntries(
      CAUSES.map((cause) => [cause, members.filter((height) => height.proved === cause).length]),
    ) as Record<Cause, number>;
    const body = counts.body + counts.both;
    const { low, high } = binomialInterval(body, members.length);
    return {
      call,
      heights: members.length,
      proved: counts,
      body: { share: members.length === 0 ? null : body / members.length, low, high },
    };
  });
}
