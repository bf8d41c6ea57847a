import { isDeepStrictEqual } from 'node:util';
import type { GaugeKind } from '@/lib/measure';
import { database, transaction } from '@/lib/store/connection/database';
import { personRow } from '@/lib/store/shop/person-row';
import { subjectOf } from '@/lib/store/trace/subjects';
import { writeTrace } from '@/lib/store/trace/write-trace';
import type { Actor, Gauge, GaugeState, GaugeVerification, ShopId } from '@/lib/store/types';

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
export async function listGauges(shop: ShopId): Promise<Gauge[]> {
  const rows = await database().gauge.findMany({
    where: { shopId: shop },
    select: columns,
    orderBy: { tag: 'asc' },
  });
  return rows.map(gauge);
}

/** One gauge with its verifications, newest first. */
export async function getGauge(
  shop: ShopId,
  tag: string,
): Promise<(Gauge & { verifications: GaugeVerification[] }) | null> {
  const row = await database().gauge.findUnique({
    where: { shopId_tag: { shopId: shop, tag } },
    select: {
      ...columns,
      verifications: {
        select: { at: true, error: true, passed: true, note: true, person: { select: { code: true } } },
        orderBy: [{ at: 'desc' }, { id: 'desc' }],
      },
    },
  });
  if (row === null) return null;
  const verifications = row.verifications.map(({ at, error, passed, note, person }) => ({
    gauge: tag,
    at: at.getTime(),
    error,
    passed,
    by: person?.code ?? null,
    note,
  }));
  return { ...gauge(row), verifications };
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

/** Keeps a verification; one that failed takes the gauge out of service, one that passed brings it back. */
export async function recordVerification(
  shop: ShopId,
  verification: GaugeVerification,
  actor: Actor,
): Promise<void> {
  const { gauge: tag, at, error, passed, by, note } = verification;
  await transaction(shop, async (queries) => {
    const known = await queries.gauge.findUnique({ where: { shopId_tag: { shopId: shop, tag } } });
    if (known === null) throw new RangeError(`The shop has no gauge ${tag}.`);
    const personId = await personRow(queries, shop, by);
    const time = new Date(at);
    await queries.gaugeVerification.create({
      data: { shopId: shop, gaugeId: known.id, at: time, error, passed, personId, note },
    });
    const late = known.verifiedAt !== null && known.verifiedAt > time;
    const state = late || known.state === 'retired' ? known.state : passed ? 'in-service' : 'out-of-service';
    if (!late) await queries.gauge.update({ where: { id: known.id }, data: { verifiedAt: time, state } });
    await writeTrace(queries, shop, actor, {
      action: 'verified',
      kind: 'gauge',
      subject: subjectOf.gauge(tag),
      concerns: personId,
      before: { state: known.state },
      after: { state, at, error, passed },
    });
  });
}
