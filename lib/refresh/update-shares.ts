import type { RoundVerdict } from '@/lib/assess';
import { JOB_SHARE_FORMAT, jobShare, questionsOfJob, type JobShare } from '@/lib/assess/answers';
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
  type ShopId,
} from '@/lib/store';
import { asJson, type StoredFit } from './stored-fit';

const JOBS_AT_ONCE = 200;
/** More rounds than so many jobs have. */
const ROUNDS_AT_ONCE = 5_000;

/**
 * Works out anew what each job adds to the shop's answers, where its readings, the fit or the time zone changed.
 * @returns the questions of months that these jobs count in, or counted in before.
 */
export async function updateShares(shop: ShopId, fit: StoredFit, timeZone: string): Promise<Set<string>> {
  const madeBy = `${JOB_SHARE_FORMAT} ${timeZone}`;
  const changed = await jobsWithoutShare(shop, fit.id, madeBy);
  // What was changed just now is judged first, by the refresh that follows the change.
  const unjudged = new Set((await roundsWithoutVerdict(shop, fit.id)).map(({ job }) => job));
  const waiting = changed.filter(({ job }) => !unjudged.has(job));
  const touched = new Set<string>();
  for (let start = 0; start < waiting.length; start += JOBS_AT_ONCE) {
    const some = waiting.slice(start, start + JOBS_AT_ONCE);
    const numbers = some.map(({ job }) => job);
    for await (const share of storedShares(shop, numbers)) touch(touched, share, timeZone);
    const shares = await sharesOf(shop, numbers, fit, timeZone);
    for (const share of shares.values()) touch(touched, share, timeZone);
    await saveJobShares(
      shop,
      fit.id,
      madeBy,
      some.map((one) => ({ ...one, document: asJson(shares.get(one.job) ?? null) })),
    );
  }
  return touched;
}

/** What jobs add to the shop's answers, as this program stored it, in the order of time. */
export async function* storedShares(
  shop: ShopId,
  jobs?: readonly string[],
): AsyncGenerator<JobShare, void, undefined> {
  for await (const document of jobShares(shop, jobs)) yield document as unknown as JobShare;
}

function touch(touched: Set<string>, share: JobShare, timeZone: string): void {
  for (const question of questionsOfJob(share, timeZone)) touched.add(question);
}

async function sharesOf(
  shop: ShopId,
  numbers: readonly string[],
  { learned }: StoredFit,
  timeZone: string,
): Promise<Map<string, JobShare>> {
  const [jobs, verdicts, readings] = await Promise.all([
    loadJobs(shop, { jobs: [...numbers] }),
    verdictsByJob(shop, numbers),
    readingsOf(shop, numbers),
  ]);
  const firsts = firstReadings(readings);
  return new Map(
    jobs.flatMap((job: Job): [string, JobShare][] => {
      const own = { verdicts: verdicts.get(job.job) ?? [], firsts: firsts.get(job.job) };
      const share = jobShare(job, { learned, timeZone, ...own });
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

async function readingsOf(shop: ShopId, jobs: readonly string[]): Promise<Reading[]> {
  const readings: Reading[] = [];
  for await (const reading of readingsFor(shop, { jobs: [...jobs] })) readings.push(reading);
  return readings;
}
