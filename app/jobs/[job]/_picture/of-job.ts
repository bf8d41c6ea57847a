import { missCostOf } from '@/app/_shop/miss-cost';
import type { Query } from '@/app/_words/address';
import type { Scene } from '@/app/_figures/vehicle-picture';
import { openSheet, type Viewer } from '@/lib/access';
import type { RoundVerdict } from '@/lib/assess';
import type { Job, Round } from '@/lib/measure';
import type { SheetPoint } from '@/lib/access';
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
  return { shown, scene: sceneBy(await picturedOf(viewer, job, verdicts), shown) };
}

/** All that a picture of a job is drawn from. */
export interface Pictured {
  job: Job;
  verdicts: readonly RoundVerdict[];
  points: readonly SheetPoint[];
  missCost: number;
}

export async function picturedOf(
  viewer: Viewer,
  job: Job,
  verdicts: readonly RoundVerdict[],
): Promise<Pictured> {
  const sheet = job.sheet === null ? null : await openSheet(viewer, job.sheet);
  return { job, verdicts, points: sheet?.points ?? [], missCost: missCostOf(viewer.shop) };
}

export const sceneBy = ({ verdicts, ...of }: Pictured, shown: Shown): Scene | null =>
  sceneOf({ ...of, verdictOf: verdictAmong(verdicts) }, shown.rounds);

/** Finds the verdict on a round. */
export const verdictAmong =
  (verdicts: readonly RoundVerdict[]) =>
  ({ stage, attempt }: Round): RoundVerdict | null =>
    verdicts.find((one) => one.stage === stage && one.attempt === attempt) ?? null;
