import type { Job, Setup } from '@/lib/measure';

export interface TechnicianCounts {
  readings: number;
  setups: number;
  /** Jobs in which the technician hung at least one gauge. */
  jobs: number;
}

export function readingsIn(setup: Setup): number {
  return setup.observations.reduce((sum, observation) => sum + observation.n, 0);
}

/** How much each technician has measured. In the order of their codes. */
export function technicianCounts(jobs: readonly Job[]): Map<string, TechnicianCounts> {
  const counts = new Map<string, TechnicianCounts>();
  for (const job of jobs) {
    const here = new Set<string>();
    for (const setup of job.rounds.flatMap((round) => round.setups)) {
      const count = counts.get(setup.technician) ?? { readings: 0, setups: 0, jobs: 0 };
      count.readings += readingsIn(setup);
      count.setups += 1;
      if (!here.has(setup.technician)) count.jobs += 1;
      here.add(setup.technician);
      counts.set(setup.technician, count);
    }
  }
  return inOrder(counts);
}

/** How many readings each gauge has given. In the order of their asset tags. */
export function gaugeReadings(jobs: readonly Job[]): Map<string, number> {
  const counts = new Map<string, number>();
  for (const setup of jobs.flatMap((job) => job.rounds).flatMap((round) => round.setups)) {
    counts.set(setup.gauge, (counts.get(setup.gauge) ?? 0) + readingsIn(setup));
  }
  return inOrder(counts);
}

function inOrder<T>(counts: Map<string, T>): Map<string, T> {
  return new Map([...counts].sort(([a], [b]) => (a < b ? -1 : a > b ? 1 : 0)));
}
