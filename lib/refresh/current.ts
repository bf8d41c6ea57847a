import type { Learned, RoundVerdict } from '@/lib/assess';
import { verdictsFor, type ShopId, type VerdictFilter } from '@/lib/store';
import type { ShopFigures } from './figures';
import { readFitWithAge } from './stored-fit';

/** When something was learned, and whether readings have come in since. */
export interface Dated {
  fittedAt: number;
  stale: boolean;
}

/** What the shop has learned; null before the first fit. */
export async function currentLearned(shop: ShopId): Promise<(Dated & { learned: Learned }) | null> {
  const fit = await readFitWithAge(shop);
  return fit && { learned: fit.learned, fittedAt: fit.fittedAt, stale: fit.stale };
}

/** The figures of technicians, gauges and the shop; null before the first fit. */
export async function currentFigures(shop: ShopId): Promise<(Dated & { figures: ShopFigures }) | null> {
  const fit = await readFitWithAge(shop);
  return fit && { figures: fit.figures, fittedAt: fit.fittedAt, stale: fit.stale };
}

/** Verdicts as assessed, newest round first. */
export async function roundVerdicts(
  shop: ShopId,
  filter: VerdictFilter,
): Promise<(RoundVerdict & { at: number })[]> {
  const stored = await verdictsFor(shop, filter);
  // The document is the verdict that this program stored.
  return stored.map(({ document, at }) => ({ ...(document as unknown as RoundVerdict), at }));
}
