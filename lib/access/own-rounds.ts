import type { Viewer } from '@/lib/identity';
import type { Job, Round } from '@/lib/measure';
import { may } from './may';

/** The technician to whose rounds a viewer is held; undefined where every round is open. */
export const heldTo = (viewer: Viewer): string | undefined =>
  may(viewer, 'see every round') ? undefined : viewer.code;

/** What a filter asks for, and never more than the viewer may see; null where that is nothing. */
export function within<Filter extends { technician?: string | undefined }>(
  viewer: Viewer,
  filter: Filter,
): Filter | null {
  const own = heldTo(viewer);
  if (own === undefined) return filter;
  if (filter.technician !== undefined && filter.technician !== own) return null;
  return { ...filter, technician: own };
}

/** A round is somebody's own where they hung a gauge in it. */
export const isOwn = (round: Round, code: string): boolean =>
  round.setups.some(({ technician }) => technician === code);

/** A job with the rounds that the viewer may see; null where that is none. */
export function seenBy(viewer: Viewer, job: Job | null): Job | null {
  const own = heldTo(viewer);
  if (job === null || own === undefined) return job;
  const rounds = job.rounds.filter((round) => isOwn(round, own));
  return rounds.length === 0 ? null : { ...job, rounds };
}
