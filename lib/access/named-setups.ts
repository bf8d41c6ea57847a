import type { Viewer } from '@/lib/identity';
import * as store from '@/lib/store';
import { within } from './own-rounds';

/** The most that a page of setups holds; nobody hangs as many in one job. */
const SETUPS_OF_A_JOB = 200;

/**
 * A technician's setups by the names that analyses keep of them, `job/setup`, in the order given. Those that are gone,
 * or that the viewer may not see, are left out.
 */
export async function namedSetups(
  viewer: Viewer,
  technician: string,
  names: readonly string[],
): Promise<store.SetupRow[]> {
  const held = within(viewer, { technician });
  if (held === null) return [];
  const jobs = new Set(names.flatMap(jobsIn));
  const pages = await Promise.all(
    [...jobs].map((job) =>
      store.listSetups(viewer.shop.id, { ...held, job, page: 1, pageSize: SETUPS_OF_A_JOB }),
    ),
  );
  const byName = new Map(
    pages.flatMap(({ rows }) => rows).map((setup) => [`${setup.job}/${setup.setup}`, setup]),
  );
  return names.flatMap((name) => byName.get(name) ?? []);
}

/** What may be the job of such a name: both labels may hold a slash themselves. */
function jobsIn(name: string): string[] {
  const parts = name.split('/');
  return parts.slice(1).map((_, index) => parts.slice(0, index + 1).join('/'));
}
