import type { Job, Round } from '@/lib/measure';
import type { roundsWithoutVerdict } from '@/lib/store';

export type WaitingRound = Awaited<ReturnType<typeof roundsWithoutVerdict>>[number];

/** Rounds that wait for something, each in the version that it waits in. */
export class WaitingRounds {
  readonly #versions: ReadonlyMap<string, number>;
  readonly #jobs: readonly string[];

  constructor(waiting: readonly WaitingRound[]) {
    this.#versions = new Map(waiting.map((round) => [keyOf(round), round.version]));
    this.#jobs = [...new Set(waiting.map(({ job }) => job))];
  }

  /** The numbers of their jobs. */
  jobs(): readonly string[] {
    return this.#jobs;
  }

  /** Those of these jobs. */
  of(jobs: readonly Job[]): { round: Round; version: number }[] {
    return jobs.flatMap((job) =>
      job.rounds.flatMap((round) => {
        const version = this.#versions.get(keyOf(round));
        return version === undefined ? [] : [{ round, version }];
      }),
    );
  }
}

const keyOf = ({ job, stage, attempt }: { job: string; stage: string; attempt: number }) =>
  JSON.stringify([job, stage, attempt]);
