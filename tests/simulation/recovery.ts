import {
  gaugeBias,
  type Learned,
  MeasuredSums,
  settingOf,
  technicianBias,
  technicianFigures,
} from '@/lib/assess';
import type { Job } from '@/lib/measure/types';
import type { SimulatedShop } from './shop';

/** One parameter that a shop was simulated with, and what was learned of it. */
export interface Recovered {
  what: 'reading' | 'setting' | 'bias' | 'gauge bias';
  who: string;
  truth: number;
  estimate: number;
  low: number;
  high: number;
}

/** Reading sd, setting sd and bias of each technician, and the bias of each gauge, with their 95 % intervals. */
export function recovered(shop: SimulatedShop, jobs: readonly Job[], learned: Learned): Recovered[] {
  const found: Recovered[] = [];
  const add = (
    what: Recovered['what'],
    who: string,
    truth: number,
    estimate: number | null | undefined,
    { low, high }: { low: number | null; high: number | null },
  ): void => {
    if (estimate === null || estimate === undefined || low === null || high === null) return;
    found.push({ what, who, truth, estimate, low, high });
  };
  const figures = technicianFigures(MeasuredSums.of(jobs), learned);
  const met = shop.technicians.filter(({ code }) => figures.some((one) => one.technician === code));
  const mean = met.reduce((sum, one) => sum + one.bias, 0) / met.length;
  for (const technician of met) {
    const repeat = figures.find((one) => one.technician === technician.code)?.repeatability;
    if (repeat) add('reading', technician.code, technician.reading, repeat.sd, repeat);
    const setting = settingOf(learned, technician.code);
    add('setting', technician.code, technician.setting, setting.sd, setting);
    const bias = technicianBias(learned, technician.code);
    add('bias', technician.code, technician.bias - mean, bias.mean, bias);
  }
  for (const gauge of shop.gauges) {
    const bias = gaugeBias(learned, gauge.tag);
    add('gauge bias', gauge.tag, gauge.bias, bias.mean, bias);
  }
  return found;
}

/** Share of the intervals that hold the truth. */
export const coverage = (all: readonly Recovered[]): number =>
  all.filter(({ truth, low, high }) => low <= truth && truth <= high).length / all.length;
