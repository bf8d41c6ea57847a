import type { Crew } from '@/lib/assess/crew/crew';
import { loadJobs, roundsWithoutProof, saveRoundProofs, type ShopId } from '@/lib/store';
import { inTurns } from './in-turns';
import type { StoredFit } from './stored-fit';
import { WaitingRounds } from './waiting-rounds';

/** Grows when another calculation makes what is kept; rows of another format are made again. */
export const PROOFS_FORMAT = 1;

/**
 * Looks every round through, once for each change of it, for heights whose cause was proved, and keeps what this
 * fit had said of them before the check. What was said stays as it was said: a later fit does not change it.
 * @param ahead the fit was made before these rounds, or what was recorded of them, came.
 * @returns how many rounds were looked through.
 */
export async function updateProofs(
  shop: ShopId,
  { learned }: StoredFit,
  crew: Crew,
  ahead: boolean,
): Promise<number> {
  const waiting = new WaitingRounds(await roundsWithoutProof(shop, PROOFS_FORMAT));
  let looked = 0;
  await inTurns(waiting.jobs(), {
    take: async (jobs) => waiting.of(await loadJobs(shop, { jobs: [...jobs] })),
    work: (rounds) => crew.foretell({ rounds: rounds.map(({ round }) => round), learned }),
    keep: async (rounds, foretold) => {
      const proofs = rounds.map(({ round: { job, stage, attempt }, version }, i) => ({
        job,
        stage,
        attempt,
        version,
        ahead,
        heights: foretold[i] ?? [],
      }));
      await saveRoundProofs(shop, PROOFS_FORMAT, proofs);
      looked += proofs.length;
    },
  });
  return looked;
}
