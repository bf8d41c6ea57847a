import { note } from '@/lib/observe';
import { roundsWithoutVerdict, type ShopId } from '@/lib/store';
import { figuresSoon } from './figures-soon';
import { followJob } from './follow-job';
import { refreshSoon } from './refresh-soon';
import { readFit } from './stored-fit';

/** Rounds that somebody waits for: each takes some ten milliseconds, in which no page is answered. */
const FEW_ROUNDS = 10;

/**
 * Has the verdicts of what somebody changed follow before the answer, and all other figures soon after it.
 * @param job the number of the job that was changed; where it is not said, all rounds that wait, if they are few.
 */
export async function followNow(shop: ShopId, job?: string): Promise<void> {
  const program = process.env.REHANG_PROGRAM;
  // Told by the process that listens. Without it everything follows behind the pages.
  if (program === undefined) return refreshSoon(shop);
  try {
    const jobs = job === undefined ? await fewWaiting(shop) : [job];
    for (const one of jobs) await followJob(shop, one, program);
    if (jobs.length > 0) return figuresSoon(shop, jobs, program);
  } catch (error) {
    // What was changed is stored all the same, and follows behind the pages.
    note.refreshFailed({ shop }, error);
  }
  refreshSoon(shop);
}

async function fewWaiting(shop: ShopId): Promise<string[]> {
  const fit = await readFit(shop);
  if (fit === null) return [];
  const waiting = await roundsWithoutVerdict(shop, fit.id);
  return waiting.length > FEW_ROUNDS ? [] : [...new Set(waiting.map(({ job }) => job))];
}
