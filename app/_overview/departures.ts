import { signedMillimetres, millimetres } from '@/app/_words/numbers';
import type { ShopFigures } from '@/lib/refresh';

/** A technician's figure whose whole interval lies apart from the shop's. */
export interface Departure {
  technician: string;
  of: 'repeatability' | 'setting' | 'bias';
  words: string;
}

/**
 * Who is apart from the shop beyond chance: repeatability or setting with an interval wholly above the shop's own
 * figure, or a bias whose interval does not hold zero. In the order of the technicians' codes.
 */
export function departuresFrom(figures: ShopFigures): Departure[] {
  const { repeatability, setting } = figures.shop;
  return [...figures.technicians]
    .sort((a, b) => a.technician.localeCompare(b.technician))
    .flatMap((one) => {
      const found: Departure[] = [];
      if (above(one.repeatability.low, repeatability.high)) {
        found.push({
          technician: one.technician,
          of: 'repeatability',
          words: `Reads less repeatably than the shop: ${sd(one.repeatability)} against ${sd(repeatability)} when reading again.`,
        });
      }
      if (above(one.setting.low, setting.high)) {
        found.push({
          technician: one.technician,
          of: 'setting',
          words: `Sets gauges with more scatter than the shop: ${sd(one.setting)} against ${sd(setting)}. A setting trial would show which gauges.`,
        });
      }
      const { mean, low, high } = one.bias;
      if (mean !== null && low !== null && high !== null && (low > 0 || high < 0)) {
        found.push({
          technician: one.technician,
          of: 'bias',
          words: `Reads ${mean > 0 ? 'high' : 'low'} against the mean of all technicians: ${signedMillimetres(mean, 2)} (${signedMillimetres(low, 2)} to ${signedMillimetres(high, 2)}).`,
        });
      }
      return found;
    });
}

function above(low: number | null, shopHigh: number | null): boolean {
  return low !== null && shopHigh !== null && low > shopHigh;
}

function sd(estimate: { sd: number | null }): string {
  return estimate.sd === null ? 'not known' : millimetres(estimate.sd, 2);
}
