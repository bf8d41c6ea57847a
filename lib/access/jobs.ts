import type { Viewer } from '@/lib/identity';
import type { Job, Reading } from '@/lib/measure';
import { frozen, onceFor } from '@/lib/memory';
import * as store from '@/lib/store';
import { actorOf } from './actor';
import { heldTo, seenBy, within } from './own-rounds';

const NOTHING = { rows: [], total: 0 };

/** Jobs with a round of the viewer's, or all. */
export async function countJobs(viewer: Viewer, filter: store.JobFilter = {}): Promise<number> {
  const held = within(viewer, filter);
  return held === null ? 0 : store.countJobs(viewer.shop.id, held);
}

export async function listJobs(viewer: Viewer, query: store.JobQuery): Promise<store.Page<store.JobRow>> {
  const held = within(viewer, query);
  return held === null ? NOTHING : store.listJobs(viewer.shop.id, held);
}

/** A job as far as the viewer may see it: a technician sees the rounds in which they hung a gauge. */
export async function getJob(viewer: Viewer, job: string): Promise<Job | null> {
  return seenBy(viewer, await store.getJob(viewer.shop.id, job));
}

export async function getJobRow(viewer: Viewer, job: string): Promise<store.JobRow | null> {
  const row = await store.getJobRow(viewer.shop.id, job);
  const own = heldTo(viewer);
  return row === null || own === undefined || row.technicians.includes(own) ? row : null;
}

export async function listSetups(
  viewer: Viewer,
  query: store.SetupQuery,
): Promise<store.Page<store.SetupRow>> {
  const held = within(viewer, query);
  return held === null ? NOTHING : store.listSetups(viewer.shop.id, held);
}

/** When a gauge was hung last in the shop, or by the viewer who sees no others, ms; null before the first. */
export async function newestHanging(viewer: Viewer): Promise<number | null> {
  const held = within(viewer, {});
  return held === null ? null : store.newestHanging(viewer.shop.id, held);
}

/** The readings of one job, of the rounds that the viewer may see. */
export async function readingsOfJob(viewer: Viewer, job: string): Promise<readonly Reading[]> {
  const seen = await getJob(viewer, job);
  return seen === null ? [] : readingsIn(await store.readingsOfJob(viewer.shop.id, job), seen);
}

const readingsIn = onceFor((readings: readonly Reading[], { rounds }: Job): readonly Reading[] => {
  const seen = new Set(rounds.map(({ stage, attempt }) => `${stage} ${attempt}`));
  return frozen(readings.filter(({ stage, attempt }) => seen.has(`${stage} ${attempt}`)));
});

/** The readings that a filter shows; a technician's own alone. */
export async function* readingsFor(viewer: Viewer, filter: store.ReadingFilter): AsyncGenerator<Reading> {
  const held = within(viewer, filter);
  if (held === null) return;
  const own = heldTo(viewer);
  for await (const reading of store.readingsFor(viewer.shop.id, held))
    if (own === undefined || reading.technician === own) yield reading;
}

/** What re-checks showed, of the setups that the viewer may see. */
export async function listRecheckOutcomes(viewer: Viewer, job: string): Promise<store.RecheckOutcome[]> {
  const seen = await getJob(viewer, job);
  const setups = new Set(seen?.rounds.flatMap(({ setups: of }) => of.map(({ label }) => label)));
  const outcomes = await store.listRecheckOutcomes(viewer.shop.id, { job });
  return outcomes.filter(({ setup }) => setups.has(setup));
}

/**
 * Keeps what a re-check showed, in the viewer's name.
 * @throws RangeError where the viewer sees no such height.
 */
export async function recordOutcome(
  viewer: Viewer,
  outcome: Parameters<typeof store.recordOutcome>[1],
): Promise<void> {
  const seen = await getJob(viewer, outcome.job);
  if (seen?.rounds.some(({ setups }) => setups.some(({ label }) => label === outcome.setup)) !== true)
    throw new RangeError(`There is no setup ${outcome.setup} in job ${outcome.job}.`);
  await store.recordOutcome(viewer.shop.id, outcome, actorOf(viewer));
}

export const listSheets = (viewer: Viewer) => store.listSheets(viewer.shop.id);
