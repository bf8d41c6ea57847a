import Link from 'next/link';
import type { Estimate } from '@/app/_figures/estimate-table';
import { technicianAddress } from '@/app/_words/address';
import { whyTold } from '@/app/_words/why';
import { words } from '@/app/_words/words';
import { inOrder } from '@/app/_words/in-order';
import type { TechnicianFigures } from '@/lib/assess';

type Part = 'repeatability' | 'setting' | 'bias';

/** One figure of every technician, in the order of their codes. */
export function technicianEstimates(technicians: readonly TechnicianFigures[], part: Part): Estimate[] {
  return [...technicians]
    .sort((a, b) => inOrder(a.technician, b.technician))
    .map((one) => ({
      key: one.technician,
      name: (
        <Link href={technicianAddress(one.technician)} prefetch={false}>
          {one.technician}
        </Link>
      ),
      ...estimateOf(one, part),
    }));
}

/** What a figure is and what it rests on. */
export function estimateOf(one: TechnicianFigures, part: Part): Omit<Estimate, 'key' | 'name'> {
  const t = words('hand');
  const setups = t('rests.setups', { n: one.setups });
  if (part === 'bias') {
    const { mean, low, high, why } = one.bias;
    return { value: mean, low, high, why: whyTold(why), rests: setups };
  }
  const { sd, low, high, df, why } = one[part];
  return {
    value: sd,
    low,
    high,
    why: whyTold(why),
    rests: part === 'repeatability' && df !== null ? t('rests.repeats', { n: Math.round(df) }) : setups,
  };
}
