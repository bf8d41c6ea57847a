import { inputsVersion, type ShopId } from '@/lib/store';
import { dueToLearn } from './due-to-learn';
import { figuresOf } from './figures';
import { readFit } from './stored-fit';
import { askAnew } from './update-answers';

/**
 * Brings all figures and answers up to date after a few jobs changed whose verdicts follow already. The work is that
 * of the months in which these jobs count: some ten milliseconds, in pieces, so that pages are answered between.
 * @param jobs the numbers of all jobs that changed since the figures were worked out.
 * @param changes how many changes they stand for: where there were others, nothing is done.
 * @param program stamp of the code that computes, as `refresh` takes it.
 * @returns whether figures are up to date: not where it is due to learn, or something else waits.
 */
export async function followFigures(
  shop: ShopId,
  jobs: readonly string[],
  changes: number,
  program: string,
): Promise<boolean> {
  const [version, fit] = await Promise.all([inputsVersion(shop), readFit(shop)]);
  if (fit?.program !== program || fit.inputsVersion + changes !== version) return false;
  const asked = await askAnew(shop, fit, jobs);
  if (asked === null) return false;
  const measured = asked.standing.measured();
  // The rounds of these jobs were counted when they were judged.
  if (dueToLearn(fit, { rounds: 0, measured })) return false;
  const figures = figuresOf(measured, fit.learned, asked.questions.technicianRates(asked.standing));
  return asked.keep(fit, { inputsVersion: version, figures, unlearned: fit.unlearned });
}
