import { statements } from '@/lib/store/connection/database';
import { writeJobOutcomes, type DatedOutcome } from '@/lib/store/outcomes/job-outcomes';
import { writeRoundProofs } from '@/lib/store/proofs/save-round-proofs';
import type { Json, RoundProofRecord, ShopId } from '@/lib/store/types';
import { restate } from './fit';
import { writeRoundVerdicts, type DatedVerdict } from './save-round-verdicts';

/** What follows from a change of a few rounds. */
export interface Followed {
  outcomes: readonly DatedOutcome[];
  /** By the fit that they were judged by; null where there is none yet. */
  judged: {
    fit: number;
    verdicts: readonly DatedVerdict[];
    proofs: { format: number; rounds: readonly RoundProofRecord[] };
    /** What is said of the fit from now on. */
    restated: (parameters: Json) => Json;
  } | null;
}

/** Keeps rollup, verdicts and proofs as `saveJobOutcomes`, `saveRoundVerdicts` and `saveRoundProofs` do, in one transaction. */
export async function saveFollowed(shop: ShopId, { outcomes, judged }: Followed): Promise<void> {
  if (outcomes.length === 0 && judged === null) return;
  await statements(shop, async (within) => {
    if (outcomes.length > 0) await writeJobOutcomes(within, shop, outcomes);
    if (judged === null) return;
    const { fit, verdicts, proofs, restated } = judged;
    if (verdicts.length > 0) await writeRoundVerdicts(within, shop, fit, verdicts);
    if (proofs.rounds.length > 0) await writeRoundProofs(within, shop, proofs.format, proofs.rounds);
    await restate(within, shop, fit, restated);
  });
}
