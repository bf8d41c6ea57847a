import { learn } from '@/lib/assess';
import { hasFitAnswers, inputsVersion, loadJobs, roundsWithoutVerdict, type ShopId } from '@/lib/store';
import { dueToLearn } from './due-to-learn';
import { figuresOf } from './figures';
import { keepFit, keepFollowed, readFit, type StoredFit } from './stored-fit';
import { updateAnswers } from './update-answers';
import { updateOutcomes } from './update-outcomes';
import { updateProofs } from './update-proofs';
import { updateVerdicts } from './update-verdicts';

/** With more rounds than this waiting, their verdict comes with the new fit only. */
const FEW_ROUNDS = 50;

/**
 * Brings everything that pages read up to date with the readings: rollups at once, verdicts on a few new rounds
 * by the fit there is and what it foretold of them. Then, where `dueToLearn`, a new fit and the verdicts by it;
 * else figures and answers by what was learned before. Nothing happens where all is up to date.
 * @param program stamp of the code that computes; a fit by another program is made again.
 */
export async function refresh(
  shop: ShopId,
  program: string,
  say: (line: string) => void = () => undefined,
): Promise<void> {
  await updateOutcomes(shop);
  const version = await inputsVersion(shop);
  const kept = await readFit(shop);
  const fit = kept?.program === program ? kept : null;
  if (fit?.inputsVersion === version) {
    await updateVerdicts(shop, fit);
    await updateProofs(shop, fit, false);
    // Absent only where an earlier refresh was broken off after its verdicts.
    if (!(await hasFitAnswers(shop, fit.id))) await updateAnswers(shop, fit, await loadJobs(shop));
    return;
  }
  if (fit !== null) {
    const unlearned = await followRounds(shop, fit);
    if (unlearned !== null) {
      const jobs = await loadJobs(shop);
      const newer = { inputsVersion: version, figures: figuresOf(jobs, fit.learned), unlearned };
      await updateAnswers(shop, await keepFollowed(shop, fit, newer), jobs);
      return;
    }
  }
  const jobs = await loadJobs(shop);
  if (jobs.length === 0) return;
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

/**
 * Judges new and changed rounds by what was learned before them, where they are few, and keeps what it foretold. The
 * work is that of these rounds, however long the history is.
 * @returns how many rounds the fit has not learned from by now; null where it is due to learn anew.
 */
export async function followRounds(shop: ShopId, fit: StoredFit): Promise<number | null> {
  const waiting = await roundsWithoutVerdict(shop, fit.id);
  if (waiting.length > FEW_ROUNDS) {
    await updateProofs(shop, fit, true);
    return null;
  }
  await updateVerdicts(shop, fit);
  // Before learning from them: what the earlier fit says of these rounds it says without having seen them.
  await updateProofs(shop, fit, true);
  const numbers = [...new Set(waiting.map(({ job }) => job))];
  const jobs = numbers.length === 0 ? [] : await loadJobs(shop, { jobs: numbers });
  if (dueToLearn(fit, { rounds: waiting.length, jobs })) return null;
  return fit.unlearned + waiting.length;
}
