import type { Job } from '@/lib/measure/types';
import type { RoundVerdict } from '../types';
import { gatherDigits } from './gather/digits';
import type { RoundContext } from './gather/context';
import { gatherHangings } from './gather/hangings';
import { gatherLengths, gatherPointers, type TramLength } from './gather/lengths';
import { gatherOrder } from './gather/order';
import { gatherRepeats } from './gather/repeats';
import { Sheaf } from './gather/sheaf';
import { gatherSlips } from './gather/slips';
import type { HabitTally } from './tally';

/**
 * One job's tally for each technician who hung a gauge in it. `verdicts` are those on the job's rounds (a round
 * without one shows no slips); `firsts` are the job's first readings (`firstReadings`): without them dimensions that
 * were read more than once do not count for last digits. The job is the unit: what is in it goes together.
 */
export function tallyHabits(
  job: Job,
  verdicts: readonly RoundVerdict[],
  firsts: ReadonlyMap<string, number> = new Map(),
): Map<string, HabitTally> {
  const sheaves = new Map<string, Sheaf>();
  const sheafOf = (technician: string): Sheaf => {
    let sheaf = sheaves.get(technician);
    if (sheaf === undefined) sheaves.set(technician, (sheaf = new Sheaf()));
    return sheaf;
  };
  const lengths: TramLength[] = [];
  for (const round of job.rounds) {
    const verdict =
      verdicts.find(({ stage, attempt }) => stage === round.stage && attempt === round.attempt) ?? null;
    const context: RoundContext = { job, round, verdict, firsts, sheafOf, known: new Map() };
    for (const { technician } of round.setups) sheafOf(technician).tally.setups++;
    gatherSlips(context);
    gatherHangings(context);
    gatherOrder(context);
    gatherLengths(context, lengths);
    gatherDigits(context);
    gatherRepeats(context);
  }
  gatherPointers(lengths, sheafOf);
  return new Map(
    [...sheaves].map(([technician, sheaf]) => {
      sheaf.tally.jobs = 1;
      return [technician, sheaf.finish()];
    }),
  );
}
