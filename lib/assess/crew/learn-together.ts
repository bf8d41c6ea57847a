import type { Job } from '@/lib/measure/types';
import type { Learned } from '../cause/learned';
import { learningFrom, type LearnOptions, type Pass, partsOfPass, sumOfParts, type Tally } from '../learn';
import type { Crew } from './crew';

/** `learn`, with each pass worked out by the crew. */
export function learnTogether(crew: Crew, jobs: readonly Job[], options?: LearnOptions): Promise<Learned> {
  return passTogether(learningFrom(jobs, options), (part) => crew.tally(part));
}

/** Goes through the passes of `learning`, the parts of each worked out at once. */
export async function passTogether<Looked>(
  passes: Generator<Pass<Looked>, Learned, Tally>,
  tally: (part: Pass<Looked>) => Promise<Tally>,
): Promise<Learned> {
  let step = passes.next();
  while (step.done !== true) {
    const pass = step.value;
    const parts = await Promise.all(partsOfPass(pass).map(tally));
    step = passes.next(sumOfParts(pass, parts));
  }
  return step.value;
}
