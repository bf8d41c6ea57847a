import { heightsFor, type StoredHeight, type Viewer } from '@/lib/access';
import type { RoundVerdict } from '@/lib/assess';

/** More heights than some rounds have. */
const MOST = 5000;

/** The heights of these rounds that somebody hung, with what re-checks showed of them. */
export async function heightsOfRounds(
  viewer: Viewer,
  technician: string,
  rounds: readonly Pick<RoundVerdict, 'job'>[],
): Promise<readonly StoredHeight[]> {
  const jobs = [...new Set(rounds.map(({ job }) => job))];
  return jobs.length === 0 ? [] : heightsFor(viewer, { technician, jobs, limit: MOST });
}
