import type { RateGrouping, RateJob } from '@/lib/assess/rates';
import type { RateFilter } from './question';

/** The jobs that count. With a section, a job is right where all of that section is, and counts if it was measured there. */
export function selectJobs(jobs: readonly RateJob[], filter: RateFilter): RateJob[] {
  const { from, to, technician, gauge, sheet, section } = filter;
  return jobs
    .filter(
      (job) =>
        (from === undefined || job.month >= from) &&
        (to === undefined || job.month <= to) &&
        (technician === undefined || job.technician === technician) &&
        (gauge === undefined || job.gauges.includes(gauge)) &&
        (sheet === undefined || job.sheet === sheet),
    )
    .flatMap((job): RateJob[] => {
      if (section === undefined) return [job];
      const own = job.sections.find((one) => one.section === section);
      return own === undefined ? [] : [{ ...job, right: own.right, sections: [own] }];
    });
}

/** The jobs behind one group, each with how it counts there. */
export function jobsOfGroup(jobs: readonly RateJob[], by: RateGrouping, name: string): RateJob[] {
  return jobs.flatMap((job): RateJob[] => {
    switch (by) {
      case 'technician':
        return job.technician === name ? [job] : [];
      case 'sheet':
        return job.sheet === name ? [job] : [];
      case 'gauge':
        return job.gauges.includes(name) ? [job] : [];
      case 'month':
        return job.month === name ? [job] : [];
      case 'zone':
        return job.start.zone === name ? [job] : [];
      case 'section': {
        const own = job.sections.find(({ section }) => section === name);
        return own === undefined ? [] : [{ ...job, right: own.right }];
      }
    }
  });
}
