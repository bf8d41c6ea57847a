import type { Setup } from '@/lib/measure';
import { updateOutcomes } from '@/lib/refresh/update-outcomes';
import {
  inputsVersion,
  loadJobs,
  roundsWithoutProof,
  roundsWithoutVerdict,
  saveFit,
  saveRoundProofs,
  saveRoundVerdicts,
  type HeightRecord,
  type Json,
} from '@/lib/store';

/**
 * Brings everything that is made from readings up to date, without learning anything: every height is called
 * sound. What the store says of what is out of date does not depend on what is made.
 */
export async function broughtUpToDate(shop: number, figures: Json = {}): Promise<void> {
  await updateOutcomes(shop);
  const fit = await saveFit(shop, { inputsVersion: await inputsVersion(shop), parameters: {}, figures });
  const jobs = await loadJobs(shop);
  const rounds = jobs.flatMap((job) => job.rounds);
  const waiting = await roundsWithoutVerdict(shop, fit.id);
  const verdicts = waiting.flatMap(({ job, stage, attempt, version }) => {
    const round = rounds.find((one) => one.job === job && one.stage === stage && one.attempt === attempt);
    if (round === undefined) return [];
    const judged = { decidable: true, why: null, pZeroMisset: 0, heights: round.setups.flatMap(heightsOf) };
    return [{ job, stage, attempt, version, ...judged, document: figures }];
  });
  await saveRoundVerdicts(shop, fit.id, verdicts);
  const unproved = await roundsWithoutProof(shop, 1);
  await saveRoundProofs(
    shop,
    1,
    unproved.map((round) => ({ ...round, ahead: false, heights: [] })),
  );
}

const heightsOf = ({ label, observations }: Setup): HeightRecord[] =>
  observations.flatMap(({ side, point, zero, deviation }) =>
    side === null
      ? []
      : [
          {
            ...{ setup: label, point, side, zero, deviation, misset: 0, body: deviation, signature: null },
            p: { neither: 1, gauge: 0, body: 0, both: 0 },
          },
        ],
  );
