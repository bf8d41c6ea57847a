import type { z } from 'zod';
import { json, problem } from '../problem';
import type { taken } from '../schemas/answers';
import type { Arrived, TakenFile } from './take-file';

/** What the sender is told: 201 where something was added, 200 where not, 422 with every fault. */
export function answerFor(file: Arrived, { summary, stored, faults, faultCount }: TakenFile): Response {
  if (faultCount > 0) {
    const count = faultCount === 1 ? 'one fault' : `${faultCount} faults`;
    return problem(422, `The file has ${count}; nothing of it was stored.`, {
      fields: { faults, fault_count: faultCount },
    });
  }
  const body: z.infer<typeof taken> = {
    dry_run: file.dryRun,
    file: {
      name: file.name,
      bytes: file.bytes,
      sha256: file.sha256,
      readings: summary.readings,
      jobs: summary.jobs,
      rounds: summary.rounds,
      setups: summary.setups,
      from: isoOf(summary.from),
      to: isoOf(summary.to),
      ignored_columns: summary.ignoredColumns,
      notes: summary.notes,
    },
    stored: stored && {
      added: stored.added,
      already_there: stored.alreadyThere,
      causes: stored.causes,
      jobs: stored.jobs,
      new_jobs: stored.newJobs,
      new_setups: stored.newSetups,
      new_sheets: stored.newSheets,
      new_people: stored.newPeople,
      new_gauges: stored.newGauges,
    },
  };
  return json(body, stored !== null && stored.jobs.length > 0 ? 201 : 200);
}

const isoOf = (time: number | null) => (time === null ? null : new Date(time).toISOString());
