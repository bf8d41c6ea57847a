import type { RoundVerdict } from '@/lib/assess';
import { JOB_SHARE_FORMAT, jobShare, type JobShare } from '@/lib/assess/answers';
import { firstReadings } from '@/lib/assess/habits';
import type { Job, Reading } from '@/lib/measure';
import {
  jobShares,
  jobsWithoutShare,
  loadJobs,
  readingsFor,
  roundsWithoutVerdict,
  saveJobShares,
  verdictsFor,
  type NewJobShare,
  type ShopId,
} from '@/lib/store';
import { keptShare, shareOf } from './kept-share';
import { MADE_FROM } from './made-from';
import type { StoredFit } from './stored-fit';

const JOBS_AT_ONCE = 200;
/** More rounds than so many jobs have. */
const ROUNDS_AT_ONCE = 5_000;

/** A job that waits for its share, and the version of its readings. */
export type WaitingJob = Awaited<ReturnType<typeof jobsWithoutShare>>[number];

/** How shares are made, beside the fit: told apart from others by it. */
export const shareStamp = (timeZone: string): string => `${JOB_SHARE_FORMAT} ${timeZone}`;

/**
 * The jobs whose readings, fit or time zone changed since what they add was worked out.
 * @param only the numbers of the jobs that are looked at, where it is known that no others changed.
 */
export async function waitingShares(
  shop: ShopId,
  fit: StoredFit,
  timeZone: string,
  only?: readonly string[],
): Promise<WaitingJob[]> {
  const madeBy = shareStamp(timeZone);
  const asked = only ?? [undefined];
  const changed = await Promise.all(asked.map((job) => jobsWithoutShare(shop, fit.id, madeBy, job)));
  // What was changed just now is judged first, by the refresh that follows the change.
  const unjudged = await Promise.all(asked.map((job) => roundsWithoutVerdict(shop, fit.id, job)));
  const waitingToo = new Set(unjudged.flat().map(({ job }) => job));
  return changed.flat().filter(({ job }) => !waitingToo.has(job));
}

/** Works out anew what these jobs add to the shop's answers, and keeps it. */
export async function updateShares(
  shop: ShopId,
  fit: StoredFit,
  timeZone: string,
  waiting: readonly WaitingJob[],
): Promise<void> {
  for (let start = 0; start < waiting.length; start += JOBS_AT_ONCE) {
    const shares = await newShares(shop, fit, timeZone, waiting.slice(start, start + JOBS_AT_ONCE));
    await saveJobShares(
      shop,
      fit.id,
      shareStamp(timeZone),
      shares.map((one) => ({ ...one, document: keptShare(one.document) })),
      [MADE_FROM],
    );
  }
}

/** What these jobs add now; null where nothing of them counts any more. @param before what they added, where that is known */
export async function newShares(
  shop: ShopId,
  fit: StoredFit,
  timeZone: string,
  waiting: readonly WaitingJob[],
  before: ReadonlyMap<string, JobShare> = new Map(),
): Promise<(Omit<NewJobShare, 'document'> & { document: JobShare | null })[]> {
  const shares = await sharesOf(
    shop,
    waiting.map(({ job }) => job),
    fit,
    timeZone,
    new Map(waiting.map(({ job, older }) => [job, older ? before.get(job) : undefined])),
  );
  return waiting.map(({ job, version }) => ({ job, version, document: shares.get(job) ?? null }));
}

/**
 * What jobs add to the shop's answers, as this program stored it, in the order of time.
 * @param of technicians whose tallies are wanted, those of others are null; all where it is left out
 */
export async function* storedShares(
  shop: ShopId,
  jobs?: readonly string[],
  of?: ReadonlySet<string>,
): AsyncGenerator<JobShare, void, undefined> {
  for await (const document of jobShares(shop, jobs)) yield shareOf(document, of);
}

async function sharesOf(
  shop: ShopId,
  numbers: readonly string[],
  { learned, atWork: { bodies } }: StoredFit,
  timeZone: string,
  before: ReadonlyMap<string, JobShare | undefined>,
): Promise<Map<string, JobShare>> {
  const [jobs, verdicts, readings] = await Promise.all([
    loadJobs(shop, { jobs: [...numbers] }),
    verdictsByJob(shop, numbers),
    repeatedIn(shop, numbers),
  ]);
  const firsts = firstReadings(readings);
  return new Map(
    jobs.flatMap((job: Job): [string, JobShare][] => {
      const own = {
        verdicts: verdicts.get(job.job) ?? [],
        firsts: firsts.get(job.job),
        before: before.get(job.job),
      };
      const share = jobShare(job, { learned, bodies, timeZone, ...own });
      return share === null ? [] : [[job.job, share]];
    }),
  );
}

async function verdictsByJob(shop: ShopId, jobs: readonly string[]): Promise<Map<string, RoundVerdict[]>> {
  const byJob = new Map<string, RoundVerdict[]>();
  for (const { job, document } of await verdictsFor(shop, { jobs: [...jobs], limit: ROUNDS_AT_ONCE })) {
    const own = byJob.get(job) ?? [];
    // The document is the verdict that this program stored.
    own.push(document as unknown as RoundVerdict);
    byJob.set(job, own);
  }
  return byJob;
}

/** The readings of dimensions that were read more than once: shares need no others beside the collapsed ones. */
async function repeatedIn(shop: ShopId, jobs: readonly string[]): Promise<Reading[]> {
  const readings: Reading[] = [];
  for await (const reading of readingsFor(shop, { jobs: [...jobs], repeated: true })) readings.push(reading);
  return readings;
}
