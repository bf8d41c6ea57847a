import type { Job } from '@/lib/measure/types';
import type { Learned } from '../cause/learned';
import { learning, type LearnOptions, partsOfPass, sumOfParts } from '../learn';
import type { Crew } from './crew';

/** `learn`, with each pass worked out by the crew. */
export async function learnTogether(
  crew: Crew,
  jobs: readonly Job[],
  options?: LearnOptions,
): Promise<Learned> {
  const passes = learning(jobs, options);
  let step = passes.next();
  while (step.done !== true) {
    const pass = step.value;
    const parts = await Promise.all(partsOfPass(pass).map((part) => crew.tally(part)));
    step = passes.next(sumOfParts(pass, parts));
  }
  return step.value;
}
