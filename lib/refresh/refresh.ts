import { MeasuredSums } from '@/lib/assess';
import { learnTogether, withCrew } from '@/lib/assess/crew';
import { atWork } from '@/lib/assess/answers';
import { inputsVersion, loadJobs, roundsWithoutVerdict, shopOfId, type ShopId } from '@/lib/store';
import { dueToLearn } from './due-to-learn';
import { figuresOf } from './figures';
import { MadeFrom } from './made-from';
import { keepFit, readFit, type StoredFit } from './stored-fit';
import { askAnew } from './update-answers';
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
    await finish(shop, fit);
    return;
  }
  const rounds = fit === null ? null : await followRounds(shop, fit);
  if (fit !== null && rounds !== null) {
    const asked = await askAnew(shop, fit);
    const measured = asked.standing.measured();
    if (!dueToLearn(fit, { rounds, measured })) {
      const unlearned = fit.unlearned + rounds;
      const newer = {
        inputsVersion: version,
        figures: figuresOf(measured, fit.learned, asked.questions.technicianRates(asked.standing)),
        unlearned,
      };
      // Where somebody else kept answers meanwhile, what they left waits for the next time.
      await asked.keep(fit, newer);
      return;
    }
  }
  await learnAnew(shop, program, version, say);
}

/** Does what an earlier refresh was broken off before. */
async function finish(shop: ShopId, fit: StoredFit): Promise<void> {
  const waiting = await roundsWithoutVerdict(shop, fit.id);
  await withCrew(waiting.length, async (crew) => {
    await updateVerdicts(shop, fit, waiting, crew);
    await updateProofs(shop, fit, crew, false);
  });
  const timeZone = (await shopOfId(shop))?.timeZone ?? 'UTC';
  if ((await MadeFrom.of(shop, fit, timeZone)).revision === null) await (await askAnew(shop, fit)).keep(fit);
}

async function learnAnew(
  shop: ShopId,
  program: string,
  version: number,
  say: (line: string) => void,
): Promise<void> {
  const jobs = await loadJobs(shop);
  if (jobs.length === 0) return;
  say(`Learning from ${jobs.length} jobs …`);
  const rounds = jobs.reduce((sum, job) => sum + job.rounds.length, 0);
  const fresh = await withCrew(rounds, async (crew) => {
    const learned = await learnTogether(crew, jobs);
    const figures = figuresOf(MeasuredSums.of(jobs), learned);
    const work = atWork(jobs, learned);
    const fit = await keepFit(shop, { inputsVersion: version, program, learned, atWork: work, figures });
    const judged = await updateVerdicts(shop, fit, await roundsWithoutVerdict(shop, fit.id), crew);
    await updateProofs(shop, fit, crew, false);
    say(`${judged} rounds judged.`);
    return fit;
  });
  await (await askAnew(shop, fresh)).keep(fresh);
}

/**
 * Judges new and changed rounds by what was learned before them, where they are few, and keeps what it foretold. The
 * work is that of these rounds, however long the history is.
 * @returns how many rounds waited; null where they are so many that it is due to learn anew.
 */
export async function followRounds(shop: ShopId, fit: StoredFit): Promise<number | null> {
  const waiting = await roundsWithoutVerdict(shop, fit.id);
  const few = waiting.length <= FEW_ROUNDS;
  await withCrew(waiting.length, async (crew) => {
    if (few) await updateVerdicts(shop, fit, waiting, crew);
    // Before learning from them: what the earlier fit says of these rounds it says without having seen them.
    await updateProofs(shop, fit, crew, true);
  });
  return few ? waiting.length : null;
}
