import type { z } from 'zod';
import { firstTimeOutcome } from '@/lib/assess';
import { roundVerdicts } from '@/lib/refresh';
import { batchReport } from '@/lib/reports';
import { getJob, type ShopId } from '@/lib/store';
import type { job as schema } from './schemas/answers';

/** A job with its rounds and their verdicts; null where the shop has none of this number. */
export async function jobDocument(shop: ShopId, number: string): Promise<z.infer<typeof schema> | null> {
  const job = await getJob(shop, number);
  if (job === null) return null;
  const verdicts = await roundVerdicts(shop, { job: number });
  return {
    job: job.job,
    sheet: job.sheet,
    right_first_time: firstTimeOutcome(job)?.right ?? null,
    rounds: job.rounds.map(({ stage, attempt, clearance, setups }) => ({
      stage,
      attempt,
      clearance_mm: clearance,
      setups: setups.map(({ label, technician, gauge, takenAt }) => ({
        setup: label,
        technician,
        gauge,
        hung_at: new Date(takenAt).toISOString(),
      })),
      verdict: reported(verdicts.filter((one) => one.stage === stage && one.attempt === attempt)),
    })),
  };
}

const NOTHING = {
  technicians: [],
  gauges: [],
  firstTimeRight: { jobs: 0, right: 0, rate: null, low: null, high: null, why: null },
};

/** In the words of the batch report. */
function reported(verdicts: Awaited<ReturnType<typeof roundVerdicts>>) {
  const { rounds, heights } = batchReport({ ...NOTHING, rounds: [...verdicts] });
  const [round] = rounds;
  if (round === undefined) return null;
  const { decidable, why, p_zero_misset, next_check } = round;
  return {
    decidable,
    why,
    p_zero_misset,
    next_check,
    heights: heights.map(({ job: _job, stage: _stage, attempt: _attempt, ...height }) => height),
  };
}
