import { guardBand, type BodyPrior, type GuardBand } from '@/lib/assess/measuring-risk';
import type { SdEstimate } from '@/lib/assess';

/** Of the dimensions accepted, no more than this share may truly be out. */
export const WANTED_RISK = 0.05;
/** Common practice where the sheet states none, mm. */
export const USUAL_TOLERANCE = 3;

export interface PlaceGuard {
  place: (typeof PLACES)[number]['place'];
  /** Standard uncertainty of one recorded height there, mm. */
  uncertainty: number;
  guard: GuardBand;
}

/** Heights by their levers over the front and rear zero station: midway between them, and half a span beyond one. */
const PLACES = [
  { place: 'midway', levers: [0.5, 0.5] },
  { place: 'beyond', levers: [-0.5, 1.5] },
] as const;

/**
 * How far inside the tolerance a height must lie where an ordinary hand of this shop read it once: its own setting and
 * reading, and those of both zero gauges by their levers. Null where the shop's scatter is not known.
 */
export function guardBands(
  shop: { setting: SdEstimate; repeatability: SdEstimate },
  prior: BodyPrior,
): PlaceGuard[] | null {
  const [setting, reading] = [shop.setting.sd, shop.repeatability.sd];
  if (setting === null || reading === null) return null;
  return PLACES.map(({ place, levers: [front, rear] }) => {
    const spread = 1 + front ** 2 + rear ** 2;
    const uncertainty = Math.sqrt(spread * setting ** 2 + reading ** 2);
    const question = { tolerance: USUAL_TOLERANCE, uncertainty, prior, spread };
    return { place, uncertainty, guard: guardBand(question, WANTED_RISK) };
  });
}
