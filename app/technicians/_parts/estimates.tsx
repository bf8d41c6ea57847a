import Link from 'next/link';
import type { Estimate } from '@/app/_figures/estimate-table';
import { technicianAddress } from '@/app/_words/address';
import { count } from '@/app/_words/numbers';
import type { TechnicianFigures } from '@/lib/assess';

type Part = 'repeatability' | 'setting' | 'bias';

/** One figure of every technician, in the order of their codes. */
export function technicianEstimates(technicians: readonly TechnicianFigures[], part: Part): Estimate[] {
  return [...technicians]
    .sort((a, b) => a.technician.localeCompare(b.technician, 'en', { numeric: true }))
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
  if (part === 'bias') {
    const { mean, low, high, why } = one.bias;
    return { value: mean, low, high, why, rests: count(one.setups, 'setup') };
  }
  const { sd, low, high, df, why } = one[part];
  return {
    value: sd,
    low,
    high,
    why,
    rests:
      part === 'repeatability' && df !== null ? count(Math.round(df), 'repeat') : count(one.setups, 'setup'),
  };
}
