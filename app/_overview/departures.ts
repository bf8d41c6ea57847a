import type { SdEstimate } from '@/lib/assess';
import { bareMillimetres, millimetres, signedMillimetres } from '@/app/_words/numbers';
import type { ShopFigures } from '@/lib/access';
import { words } from '@/app/_words/words';

/** A technician's figure whose whole interval lies apart from the shop's. */
export interface Departure {
  technician: string;
  of: 'repeatability' | 'setting' | 'bias';
  words: string;
}

/** A bias smaller than this is too small to act on, mm: a tenth of the usual tolerance. */
const BIAS_THAT_MATTERS = 0.3;

/** Scatter less than this many times the shop's is too near to it to act on. */
const SCATTER_THAT_MATTERS = 1.2;

/**
 * Who is apart from the shop beyond chance and by enough to matter: repeatability or setting with an interval wholly
 * above the shop's, or a bias whose interval does not hold zero. In the order of the technicians' codes.
 */
export function departuresFrom(figures: ShopFigures): Departure[] {
  const t = words('overview');
  const { repeatability, setting } = figures.shop;
  return [...figures.technicians]
    .sort((a, b) => a.technician.localeCompare(b.technician))
    .flatMap((one) => {
      const found: Departure[] = [];
      if (apart(one.repeatability, repeatability)) {
        found.push({
          technician: one.technician,
          of: 'repeatability',
          words: t('departures.repeatability', { own: sd(one.repeatability), shop: sd(repeatability) }),
        });
      }
      if (apart(one.setting, setting)) {
        found.push({
          technician: one.technician,
          of: 'setting',
          words: t('departures.setting', { own: sd(one.setting), shop: sd(setting) }),
        });
      }
      const { mean, low, high } = one.bias;
      if (
        mean !== null &&
        low !== null &&
        high !== null &&
        (low > 0 || high < 0) &&
        Math.abs(mean) >= BIAS_THAT_MATTERS
      ) {
        found.push({
          technician: one.technician,
          of: 'bias',
          words: t(mean > 0 ? 'departures.high' : 'departures.low', {
            mean: signedMillimetres(mean, 2),
            from: signedMillimetres(low, 2),
            to: signedMillimetres(high, 2),
          }),
        });
      }
      return found;
    });
}

function apart(own: SdEstimate, shop: SdEstimate): boolean {
  if (own.sd === null || own.low === null || shop.sd === null || shop.high === null) return false;
  return own.low > shop.high && own.sd >= SCATTER_THAT_MATTERS * shop.sd;
}

/** `0.97 mm (0.93 to 1.01 mm)` */
function sd({ sd: value, low, high }: SdEstimate): string {
  const t = words('overview');
  if (value === null) return t('departures.notKnown');
  if (low === null || high === null) return millimetres(value, 2);
  return t('departures.interval', {
    value: millimetres(value, 2),
    low: bareMillimetres(low, 2),
    high: millimetres(high, 2),
  });
}
