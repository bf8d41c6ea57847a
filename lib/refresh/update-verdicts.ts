import { assessRound, type RoundVerdict } from '@/lib/assess';
import type { Dimension, Job } from '@/lib/measure';
import { loadJobs, roundsWithoutVerdict, saveRoundVerdicts, sheetBook, type ShopId } from '@/lib/store';
import { asJson, type StoredFit } from './stored-fit';
import { unreadLengths } from './unread-lengths';

const JOBS_AT_ONCE = 100;

/**
 * Judges every round that has no verdict by this fit yet.
 * @returns how many were judged.
 */
export async function updateVerdicts(shop: ShopId, fit: StoredFit): Promise<number> {
  const waiting = await roundsWithoutVerdict(shop, fit.id);
  const versions = new Map(waiting.map((round) => [keyOf(round), round.version]));
  const jobs = [...new Set(waiting.map(({ job }) => job))];
  const sheets = await sheetBook(shop);
  let judged = 0;
  for (let start = 0; start < jobs.length; start += JOBS_AT_ONCE) {
    const loaded = await loadJobs(shop, { jobs: jobs.slice(start, start + JOBS_AT_ONCE) });
    const verdicts = loaded.flatMap((job) => judge(job, fit, versions, sheets));
    await saveRoundVerdicts(shop, fit.id, verdicts);
    judged += verdicts.length;
  }
  return judged;
}

function judge(
  job: Job,
  { learned }: StoredFit,
  versions: ReadonlyMap<string, number>,
  sheets: ReadonlyMap<string, readonly Dimension[]>,
) {
  return job.rounds.flatMap((round) => {
    const version = versions.get(keyOf(round));
    if (version === undefined) return [];
    const verdict: RoundVerdict = assessRound(round, learned, { unread: unreadLengths(round, sheets) });
    return [{ ...verdict, document: asJson(verdict), version }];
  });
}

const keyOf = ({ job, stage, attempt }: { job: string; stage: string; attempt: number }) =>
  JSON.stringify([job, stage, attempt]);
