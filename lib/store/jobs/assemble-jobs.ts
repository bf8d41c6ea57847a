import { dimensionKey, type Job, type Round, type Setup } from '@/lib/measure';
import { observationOf, type ObservationRow } from './observation-rows';

/**
 * Jobs from rows in any order, each standing where `collapse` of the readings would put it: jobs and setups by
 * their first reading, rounds before 1, before 2, …, after 1, ….
 */
export function assembleJobs(rows: readonly ObservationRow[]): Job[] {
  const jobs = new Map<string, Job>();
  const rounds = new Map<Job, Map<string, Round>>();
  const setups = new Map<Job, Map<string, Setup>>();
  for (const row of rows) {
    let job = jobs.get(row.job);
    if (job === undefined) {
      job = { job: row.job, sheet: row.sheet, rounds: [] };
      jobs.set(row.job, job);
      rounds.set(job, new Map());
      setups.set(job, new Map());
    }
    const round = roundIn(job, rounds.get(job) ?? new Map<string, Round>(), row);
    setupIn(round, setups.get(job) ?? new Map<string, Setup>(), row).observations.push(observationOf(row));
  }
  const found = [...jobs.values()];
  found.forEach(inOrder);
  return found.sort((a, b) => firstReading(a) - firstReading(b) || byText(a.job, b.job));
}

function roundIn(job: Job, rounds: Map<string, Round>, row: ObservationRow): Round {
  const { stage, attempt } = row;
  const key = `${stage} ${attempt}`;
  const there = rounds.get(key);
  if (there !== undefined) return there;
  const round = { job: job.job, sheet: job.sheet, stage, attempt, clearance: row.clearance ?? 0, setups: [] };
  rounds.set(key, round);
  job.rounds.push(round);
  return round;
}

function setupIn(round: Round, setups: Map<string, Setup>, row: ObservationRow): Setup {
  const there = setups.get(row.setup);
  if (there !== undefined) return there;
  const { technician, gauge, gaugeKind } = row;
  const setup = {
    label: row.setup,
    technician,
    gauge,
    gaugeKind,
    takenAt: row.hungAt.getTime(),
    observations: [],
  };
  setups.set(row.setup, setup);
  round.setups.push(setup);
  return setup;
}

function inOrder(job: Job): void {
  job.rounds.sort((a, b) => byStage(a) - byStage(b) || a.attempt - b.attempt);
  for (const { setups } of job.rounds) {
    setups.sort((a, b) => a.takenAt - b.takenAt || byText(a.label, b.label));
    for (const { observations } of setups) {
      observations.sort((a, b) => a.takenAt - b.takenAt || byText(dimensionKey(a), dimensionKey(b)));
    }
  }
}

const byStage = (round: Round) => (round.stage === 'before' ? 0 : 1);

const byText = (a: string, b: string) => (a < b ? -1 : a > b ? 1 : 0);

function firstReading(job: Job): number {
  return job.rounds.reduce((first, { setups }) => Math.min(first, setups[0]?.takenAt ?? Infinity), Infinity);
}
