import { learn } from '@/lib/assess';
import { hasFitAnswers, inputsVersion, loadJobs, type ShopId } from '@/lib/store';
import { figuresOf } from './figures';
import { keepFit, readFit } from './stored-fit';
import { updateAnswers } from './update-answers';
import { updateOutcomes } from './update-outcomes';
import { updateProofs } from './update-proofs';
import { updateVerdicts } from './update-verdicts';

/** With more rounds than this waiting, their verdict comes with the new fit only. */
const FEW_ROUNDS = 50;

/**
 * Brings everything that pages read up to date with the readings: rollups at once, verdicts on a few new rounds
 * by the fit there is and what it foretold of them, then a new fit and the verdicts by it. Nothing happens where
 * all is up to date.
 * @param program stamp of the code that computes; a fit by another program is made again.
 */
export async function refresh(
  shop: ShopId,
  program: string,
  say: (line: string) => void = () => undefined,
): Promise<void> {
  await updateOutcomes(shop);
  const version = await inputsVersion(shop);
  const fit = await readFit(shop);
  if (fit !== null && fit.program === program && fit.inputsVersion === version) {
    await updateVerdicts(shop, fit);
    await updateProofs(shop, fit, false);
    // Absent only where an earlier refresh was broken off after its verdicts.
    if (!(await hasFitAnswers(shop, fit.id))) await updateAnswers(shop, fit, await loadJobs(shop));
    return;
  }
  const jobs = await loadJobs(shop);
  if (jobs.length === 0) return;
  if (fit !== null && fit.program === program) {
    await updateVerdicts(shop, fit, FEW_ROUNDS);
    // Before learning from them: what the earlier fit says of these rounds it says without having seen them.
    await updateProofs(shop, fit, true);
  }
  say(`Learning from ${jobs.length} jobs …`);
  const learned = learn(jobs);
  const fresh = await keepFit(shop, {
    inputsVersion: version,
    program,
    learned,
    figures: figuresOf(jobs, learned),
  });
  const rounds = await updateVerdicts(shop, fresh);
  await updateProofs(shop, fresh, false);
  say(`${rounds} rounds judged.`);
  await updateAnswers(shop, fresh, jobs);
}
