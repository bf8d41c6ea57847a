import type { Queries } from '@/lib/store/connection/database';
import { searchable } from '@/lib/store/jobs/searchable';
import { among } from '@/lib/store/sql/among';
import { insertRows, type Cell } from '@/lib/store/sql/insert-rows';
import type { ShopId } from '@/lib/store/types';
import { gains, type Batch, type BatchJob, type BatchRound, type BatchSetup } from './batch';
import { inChunks } from './in-chunks';
import { JOB_COLUMNS, OUTCOME_COLUMNS, OUTCOME_COUNTS, ROUND_COLUMNS, SETUP_COLUMNS } from './job-columns';
import { firstSetup, hungAt, hungSetups, jobRollup } from './job-rollup';
import type { Ids } from './write-parents';

const JOB_UPDATE = `("shopId", "number") DO UPDATE SET ${[
  ...['openedAt', 'lastReadAt', 'lastStage', 'lastAttempt', 'technicianId', 'roundCount', 'setupCount'],
  ...['readingCount', 'version'],
]
  .map((column) => `"${column}" = excluded."${column}"`)
  .join(', ')}`;

export const gainsAnything = (setups: Iterable<BatchSetup>): boolean =>
  [...setups].some((setup) => [...setup.observations.values()].some(gains));

/** Stores or updates the jobs that gain something; ids by job number. */
export async function writeJobs(
  queries: Queries,
  shop: ShopId,
  batch: Batch,
  ids: Ids,
): Promise<Map<string, number>> {
  const jobs = [...batch.jobs.values()].filter((job) => gainsAnything(job.setups.values()));
  const rows = jobs.map((job): Cell[] => {
    const rollup = jobRollup(job);
    return [
      shop,
      job.number,
      ids.sheets.get(job.sheet) ?? null,
      searchable(`${job.number} ${job.sheet.name ?? ''}`),
      new Date(rollup.openedAt),
      new Date(rollup.lastReadAt),
      rollup.lastStage,
      rollup.lastAttempt,
      ids.people.get(rollup.technician) ?? null,
      rollup.rounds,
      rollup.setups,
      rollup.readings,
      (job.known?.version ?? 0) + 1,
    ];
  });
  await insertRows(queries, 'Job', JOB_COLUMNS, rows, JOB_UPDATE);
  const stored = await inChunks(
    jobs.filter((job) => job.known === null).map((job) => job.number),
    (numbers) => queries.$queryRaw<{ id: number; number: string }[]>`
      SELECT "id", "number" FROM "Job" WHERE "shopId" = ${shop} AND "number" ${among(numbers)}`,
  );
  const found = new Map(stored.map(({ id, number }) => [number, id]));
  for (const { number, known } of jobs) if (known !== null) found.set(number, known.id);
  await writeHands(queries, jobs, ids, found);
  // Every job has its rollup from the first moment, with no answer yet.
  const fresh = jobs
    .filter((job) => job.known === null)
    .map((job): Cell[] => [shop, found.get(job.number) ?? null, 0]);
  const zeros = OUTCOME_COUNTS.map(() => 0);
  await insertRows(
    queries,
    'JobOutcome',
    OUTCOME_COLUMNS,
    fresh.map((row) => [...row, ...zeros]),
  );
  return found;
}

const HAND_UPDATE = `("jobId", "technicianId") DO UPDATE SET "firstAt" = excluded."firstAt"`;

/** Keeps who has a setup in each job, and since when. */
async function writeHands(
  queries: Queries,
  jobs: readonly BatchJob[],
  ids: Ids,
  found: ReadonlyMap<string, number>,
) {
  const rows = jobs.flatMap((job): Cell[][] => {
    const since = new Map<string, number>();
    for (const { technician, at } of hungSetups(job)) {
      since.set(technician, Math.min(at, since.get(technician) ?? Infinity));
    }
    const jobId = found.get(job.number) ?? null;
    return [...since].map(([technician, at]) => [jobId, ids.people.get(technician) ?? null, new Date(at)]);
  });
  await insertRows(queries, 'JobTechnician', ['jobId', 'technicianId', 'firstAt'], rows, HAND_UPDATE);
}

const ROUND_UPDATE = `("jobId", "stage", "attempt") DO UPDATE SET "clearance" = excluded."clearance",
  "technicianId" = excluded."technicianId", "startedAt" = excluded."startedAt", "version" = "Round"."version" + 1`;

/** Stores or updates the rounds that gain something. */
export async function writeRounds(
  queries: Queries,
  shop: ShopId,
  jobs: ReadonlyMap<string, number>,
  batch: Batch,
  ids: Ids,
): Promise<Map<BatchRound, number>> {
  const rows: Cell[][] = [];
  const places = new Map<string, BatchRound>();
  const found = new Map<BatchRound, number>();
  for (const [job, jobId] of jobsOf(batch, jobs)) {
    for (const round of job.rounds.values()) {
      if (!gainsAnything([...job.setups.values()].filter((setup) => setup.round === round))) continue;
      const first = firstSetup(hungSetups(job, round));
      const technician = ids.people.get(first?.technician ?? '') ?? null;
      const { stage, attempt, clearance } = round;
      rows.push([shop, jobId, stage, attempt, clearance, technician, new Date(first?.at ?? 0)]);
      if (round.known === null) places.set(`${jobId} ${stage} ${attempt}`, round);
      else found.set(round, round.known.id);
    }
  }
  await insertRows(queries, 'Round', ROUND_COLUMNS, rows, ROUND_UPDATE);
  const stored = await inChunks(
    places.size === 0 ? [] : [...jobs.values()],
    (jobIds) => queries.$queryRaw<{ id: number; jobId: number; stage: string; attempt: number }[]>`
      SELECT "id", "jobId", "stage", "attempt" FROM "Round" WHERE "jobId" ${among(jobIds)}`,
  );
  for (const { id, jobId, stage, attempt } of stored) {
    const round = places.get(`${jobId} ${stage} ${attempt}`);
    if (round !== undefined) found.set(round, id);
  }
  return found;
}

const SETUP_UPDATE = '("jobId", "label") DO UPDATE SET "hungAt" = excluded."hungAt"';

/** Stores or updates the setups that gain something. */
export async function writeSetups(
  queries: Queries,
  shop: ShopId,
  jobs: ReadonlyMap<string, number>,
  rounds: ReadonlyMap<BatchRound, number>,
  batch: Batch,
  ids: Ids,
): Promise<Map<BatchSetup, number>> {
  const rows: Cell[][] = [];
  const places = new Map<string, BatchSetup>();
  const found = new Map<BatchSetup, number>();
  for (const [job, jobId] of jobsOf(batch, jobs)) {
    for (const setup of job.setups.values()) {
      if (!gainsAnything([setup])) continue;
      const { label, technician, gauge, round } = setup;
      const hands = [ids.people.get(technician) ?? null, ids.gauges.get(gauge) ?? null];
      rows.push([shop, jobId, rounds.get(round) ?? null, label, ...hands, new Date(hungAt(setup) ?? 0)]);
      if (setup.known === null) places.set(`${jobId} ${label}`, setup);
      else found.set(setup, setup.known.id);
    }
  }
  await insertRows(queries, 'Setup', SETUP_COLUMNS, rows, SETUP_UPDATE);
  const stored = await inChunks(
    places.size === 0 ? [] : [...jobs.values()],
    (jobIds) => queries.$queryRaw<{ id: number; jobId: number; label: string }[]>`
      SELECT "id", "jobId", "label" FROM "Setup" WHERE "jobId" ${among(jobIds)}`,
  );
  for (const { id, jobId, label } of stored) {
    const setup = places.get(`${jobId} ${label}`);
    if (setup !== undefined) found.set(setup, id);
  }
  return found;
}

function jobsOf(batch: Batch, jobs: ReadonlyMap<string, number>): [BatchJob, number][] {
  return [...batch.jobs.values()].flatMap((job): [BatchJob, number][] => {
    const id = jobs.get(job.number);
    return id === undefined ? [] : [[job, id]];
  });
}
