import { note } from '@/lib/observe';
import { roundsWithoutVerdict, type ShopId } from '@/lib/store';
import { followJob } from './follow-job';
import { refreshSoon } from './refresh-soon';
import { readFit } from './stored-fit';

/** Rounds that somebody waits for: each takes some ten milliseconds, in which no page is answered. */
const FEW_ROUNDS = 10;

/**
 * Has the verdicts of what somebody changed follow before the answer, and all other figures soon, behind the pages.
 * @param job the number of the job that was changed; where it is not said, all rounds that wait, if they are few.
 */
export async function followNow(shop: ShopId, job?: string): Promise<void> {
  const program = process.env.REHANG_PROGRAM;
  try {
    // Told by the process that listens. Without it everything follows behind the pages.
    if (program !== undefined)
      for (const one of job === undefined ? await fewWaiting(shop) : [job])
        await followJob(shop, one, program);
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
