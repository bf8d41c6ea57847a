import type { Cause } from '@/lib/measure';
import { database, transaction } from '@/lib/store/connection/database';
import { inputsChanged } from '@/lib/store/shop/get-shop';
import { sideOf, storedSide, type StoredSide } from '@/lib/store/sql/side';
import type { RecheckOutcome, ShopId } from '@/lib/store/types';

export type NewOutcome = Omit<RecheckOutcome, 'at'> & { at?: number };

/**
 * Keeps what a re-check showed of one side of a setup. Earlier outcomes stay on record; the last one counts.
 * @throws RangeError where the shop has no such setup, side or person.
 */
export async function recordOutcome(shop: ShopId, outcome: NewOutcome): Promise<void> {
  const { job, setup: label, cause, by, note, at = Date.now() } = outcome;
  const side = storedSide(outcome.side);
  await transaction(shop, async (queries) => {
    const setup = await queries.setup.findFirst({
      where: { shopId: shop, label, job: { number: job } },
      select: { id: true, jobId: true, roundId: true },
    });
    if (setup === null) throw new RangeError(`Job ${job} has no setup ${label}.`);
    const person =
      by === null
        ? null
        : await queries.person.findUnique({ where: { shopId_code: { shopId: shop, code: by } } });
    if (by !== null && person === null) throw new RangeError(`The shop has nobody with the code ${by}.`);
    const { count } = await queries.observation.updateMany({
      where: { setupId: setup.id, dimension: { side } },
      data: { cause },
    });
    if (count === 0) throw new RangeError(`Setup ${label} of job ${job} has no reading on side ${side}.`);
    await queries.recheckOutcome.create({
      data: {
        shopId: shop,
        setupId: setup.id,
        side,
        cause,
        personId: person?.id ?? null,
        at: new Date(at),
        note,
      },
    });
    await queries.round.update({ where: { id: setup.roundId }, data: { version: { increment: 1 } } });
    await queries.job.update({ where: { id: setup.jobId }, data: { version: { increment: 1 } } });
    await inputsChanged(queries, shop);
  });
}

/** What re-checks showed, newest first. */
export async function listRecheckOutcomes(
  shop: ShopId,
  { job }: { job?: string | undefined } = {},
): Promise<RecheckOutcome[]> {
  const rows = await database().recheckOutcome.findMany({
    where: { shopId: shop, ...(job !== undefined && { setup: { job: { number: job } } }) },
    select: {
      side: true,
      cause: true,
      at: true,
      note: true,
      person: { select: { code: true } },
      setup: { select: { label: true, job: { select: { number: true } } } },
    },
    orderBy: { id: 'desc' },
  });
  return rows.map(({ side, cause, at, note, person, setup }) => ({
    job: setup.job.number,
    setup: setup.label,
    side: sideOf(side as StoredSide),
    cause: cause as Cause,
    by: person?.code ?? null,
    at: at.getTime(),
    note,
  }));
}
