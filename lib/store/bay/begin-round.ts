import { transaction, type Queries } from '@/lib/store/connection/database';
import { personRow } from '@/lib/store/shop/person-row';
import { subjectOf } from '@/lib/store/trace/subjects';
import { writeTrace } from '@/lib/store/trace/write-trace';
import type { Actor, NewBayRound, ShopId } from '@/lib/store/types';
import { CLEARANCE_RANGE, COUNT_RANGE, MAX_LABEL } from '@/lib/measure/file/limits';

/** Heights stand on two of them. */
const ZERO_STATIONS = 2;

/**
 * Begins a round that is measured beside the car, or joins it where it is open already. Its job, setups and readings
 * are stored as they are read.
 * @returns its id.
 * @throws RangeError where it cannot be: no such sheet, one that carries no datum or is retired; a job that is measured
 * against another sheet; a round that is finished or came from a file; another clearance than the open round's.
 */
export async function beginBayRound(
  shop: ShopId,
  { job: named, sheet, stage, attempt, clearance }: NewBayRound,
  by: string,
  actor: Actor,
): Promise<number> {
  const job = named.trim().normalize('NFC');
  if (job === '' || job.length > MAX_LABEL || /[\p{Cc}\p{Cs}\u2028\u2029\ufffd]/u.test(job))
    throw new RangeError(`A job number has 1 to ${MAX_LABEL} characters that can be printed.`);
  if (!Number.isInteger(attempt) || attempt < COUNT_RANGE.low || attempt > COUNT_RANGE.high)
    throw new RangeError('The attempt is a whole number: 1 for the first measuring.');
  if (!(clearance >= CLEARANCE_RANGE.low && clearance <= CLEARANCE_RANGE.high))
    throw new RangeError(`A clearance lies between 0 and ${CLEARANCE_RANGE.high} mm.`);
  return transaction(shop, async (queries) => {
    const name = `Round ${stage} ${attempt} of job ${job}`;
    const found = await queries.sheet.findUnique({
      where: { shopId_name: { shopId: shop, name: sheet } },
      select: {
        id: true,
        retiredAt: true,
        dimensions: { where: { zero: true }, select: { station: true }, distinct: ['station'] },
      },
    });
    if (found === null) throw new RangeError(`The shop has no sheet ${sheet}.`);
    const there = await queries.bayRound.findUnique({
      where: { shopId_job_stage_attempt: { shopId: shop, job, stage, attempt } },
    });
    if (there !== null) {
      if (there.finishedAt !== null)
        throw new RangeError(`${name} is finished. Measure again as attempt ${attempt + 1}.`);
      if (there.sheetId !== found.id)
        throw new RangeError(`${name} is being measured against another sheet. Choose that one to join it.`);
      if (there.clearance !== clearance)
        throw new RangeError(
          `${name} is being measured with a clearance of ${there.clearance} mm. Choose that one to join it.`,
        );
      return there.id;
    }
    if (found.retiredAt !== null)
      throw new RangeError(`Sheet ${sheet} is retired. Choose the one that took its place.`);
    if (found.dimensions.length < ZERO_STATIONS)
      throw new RangeError(
        `Sheet ${sheet} does not say which two stations are the zero stations: no gauge has a datum. Add them to the sheet.`,
      );
    await requireJob(queries, shop, { job, stage, attempt }, { id: found.id, name: sheet });
    const personId = await personRow(queries, shop, by);
    const { id } = await queries.bayRound.create({
      data: {
        shopId: shop,
        job,
        sheetId: found.id,
        stage,
        attempt,
        clearance,
        personId,
        startedAt: new Date(),
      },
      select: { id: true },
    });
    await writeTrace(queries, shop, actor, {
      action: 'begun',
      kind: 'bay round',
      subject: subjectOf.round(job, stage, attempt),
      after: { sheet, clearance },
    });
    return id;
  });
}

/** @throws RangeError where the job is measured against another sheet, or has this round already. */
async function requireJob(
  queries: Queries,
  shop: ShopId,
  { job, stage, attempt }: Pick<NewBayRound, 'job' | 'stage' | 'attempt'>,
  sheet: { id: number; name: string },
): Promise<void> {
  const known = await queries.job.findUnique({
    where: { shopId_number: { shopId: shop, number: job } },
    select: { sheetId: true, rounds: { where: { stage, attempt }, select: { id: true } } },
  });
  if (known !== null && known.rounds.length > 0)
    throw new RangeError(
      `Round ${stage} ${attempt} of job ${job} was loaded from a file already. Measure again as attempt ${attempt + 1}.`,
    );
  const beside = await queries.bayRound.findFirst({
    where: { shopId: shop, job, sheetId: { not: sheet.id } },
    select: { id: true },
  });
  if ((known !== null && known.sheetId !== sheet.id) || beside !== null)
    throw new RangeError(
      `Job ${job} is measured against another sheet than ${sheet.name}: its rounds could not be compared. Choose that one.`,
    );
}
