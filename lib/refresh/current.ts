import type { Learned, RoundVerdict } from '@/lib/assess';
import { frozen, onceFor } from '@/lib/memory';
import { verdictsFor, type ShopId, type StoredVerdict, type VerdictFilter } from '@/lib/store';
import type { ShopFigures } from './figures';
import { readFitWithAge, type StoredFit } from './stored-fit';

/** When figures were worked out and what they rest on, and whether readings have come in since. */
export interface Dated {
  /** When the figures were worked out last. */
  fittedAt: number;
  stale: boolean;
  /** When hands, gauges and rates were learned, from how many rounds, and how many are new or changed since. */
  learnedAt: number;
  learnedFrom: number;
  unlearned: number;
}

const datedOf = (fit: StoredFit & { stale: boolean }): Dated => ({
  fittedAt: fit.workedOutAt,
  stale: fit.stale,
  learnedAt: fit.learnedAt,
  learnedFrom: fit.learned.rounds,
  unlearned: fit.unlearned,
});

/** What the shop has learned; null before the first fit. */
export async function currentLearned(shop: ShopId): Promise<(Dated & { learned: Learned }) | null> {
  const fit = await readFitWithAge(shop);
  return fit && { learned: fit.learned, ...datedOf(fit) };
}

/** The figures of technicians, gauges and the shop; null before the first fit. */
export async function currentFigures(shop: ShopId): Promise<(Dated & { figures: ShopFigures }) | null> {
  const fit = await readFitWithAge(shop);
  return fit && { figures: fit.figures, ...datedOf(fit) };
}

/** Verdicts as assessed, newest round first. */
export async function roundVerdicts(
  shop: ShopId,
  filter: VerdictFilter,
): Promise<readonly (RoundVerdict & { at: number })[]> {
  return verdictsOf(await verdictsFor(shop, filter));
}

/** The document is the verdict that this program stored. */
const verdictsOf = onceFor((stored: readonly StoredVerdict[]): readonly (RoundVerdict & { at: number })[] =>
  frozen(stored.map(({ document, at }) => ({ at, ...(document as unknown as RoundVerdict) }))),
);
