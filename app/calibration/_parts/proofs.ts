import { frozen, onceFor } from '@/lib/memory';
import {
  brierByMonth,
  brierScore,
  calledHeights,
  provedOnly,
  reliability,
  type Foretold,
  type ReliabilityBin,
  roundsOf,
} from '@/lib/assess/calibration';
import { CAUSES, type Cause } from '@/lib/measure';
import { roundAnchor } from '@/app/_words/address';
import { CALLS } from '@/app/_words/verdicts';
import type { StoredProof } from '@/lib/access';

export type ForetoldThen = Foretold & { month: string };

/** How many heights were proved, in how many rounds, how many by a recorded re-check, and how many were foretold. */
export const countsOf = onceFor((proofs: readonly StoredProof[]) => {
  const proved = provedOnly(asForetold(proofs));
  return {
    heights: proofs.length,
    proved: proved.length,
    rounds: roundsOf(proved),
    recorded: proofs.filter(({ by }) => by === 'recorded').length,
    ahead: proofs.filter(({ ahead }) => ahead).length,
  };
});

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
export const scoresOf = onceFor((heights: readonly ForetoldThen[]) =>
  frozen({
    all: brierScore(heights),
    byCause: CAUSES.map((cause) => ({ cause, score: brierScore(heights, cause) })),
    months: brierByMonth(heights),
  }),
);

export type Scores = ReturnType<typeof scoresOf>;

/** Every call at a cost of missing damage, and what the heights proved to be. */
export const calledBy = (heights: readonly ForetoldThen[], missCost: number) => calledAt(heights)(missCost);

const calledAt = onceFor((heights: readonly ForetoldThen[]) => {
  let last: { missCost: number; rows: ReturnType<typeof rowsAt> } | null = null;
  const rowsAt = (missCost: number) => frozen(calledHeights(heights, CALLS, missCost));
  return (missCost: number) =>
    (last = last?.missCost === missCost ? last : { missCost, rows: rowsAt(missCost) }).rows;
});

/** How what was said of each cause compares with what proved so. */
export const reliabilityOf = onceFor(
  (heights: readonly ForetoldThen[]) =>
    frozen(Object.fromEntries(CAUSES.map((cause) => [cause, reliability(heights, cause)]))) as Record<
      Cause,
      ReliabilityBin[]
    >,
);
