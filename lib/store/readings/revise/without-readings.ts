import type { Queries } from '@/lib/store/connection/database';

/**
 * Takes back what was made from a round or a job that has no reading left that counts: nothing would be made in
 * its place, since what has no readings is not assessed.
 */
export async function withoutReadings(
  queries: Queries,
  { roundId, jobId }: { roundId: number; jobId: number },
): Promise<void> {
  const counts = (setup: { roundId: number } | { jobId: number }) =>
    queries.observation.findFirst({ where: { n: { gt: 0 }, setup }, select: { setupId: true } });
  if ((await counts({ roundId })) !== null) return;
  await queries.roundVerdict.deleteMany({ where: { roundId } });
  await queries.roundProof.deleteMany({ where: { roundId } });
  if ((await counts({ jobId })) !== null) return;
  const { version } = await queries.job.findUniqueOrThrow({
    where: { id: jobId },
    select: { version: true },
  });
  const none = { controlled: 0, out: 0 };
  const sections = {
    frontControlled: 0,
    frontOut: 0,
    centerControlled: 0,
    centerOut: 0,
    rearControlled: 0,
    rearOut: 0,
  };
  const start = { startOut: null, startLargest: null, startZone: null };
  await queries.jobOutcome.updateMany({
    where: { jobId },
    data: {
      jobVersion: version,
      right: null,
      technicianId: null,
      at: null,
      month: null,
      ...none,
      ...sections,
      ...start,
    },
  });
}
