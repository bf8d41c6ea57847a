import { onceFor } from '@/app/_shop/once-for';
import {
  brierByMonth,
  brierScore,
  reliability,
  type Foretold,
  type ReliabilityBin,
} from '@/lib/assess/calibration';
import { CAUSES, type Cause } from '@/lib/measure';
import { roundAnchor } from '@/app/_words/address';
import type { StoredProof } from '@/lib/access';

export type ForetoldThen = Foretold & { month: string };

/** Proofs as the calculation takes them: heights of one round belong together. */
export const asForetold = onceFor((proofs: readonly StoredProof[]): readonly ForetoldThen[] =>
  proofs.map(({ job, stage, attempt, p, proved, month }) => ({
    p,
    proved,
    month,
    round: `${job} ${roundAnchor(stage, attempt)}`,
  })),
);

/** How well it was foretold: over all causes, of each, and month by month. */
export const scoresOf = onceFor((heights: readonly ForetoldThen[]) => ({
  all: brierScore(heights),
  byCause: CAUSES.map((cause) => ({ cause, score: brierScore(heights, cause) })),
  months: brierByMonth(heights),
}));

/** How what was said of each cause compares with what proved so. */
export const reliabilityOf = onceFor(
  (heights: readonly ForetoldThen[]) =>
    Object.fromEntries(CAUSES.map((cause) => [cause, reliability(heights, cause)])) as Record<
      Cause,
      ReliabilityBin[]
    >,
);
