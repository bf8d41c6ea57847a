import type { Reading, Stage } from '@/lib/measure';
import type { BatchJob, BatchRound, BatchSetup } from './batch';

/** What lists show of a job, kept beside it so that they never count readings. */
export interface JobRollup {
  openedAt: number;
  lastReadAt: number;
  lastStage: Stage;
  lastAttempt: number;
  /** Code of whoever hung the first setup. */
  technician: string;
  rounds: number;
  setups: number;
  readings: number;
}

/** The first reading of a setup, stored or new; null where it has none. */
export function hungAt(setup: BatchSetup): number | null {
  return least(
    setup.known?.hungAt ?? null,
    addedIn(setup).map((reading) => reading.takenAt),
  );
}

/** Every reading of the setup that is to be stored. */
export function addedIn(setup: BatchSetup): Reading[] {
  return [...setup.observations.values()].flatMap((observation) => observation.added);
}

/** The setups of a round by time, then label. */
export function firstSetup(setups: readonly FirstSetup[]): FirstSetup | null {
  return setups.reduce<FirstSetup | null>((first, setup) => {
    if (first === null || setup.at < first.at) return setup;
    return setup.at === first.at && setup.label < first.label ? setup : first;
  }, null);
}

export interface FirstSetup {
  at: number;
  label: string;
  technician: string;
}

/** Setups of the job, stored and new, with the time each was hung. */
export function hungSetups(job: BatchJob, round?: BatchRound): FirstSetup[] {
  const found = new Map<string, FirstSetup>();
  for (const [label, { hungAt: at, technician, round: home }] of job.known?.setups ?? []) {
    if (round === undefined || home === round.known) found.set(label, { at, label, technician });
  }
  for (const [label, setup] of job.setups) {
    const at = hungAt(setup);
    if (at !== null && (round === undefined || setup.round === round)) {
      found.set(label, { at, label, technician: setup.technician });
    }
  }
  return [...found.values()];
}

/** The job as it stands once the batch is stored. */
export function jobRollup(job: BatchJob): JobRollup {
  const added = [...job.setups.values()].flatMap(addedIn);
  const rounds = new Map<string, { stage: Stage; attempt: number }>([
    ...(job.known?.rounds ?? []),
    ...job.rounds,
  ]);
  const last = [...rounds.values()].reduce((a, b) => (order(b) > order(a) ? b : a));
  const setups = hungSetups(job);
  const first = firstSetup(setups);
  return {
    openedAt: first?.at ?? 0,
    lastReadAt: added.reduce(
      (latest, { takenAt }) => Math.max(latest, takenAt),
      job.known?.lastReadAt ?? -Infinity,
    ),
    lastStage: last.stage,
    lastAttempt: last.attempt,
    technician: first?.technician ?? '',
    rounds: rounds.size,
    setups: setups.length,
    readings: (job.known?.readings ?? 0) + added.length,
  };
}

const order = ({ stage, attempt }: { stage: Stage; attempt: number }) =>
  (stage === 'after' ? 1e6 : 0) + attempt;

function least(known: number | null, times: readonly number[]): number | null {
  return times.reduce<number | null>((first, time) => (first === null ? time : Math.min(first, time)), known);
}
