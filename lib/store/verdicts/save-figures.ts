import { statements } from '@/lib/store/connection/database';
import { writeJobShares, type NewJobShare } from '@/lib/store/shares/save-job-shares';
import type { Json, ShopId } from '@/lib/store/types';
import { follow, type FitTexts } from './fit';
import { writeFitAnswers, type ChangedAnswers } from './write-fit-answers';

/** All figures by one fit after a few jobs changed. */
export interface ChangedFigures {
  fit: number;
  shares: { madeBy: string; changed: readonly NewJobShare[] };
  answers: ChangedAnswers;
  /** What the answers were made from, as it was read before: where it is another now, nothing is kept. */
  madeFrom: { question: string; before: Json };
  stored: FitTexts;
}

/**
 * Keeps what jobs add, the answers and the fit's figures, all or nothing.
 * @returns whether it was kept: not where somebody else kept answers meanwhile.
 * @throws RangeError as `followFit`.
 */
export function saveFigures(shop: ShopId, figures: ChangedFigures): Promise<boolean> {
  const { fit, shares, answers, madeFrom, stored } = figures;
  return statements(shop, async (within) => {
    const [row] = await within.$queryRaw<{ document: Json }[]>`
      SELECT "document" FROM "FitAnswer" WHERE "fitId" = ${fit} AND "question" = ${madeFrom.question}`;
    if (JSON.stringify(row?.document ?? null) !== JSON.stringify(madeFrom.before)) return false;
    await writeJobShares(within, shop, fit, shares.madeBy, shares.changed);
    await writeFitAnswers(within, shop, fit, answers);
    await follow(within, shop, fit, stored);
    return true;
  });
}
