import { firstTimeOutcome, recordedDimensions } from '@/lib/assess';
import type { Job } from '@/lib/measure';
import { jobsWithoutOutcome, loadJobs, saveJobOutcomes, type JobOutcome, type ShopId } from '@/lib/store';

const JOBS_AT_ONCE = 500;

/** Brings the right-first-time rollup of every job up to date that has gained readings since. */
export async function updateOutcomes(shop: ShopId): Promise<number> {
  const waiting = await jobsWithoutOutcome(shop);
  const versions = new Map(waiting.map(({ job, version }) => [job, version]));
  for (let start = 0; start < waiting.length; start += JOBS_AT_ONCE) {
    const jobs = waiting.slice(start, start + JOBS_AT_ONCE).map(({ job }) => job);
    const loaded = await loadJobs(shop, { jobs });
    await saveJobOutcomes(
      shop,
      loaded.map((job) => ({ ...outcomeOf(job), version: versions.get(job.job) ?? 0 })),
    );
  }
  return waiting.length;
}

/** The rollup of one job, from its first round after the repair. */
export function outcomeOf(job: Job): JobOutcome {
  const outcome = firstTimeOutcome(job);
  const round = job.rounds.find(({ stage, attempt }) => stage === 'after' && attempt === 1);
  if (outcome === null || round === undefined) {
    return { job: job.job, right: null, technician: null, at: null, controlled: 0, out: 0, sections: {} };
  }
  const sections: JobOutcome['sections'] = {};
  for (const { section, within } of recordedDimensions(round)) {
    if (section === null) continue;
    const there = (sections[section] ??= { controlled: 0, out: 0 });
    there.controlled += 1;
    if (!within) there.out += 1;
  }
  const { right, technician, at, controlled, out } = outcome;
  return { job: job.job, right, technician, at, controlled, out, sections };
}
