import { missCostOf } from '@/app/_shop/miss-cost';
import type { Query } from '@/app/_words/address';
import type { Scene } from '@/app/_figures/vehicle-picture';
import { openSheet, type Viewer } from '@/lib/access';
import type { RoundVerdict } from '@/lib/assess';
import type { Job, Round } from '@/lib/measure';
import { sceneOf } from './scene-of';
import { shownOf, type Shown } from './shown';

/** The rounds of a job that are asked for, and their picture; null where the job has no rounds. */
export async function pictureOf(
  viewer: Viewer,
  job: Job,
  verdicts: readonly RoundVerdict[],
  query: Query,
): Promise<{ shown: Shown; scene: Scene | null } | null> {
  const shown = shownOf(job.rounds, query);
  if (shown === null) return null;
  const sheet = job.sheet === null ? null : await openSheet(viewer, job.sheet);
  const scene = sceneOf(
    {
      job,
      verdictOf: verdictAmong(verdicts),
      missCost: missCostOf(viewer.shop),
      points: sheet?.points ?? [],
    },
    shown.rounds,
  );
  return { shown, scene };
}

/** Finds the verdict on a round. */
export const verdictAmong =
  (verdicts: readonly RoundVerdict[]) =>
  ({ stage, attempt }: Round): RoundVerdict | null =>
    verdicts.find((one) => one.stage === stage && one.attempt === attempt) ?? null;
