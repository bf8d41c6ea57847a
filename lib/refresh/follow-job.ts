import { assessRound } from '@/lib/assess';
import { foretoldHeights } from '@/lib/assess/calibration';
import {
  jobsWithoutOutcome,
  loadJobs,
  roundsWithoutProof,
  roundsWithoutVerdict,
  saveFollowed,
  sheetBook,
  type Followed,
  type ShopId,
} from '@/lib/store';
import { readFit, withUnlearned } from './stored-fit';
import { unreadLengths } from './unread-lengths';
import { outcomeOf } from './update-outcomes';
import { PROOFS_FORMAT } from './update-proofs';
import { datedVerdict } from './update-verdicts';
import { WaitingRounds } from './waiting-rounds';

/**
 * Brings the rollup and the verdicts of one job up to date at once, by what was learned before: whoever changed a
 * reading or told what a re-check showed sees what comes of it, however long learning anew takes behind the pages.
 * The work is that of this job, on this thread: it is loaded once and written in one transaction. Nothing is judged
 * before the first fit, or where another program made it.
 * @param program stamp of the code that computes, as `refresh` takes it.
 */
export async function followJob(shop: ShopId, job: string, program: string): Promise<void> {
  const kept = await readFit(shop);
  const fit = kept?.program === program ? kept : null;
  // What waits, in which version, is asked before the job is loaded: what comes in between waits for the next time.
  const [rollups, unjudged, unlooked] = await Promise.all([
    jobsWithoutOutcome(shop, job),
    fit === null ? [] : roundsWithoutVerdict(shop, fit.id, job),
    fit === null ? [] : roundsWithoutProof(shop, PROOFS_FORMAT, job),
  ]);
  if (rollups.length + unjudged.length === 0) return;
  const jobs = await loadJobs(shop, { jobs: [job] });
  const outcomes = jobs.flatMap((loaded) =>
    rollups.map(({ version }) => ({ ...outcomeOf(loaded), version })),
  );
  let judged: Followed['judged'] = null;
  if (fit !== null && unjudged.length > 0) {
    const { learned } = fit;
    const sheet = jobs[0]?.sheet ?? null;
    const sheets = sheet === null ? new Map<string, never[]>() : await sheetBook(shop, sheet);
    judged = {
      fit: fit.id,
      verdicts: new WaitingRounds(unjudged)
        .of(jobs)
        .map(({ round, version }) =>
          datedVerdict(assessRound(round, learned, { unread: unreadLengths(round, sheets) }), version),
        ),
      proofs: {
        format: PROOFS_FORMAT,
        rounds: new WaitingRounds(unlooked).of(jobs).map(({ round, version }) => {
          const { stage, attempt } = round;
          return { job, stage, attempt, version, ahead: true, heights: foretoldHeights(round, learned) };
        }),
      },
      restated: withUnlearned(unjudged.length),
    };
  }
  await saveFollowed(shop, { outcomes, judged });
}
