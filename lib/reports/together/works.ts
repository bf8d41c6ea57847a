import type { Learned } from '@/lib/assess';
import {
  firstReadings,
  type HabitTally,
  type ShownApart,
  ShownSums,
  sumByTechnician,
} from '@/lib/assess/habits';
import { judgeJob } from '@/lib/assess/judge-jobs';
import { type Pass, surveyJobs, type SurveyedJobs, type Tally, tallyPart } from '@/lib/assess/learn';
import { type Measured, measuredIn } from '@/lib/assess/measured';
import {
  collapseJobs,
  type Job,
  type Reading,
  type Round,
  type SharedLines,
  SharedReadings,
} from '@/lib/measure';

import { joined, type Packed, packed, type VerdictText, verdictText } from '../verdict-texts';

/** Where a round stands: its job, by the number in the file, and which of the job's rounds it is. */
export interface RoundAt {
  job: number;
  round: number;
}

/** Some jobs before anything is learned: what they come to, how many rounds each has, what learning is told of them. */
export interface JobsSurveyed {
  measured: Measured[];
  rounds: number[];
  survey: SurveyedJobs;
}

/** The lines of the report on some jobs, and the sums of their habits by technician, but for the setups that show them. */
export interface JobsJudged {
  text: VerdictText<Packed>;
  tallies: Map<string, HabitTally>;
}

/**
 * What is worked out of the lines of accepted files, job by job. Jobs are made of their lines where they are looked at
 * and let go again: of a large shop they take ten times the room of the lines, and longer to hand on than to make.
 */
export class Works {
  #readings: SharedReadings | null = null;
  #learned: Learned | null = null;
  /** Jobs that passes look at, by their numbers: each of them looks at some again, and in the end they are judged. */
  readonly #looked = new Map<number, Job>();
  readonly #shown = new ShownSums();

  take(lines: SharedLines): void {
    this.#readings = new SharedReadings(lines);
  }

  /** @param jobs by their numbers in the file */
  survey(jobs: readonly number[]): JobsSurveyed {
    const measured: Measured[] = [];
    const rounds: number[] = [];
    const made = function* (works: Works): Generator<Job> {
      for (const number of jobs) {
        const job = jobOf(works.#readingsOf(number));
        measured.push(measuredIn(job));
        rounds.push(job.rounds.length);
        yield job;
      }
    };
    const survey = surveyJobs(made(this));
    return { measured, rounds, survey };
  }

  tally({ rounds, ...pass }: Pass<RoundAt>): Tally {
    return tallyPart({ ...pass, rounds: rounds.map((at) => this.#round(at)) });
  }

  know(learned: Learned): void {
    this.#learned = learned;
  }

  judge(jobs: readonly number[]): JobsJudged {
    const learned = held(this.#learned);
    const texts: VerdictText[] = [];
    const tallies: Map<string, HabitTally>[] = [];
    for (const number of jobs) {
      const readings = this.#readingsOf(number);
      const job = this.#looked.get(number) ?? jobOf(readings);
      this.#looked.delete(number);
      const judged = judgeJob(job, learned, firstReadings(readings));
      texts.push(verdictText(judged.rounds));
      tallies.push(judged.tallies);
    }
    return {
      text: packed(joined(texts), held(this.#readings).size),
      tallies: this.#shown.takenFrom(sumByTechnician(tallies)),
    };
  }

  /** The setups that show the habits of all jobs that were judged here. */
  shown(): ShownApart {
    return this.#shown.all();
  }

  #readingsOf(job: number): Reading[] {
    return held(this.#readings).readingsOf(job);
  }

  #round({ job, round }: RoundAt): Round {
    let made = this.#looked.get(job);
    if (made === undefined) this.#looked.set(job, (made = jobOf(this.#readingsOf(job))));
    const found = made.rounds[round];
    if (found === undefined) throw new RangeError(`Job ${job} has no round ${round}.`);
    return found;
  }
}

function jobOf(readings: Reading[]): Job {
  const [job] = collapseJobs([readings]);
  if (job === undefined) throw new RangeError('A job has readings.');
  return job;
}

function held<Thing>(thing: Thing | null): Thing {
  if (thing === null) throw new Error('Nothing is worked out before it was said of what.');
  return thing;
}
