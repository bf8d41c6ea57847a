import Link from 'next/link';
import type { Estimate } from '@/app/_figures/estimate-table';
import { gaugeAddress } from '@/app/_words/address';
import { words } from '@/app/_words/words';
import type { GaugeFigures } from '@/lib/assess';
import { told } from '@/app/_words/told';
import { inOrder } from '@/app/_words/in-order';

/** Bias of every gauge, in the order of their tags. */
export function gaugeEstimates(gauges: readonly GaugeFigures[]): Estimate[] {
  return [...gauges]
    .sort((a, b) => inOrder(a.gauge, b.gauge))
    .map((one) => ({
      key: one.gauge,
      name: (
        <Link href={gaugeAddress(one.gauge)} prefetch={false}>
          {one.gauge}
        </Link>
      ),
      value: one.bias.mean,
      low: one.bias.low,
      high: one.bias.high,
      why: one.bias.why === null ? null : told(one.bias.why),
      rests: words('gauges')('readings', { n: one.readings }),
    }));
}
