import type { Foretold } from '@/lib/assess/calibration';
import { roundAnchor } from '@/app/_words/address';
import type { StoredProof } from '@/lib/access';

/** Proofs as the calculation takes them: heights of one round belong together. */
export const asForetold = (proofs: readonly StoredProof[]): (Foretold & { month: string })[] =>
  proofs.map(({ job, stage, attempt, p, proved, month }) => ({
    p,
    proved,
    month,
    round: `${job} ${roundAnchor(stage, attempt)}`,
  }));
