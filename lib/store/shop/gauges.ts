import { isDeepStrictEqual } from 'node:util';
import type { GaugeKind } from '@/lib/measure';
import { frozen, onceFor } from '@/lib/memory';
import { transaction } from '@/lib/store/connection/database';
import { personRow } from '@/lib/store/shop/person-row';
import { ask, askAgain } from '@/lib/store/sql/ask';
import { subjectOf } from '@/lib/store/trace/subjects';
import { writeTrace } from '@/lib/store/trace/write-trace';
import type { Actor, Gauge, GaugeState, GaugeVerification, NewVerification, ShopId } from '@/lib/store/types';

const columns = { tag: true, kind: true, fixedMark: true, state: true, verifiedAt: true } as const;

interface GaugeColumns {
  tag: string;
  kind: string | null;
  fixedMark: number | null;
  state: string;
  verifiedAt: Date | null;
}

const gauge = (row: GaugeColumns): Gauge => ({
  tag: row.tag,
  // The database's CHECK holds both sets of words.
  kind: row.kind as GaugeKind | null,
  fixedMark: row.fixedMark,
  state: row.state as GaugeState,
  verifiedAt: row.verifiedAt?.getTime() ?? null,
});

/** Every gauge, by tag. */
export async function listGauges(shop: ShopId): Promise<readonly Gauge[]> {
  const rows = await askAgain<GaugeColumns>`
    SELECT "tag", "kind", "fixedMark", "state", "verifiedAt" FROM "Gauge" WHERE "shopId" = ${shop} ORDER BY "tag"`;
  return gaugesOf(rows);
}

const gaugesOf = onceFor((rows: readonly GaugeColumns[]): readonly Gauge[] => frozen(rows.map(gauge)));

/** One gauge with its verifications, newest first. */
export async function getGauge(
  shop: ShopId,
  tag: string,
): Promise<(Gauge & { verifications: GaugeVerification[] }) | null> {
  const [row] = await ask<GaugeColumns & { id: number }>`
    SELECT "id", "tag", "kind", "fixedMark", "state", "verifiedAt" FROM "Gauge"
    WHERE "shopId" = ${shop} AND "tag" = ${tag}`;
  if (row === undefined) return null;
  const rows = await ask<VerificationColumns>`
    SELECT v."at", v."kind", v."reference", v."uncertainty", v."error", v."passed", v."note", p."code" AS "by"
    FROM "GaugeVerification" v LEFT JOIN "Person" p ON p."shopId" = v."shopId" AND p."id" = v."personId"
    WHERE v."shopId" = ${shop} AND v."gaugeId" = ${row.id} ORDER BY v."at" DESC, v."id" DESC`;
  const verifications = rows.map(({ at, ...rest }) => ({ ...rest, gauge: tag, at: at.getTime() }));
  return { ...gauge(row), verifications };
}

interface VerificationColumns extends Omit<GaugeVerification, 'gauge' | 'at'> {
  at: Date;
}

/** Adds gauges, or changes those whose tag is known. All or nothing. */
export async function saveGauges(shop: ShopId, gauges: readonly Gauge[], actor: Actor): Promise<void> {
  await transaction(shop, async (queries) => {
    for (const one of gauges) {
      const { tag, verifiedAt, ...rest } = one;
      const where = { shopId_tag: { shopId: shop, tag } };
      const known = await queries.gauge.findUnique({ where, select: columns });
      const before = known === null ? null : told(gauge(known));
      const after = told(one);
      if (before !== null && isDeepStrictEqual(before, after)) continue;
      const data = { ...rest, verifiedAt: verifiedAt === null ? null : new Date(verifiedAt) };
      await queries.gauge.upsert({ where, create: { shopId: shop, tag, ...data }, update: data });
      await writeTrace(queries, shop, actor, {
        action: before === null ? 'added' : 'changed',
        kind: 'gauge',
        subject: subjectOf.gauge(tag),
        before,
        after,
      });
    }
  });
}

const told = ({ kind, fixedMark, state, verifiedAt }: Gauge) => ({ kind, fixedMark, state, verifiedAt });

/**
 * Keeps a verification, or the report of a drop. What fails, or was reported to have fallen, takes the gauge out of
 * service until a verification passes: a gauge that is out comes back by a measured error alone, never by a look.
 * What is entered late, after something newer, moves nothing.
 * @throws RangeError where the shop has no such gauge or person, or a report is said to pass.
 */
export async function recordVerification(
  shop: ShopId,
  verification: NewVerification,
  actor: Actor,
): Promise<void> {
  const { gauge: tag, at, error, passed, by, note, reference = null, uncertainty = null } = verification;
  const kind = verification.kind ?? (error === null ? 'looked-at' : 'reference-length');
  if (kind === 'reported-dropped' && passed)
    throw new RangeError('A gauge that was reported dropped has not passed: verify it.');
  const decides = verification.decides ?? true;
  if (passed && !decides) throw new RangeError('A verification that decides nothing has not passed.');
  await transaction(shop, async (queries) => {
    const known = await queries.gauge.findUnique({ where: { shopId_tag: { shopId: shop, tag } } });
    if (known === null) throw new RangeError(`The shop has no gauge ${tag}.`);
    const personId = await personRow(queries, shop, by);
    const time = new Date(at);
    const newer = await queries.gaugeVerification.findFirst({
      where: { shopId: shop, gaugeId: known.id, at: { gt: time } },
      select: { id: true },
    });
    await queries.gaugeVerification.create({
      data: {
        shopId: shop,
        gaugeId: known.id,
        at: time,
        kind,
        reference,
        uncertainty,
        error,
        passed,
        personId,
        note,
      },
    });
    const late = newer !== null || (known.verifiedAt !== null && known.verifiedAt > time);
    const state =
      late || !decides ? known.state : stateAfter(known.state, { passed, measured: error !== null });
    if (!late)
      await queries.gauge.update({
        where: { id: known.id },
        data: { state, ...(kind !== 'reported-dropped' && decides && { verifiedAt: time }) },
      });
    await writeTrace(queries, shop, actor, {
      action: kind === 'reported-dropped' ? 'reported dropped' : 'verified',
      kind: 'gauge',
      subject: subjectOf.gauge(tag),
      concerns: personId,
      before: { state: known.state },
      after: { state, at, kind, error, uncertainty, passed },
    });
  });
}

function stateAfter(state: string, { passed, measured }: { passed: boolean; measured: boolean }): string {
  if (state === 'retired') return state;
  if (!passed) return 'out-of-service';
  return measured ? 'in-service' : state;
}
