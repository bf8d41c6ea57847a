import { alone } from '@/lib/assess/crew/crew';
import { roundsWithoutVerdict, type ShopId } from '@/lib/store';
import { countUnlearned, readFit } from './stored-fit';
import { updateOutcomes } from './update-outcomes';
import { updateProofs } from './update-proofs';
import { updateVerdicts } from './update-verdicts';

/**
 * Brings the rollup and the verdicts of one job up to date at once, by what was learned before: whoever changed a
 * reading or told what a re-check showed sees what comes of it, however long learning anew takes behind the pages.
 * The work is that of this job, on this thread. Nothing happens before the first fit, or where another program made it.
 * @param program stamp of the code that computes, as `refresh` takes it.
 */
export async function followJob(shop: ShopId, job: string, program: string): Promise<void> {
  await updateOutcomes(shop, job);
  const fit = await readFit(shop);
  if (fit?.program !== program) return;
  const waiting = await roundsWithoutVerdict(shop, fit.id, job);
  if (waiting.length === 0) return;
  await updateVerdicts(shop, fit, waiting, alone);
  await updateProofs(shop, fit, alone, true, job);
  await countUnlearned(shop, fit.id, waiting.length);
}
