import type { Viewer } from '@/lib/identity';
import * as store from '@/lib/store';
import { actorOf } from './actor';
import { getJob } from './jobs';
import { may } from './may';
import { heldTo, within } from './own-rounds';

/** Every revision of the readings of a job, of the rounds that the viewer may see. */
export async function readingHistory(
  viewer: Viewer,
  query: store.RevisionQuery,
): Promise<readonly store.ReadingRevision[]> {
  const seen = await getJob(viewer, query.job);
  // A setup whose readings are all excluded is in no round; those who see every round see it here.
  const open = heldTo(viewer) === undefined && seen !== null;
  const history = await store.readingHistory(viewer.shop.id, query);
  if (open) return history;
  const setups = new Set(seen?.rounds.flatMap(({ setups: of }) => of.map(({ label }) => label)));
  return history.filter(({ setup }) => setups.has(setup));
}

/** How many readings behind a figure are excluded. */
export async function countExcluded(viewer: Viewer, filter: store.SetupFilter = {}): Promise<number> {
  const held = within(viewer, filter);
  return held === null ? 0 : store.countExcluded(viewer.shop.id, held);
}

export type Revision = store.ReadingPlace & { reason: string } & (
    { what: 'correct'; value: number } | { what: 'exclude' | 'include' }
  );

/**
 * Corrects, excludes or includes a reading in the viewer's name. Technicians revise what they read themselves.
 * @throws RangeError where the viewer has no such reading, or it cannot be revised so.
 */
export async function reviseReading(viewer: Viewer, revision: Revision): Promise<void> {
  const seen = await getJob(viewer, revision.job);
  const setup = seen?.rounds
    .flatMap(({ setups }) => setups)
    .find(({ label, technician }) => label === revision.setup && mayRevise(viewer, technician));
  if (setup === undefined && heldTo(viewer) !== undefined)
    throw new RangeError(`You have no setup ${revision.setup} in job ${revision.job}.`);
  const { shop } = viewer;
  const { job, quantity, point, side, nominal, repeat, reason } = revision;
  const place = { job, setup: revision.setup, quantity, point, side, nominal, repeat, reason };
  if (revision.what === 'correct')
    await store.correctReading(shop.id, { ...place, value: revision.value }, actorOf(viewer));
  else if (revision.what === 'exclude') await store.excludeReading(shop.id, place, actorOf(viewer));
  else await store.includeReading(shop.id, place, actorOf(viewer));
}

const mayRevise = (viewer: Viewer, technician: string) =>
  may(viewer, 'see every round') || technician === viewer.code;
