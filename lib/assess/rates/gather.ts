import type { RateJob } from './rate-job';
import type { RateGrouping } from './types';

/** A job as it counts in one group. */
export interface Member {
  right: boolean;
  /** Chance at the shop's rate for jobs as hard; null where the model has none. */
  chance: number | null;
}

/** The members of every group; a job counts in each section and for each gauge that it has, else in one group. */
export function gather(
  jobs: readonly RateJob[],
  by: RateGrouping,
  chances: readonly number[] | null,
): Map<string, Member[]> {
  const groups = new Map<string, Member[]>();
  const put = (name: string, member: Member) => {
    const group = groups.get(name);
    if (group === undefined) groups.set(name, [member]);
    else group.push(member);
  };
  jobs.forEach((job, i) => {
    if (by === 'section') {
      for (const { section, right } of job.sections) put(section, { right, chance: null });
      return;
    }
    const member = { right: job.right, chance: chances?.[i] ?? null };
    for (const name of namesOf(job, by)) put(name, member);
  });
  return groups;
}

function namesOf(job: RateJob, by: Exclude<RateGrouping, 'section'>): readonly string[] {
  switch (by) {
    case 'technician':
      return [job.technician];
    case 'sheet':
      return job.sheet === null ? [] : [job.sheet];
    case 'gauge':
      return job.gauges;
    case 'month':
      return [job.month];
    case 'zone':
      return [job.start.zone];
  }
}
