import { transaction } from '@/lib/store/connection/database';
import { Prisma } from '@/lib/store/generated/sqlite/client';
import { personRow } from '@/lib/store/shop/person-row';
import { roundChanged } from '@/lib/store/shop/round-changed';
import { ask } from '@/lib/store/sql/ask';
import { sideOf, storedSide, type StoredSide } from '@/lib/store/sql/side';
import { subjectOf } from '@/lib/store/trace/subjects';
import { writeTrace } from '@/lib/store/trace/write-trace';
import type { Actor, RecheckOutcome, ShopId } from '@/lib/store/types';

export type NewOutcome = Omit<RecheckOutcome, 'at' | 'by'> & { at?: number };

/**
 * Keeps what a re-check showed of one side of a setup, in the actor's name. Earlier outcomes stay on record; the
 * last one counts.
 * @throws RangeError where the shop has no such setup, side or person.
 */
export async function recordOutcome(shop: ShopId, outcome: NewOutcome, actor: Actor): Promise<void> {
  const { job, setup: label, cause, note, at = Date.now() } = outcome;
  const side = storedSide(outcome.side);
  await transaction(shop, async (queries) => {
    const setup = await queries.setup.findFirst({
      where: { shopId: shop, label, job: { number: job } },
      select: { id: true, jobId: true, roundId: true, technicianId: true },
    });
    if (setup === null) throw new RangeError(`Job ${job} has no setup ${label}.`);
    const personId = await personRow(queries, shop, actor.person);
    const where = { setupId: setup.id, dimension: { side } };
    const known = await queries.observation.findFirst({ where, select: { cause: true } });
    if (known === null) throw new RangeError(`Setup ${label} of job ${job} has no reading on side ${side}.`);
    await queries.observation.updateMany({ where, data: { cause } });
    await queries.recheckOutcome.create({
      data: { shopId: shop, setupId: setup.id, side, cause, personId, at: new Date(at), note },
    });
    await roundChanged(queries, shop, setup);
    await writeTrace(queries, shop, actor, {
      action: 'recorded',
      kind: 'outcome',
      subject: subjectOf.side(job, label, side),
      concerns: setup.technicianId,
      before: { cause: known.cause },
      after: { cause },
    });
  });
}

interface OutcomeRow extends Omit<RecheckOutcome, 'side' | 'at'> {
  side: StoredSide;
  at: Date;
}

/** What re-checks showed, newest first. */
export async function listRecheckOutcomes(
  shop: ShopId,
  { job }: { job?: string | undefined } = {},
): Promise<RecheckOutcome[]> {
  // Of one job by its setups: not through all outcomes of the shop.
  const of =
    job === undefined
      ? Prisma.sql`o."shopId" = ${shop}`
      : Prisma.sql`j."shopId" = ${shop} AND j."number" = ${job}`;
  const rows = await ask<OutcomeRow>`
    SELECT j."number" AS "job", s."label" AS "setup", o."side", o."cause", p."code" AS "by", o."at", o."note"
    FROM "Job" j JOIN "Setup" s ON s."jobId" = j."id" JOIN "RecheckOutcome" o ON o."setupId" = s."id"
      LEFT JOIN "Person" p ON p."id" = o."personId"
    WHERE ${of} ORDER BY o."id" DESC`;
  return rows.map(({ side, at, ...row }) => ({ ...row, side: sideOf(side), at: at.getTime() }));
}
