import type { Scene } from '@/app/_figures/vehicle-picture';
import { heightRows, type HeightRow } from '@/app/jobs/[job]/_parts/heights';
import { pictureOf } from '@/app/jobs/[job]/_picture/of-job';
import { missCostOf } from '@/app/_shop/miss-cost';
import {
  currentLearned,
  getJob,
  getJobRow,
  listGauges,
  listRecheckOutcomes,
  may,
  readingHistory,
  readingsOfJob,
  roundVerdicts,
  type JobRow,
  type ReadingRevision,
  type RecheckOutcome,
  type Viewer,
} from '@/lib/access';
import {
  recordedDimensions,
  standardUncertainties,
  type Learned,
  type RecordedDimension,
  type RoundVerdict,
} from '@/lib/assess';
import type { Reading, Round } from '@/lib/measure';

/** One round with all that is said of it. */
export interface RecordedRound {
  round: Round;
  verdict: RoundVerdict | null;
  heights: HeightRow[];
  dimensions: RecordedDimension[];
  /** Standard uncertainty by `setupDimensionKey`, mm; empty where the shop's figures are not there yet. */
  uncertainties: ReadonlyMap<string, number>;
  readings: Reading[];
}

/** Everything that the record of a job tells, as far as whoever prints it may see it. */
export interface JobRecord {
  shop: { name: string; timeZone: string };
  row: Pick<JobRow, 'job' | 'sheet' | 'outcome'>;
  rounds: RecordedRound[];
  /** The vehicle before and after, as the job's page shows it; null where no height has a place. */
  scene: Scene | null;
  /** Rounds of the job that this viewer may not see. */
  hidden: number;
  fit: { fittedAt: number; stale: boolean } | null;
  outcomes: RecheckOutcome[];
  /** Of readings that were corrected or excluded alone. */
  revisions: readonly ReadingRevision[];
  /** Gauges hung in it that are out of service by now. */
  outOfService: string[];
  missCost: number;
  printed: { at: number; by: string };
}

/** Null where there is no such job, or nothing of it is the viewer's to see. */
export async function recordOf(viewer: Viewer, number: string, now: number): Promise<JobRecord | null> {
  const { shop, code } = viewer;
  const [job, row, verdicts, fit, readings, outcomes, revisions, gauges] = await Promise.all([
    getJob(viewer, number),
    getJobRow(viewer, number),
    roundVerdicts(viewer, { job: number }),
    currentLearned(viewer, number),
    readingsOfJob(viewer, number),
    listRecheckOutcomes(viewer, number),
    readingHistory(viewer, { job: number, changed: true }),
    listGauges(viewer),
  ]);
  if (job === null || row === null) return null;
  const missCost = missCostOf(shop);
  const picture = await pictureOf(viewer, job, verdicts, {});
  const rounds = job.rounds.map((round) => {
    const isOf = (one: { stage: string; attempt: number }) =>
      one.stage === round.stage && one.attempt === round.attempt;
    return recordedRound(round, {
      verdict: verdicts.find(isOf) ?? null,
      learned: fit?.learned ?? null,
      readings: readings.filter(isOf),
      missCost,
    });
  });
  const hung = new Set(job.rounds.flatMap(({ setups }) => setups.map(({ gauge }) => gauge)));
  return {
    shop,
    row,
    rounds,
    fit,
    outcomes,
    revisions,
    missCost,
    scene: picture?.scene ?? null,
    hidden: may(viewer, 'see every round') ? 0 : Math.max(0, row.rounds - job.rounds.length),
    outOfService: gauges
      .filter(({ tag, state }) => state === 'out-of-service' && hung.has(tag))
      .map(({ tag }) => tag),
    printed: { at: now, by: code },
  };
}

interface Known {
  verdict: RoundVerdict | null;
  learned: Learned | null;
  readings: Reading[];
  missCost: number;
}

/** A round with what is known of it, as its job's page works it out. */
export const recordedRound = (
  round: Round,
  { verdict, learned, readings, missCost }: Known,
): RecordedRound => ({
  round,
  verdict,
  readings,
  heights: heightRows(round, verdict, missCost),
  dimensions: recordedDimensions(round),
  uncertainties: learned === null ? new Map() : standardUncertainties(round, learned),
});
