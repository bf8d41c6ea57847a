import { inParts } from '@/lib/measure/in-parts';
import type { Round } from '@/lib/measure/types';
import type { Learned } from '../cause/learned';
import type { SearchEffort } from '../cause/search';
import { expectRound } from './expect';
import { addTally, emptyTally, type Tally } from './tally';

/** One pass of the fit: what these rounds say of the parameters, seen with what was learned by the pass before. */
export interface Pass<Looked = Round> {
  rounds: readonly Looked[];
  learned: Learned;
  effort: SearchEffort;
}

/** Rounds of one part. A sum is made part by part wherever it is made, so that its last digit is the same. */
const PART = 40;

/** The pass in parts, each of which can be worked out by itself. */
export function partsOfPass<Looked>({ rounds, ...pass }: Pass<Looked>): Pass<Looked>[] {
  return inParts(rounds, PART).map((own) => ({ ...pass, rounds: own }));
}

/** What one part says. */
export function tallyPart({ rounds, learned, effort }: Pass): Tally {
  const tally = tallyFor(learned);
  for (const round of rounds) expectRound(round, learned, effort, tally);
  return tally;
}

/** What all parts say, in their order. */
export function sumOfParts({ learned }: Pick<Pass, 'learned'>, parts: readonly Tally[]): Tally {
  const sum = tallyFor(learned);
  for (const part of parts) addTally(sum, part);
  return sum;
}

const tallyFor = (learned: Learned): Tally =>
  emptyTally(learned, Object.keys(learned.technicians), Object.keys(learned.gauges));
