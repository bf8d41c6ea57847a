import { foretoldHeights } from '@/lib/assess/calibration';
import type { Job } from '@/lib/measure';
import {
  loadJobs,
  roundsWithoutProof,
  saveRoundProofs,
  type RoundProofRecord,
  type ShopId,
} from '@/lib/store';
import type { StoredFit } from './stored-fit';

const JOBS_AT_ONCE = 100;

/** Grows when another calculation makes what is kept; rows of another format are made again. */
const FORMAT = 1;

/**
 * Looks every round through, once for each change of it, for heights whose cause was proved, and keeps what this
 * fit had said of them before the check. What was said stays as it was said: a later fit does not change it.
 * @param ahead the fit was made before these rounds, or what was recorded of them, came.
 * @returns how many rounds were looked through.
 */
export async function updateProofs(shop: ShopId, fit: StoredFit, ahead: boolean): Promise<number> {
  const waiting = await roundsWithoutProof(shop, FORMAT);
  const versions = new Map(waiting.map((round) => [keyOf(round), round.version]));
  const jobs = [...new Set(waiting.map(({ job }) => job))];
  for (let start = 0; start < jobs.length; start += JOBS_AT_ONCE) {
    const loaded = await loadJobs(shop, { jobs: jobs.slice(start, start + JOBS_AT_ONCE) });
    await saveRoundProofs(
      shop,
      FORMAT,
      loaded.flatMap((job) => proofsOf(job, fit, versions, ahead)),
    );
  }
  return waiting.length;
}

function proofsOf(
  job: Job,
  { learned }: StoredFit,
  versions: ReadonlyMap<string, number>,
  ahead: boolean,
): RoundProofRecord[] {
  return job.rounds.flatMap((round) => {
    const version = versions.get(keyOf(round));
    if (version === undefined) return [];
    const { stage, attempt } = round;
    return [{ job: round.job, stage, attempt, version, ahead, heights: foretoldHeights(round, learned) }];
  });
}

const keyOf = ({ job, stage, attempt }: { job: string; stage: string; attempt: number }) =>
  JSON.stringify([job, stage, attempt]);
