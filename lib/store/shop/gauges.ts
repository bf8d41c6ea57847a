import type { GaugeKind } from '@/lib/measure';
import { database, transaction } from '@/lib/store/connection/database';
import type { Gauge, GaugeState, GaugeVerification, ShopId } from '@/lib/store/types';

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
export async function saveGauges(shop: ShopId, gauges: readonly Gauge[]): Promise<void> {
  await transaction(shop, async (queries) => {
    for (const { tag, kind, fixedMark, state, verifiedAt } of gauges) {
      const data = { kind, fixedMark, state, verifiedAt: verifiedAt === null ? null : new Date(verifiedAt) };
      await queries.gauge.upsert({
        where: { shopId_tag: { shopId: shop, tag } },
        create: { shopId: shop, tag, ...data },
        update: data,
      });
    }
  });
}

/** Keeps a verification; one that failed takes the gauge out of service, one that passed brings it back. */
export async function recordVerification(shop: ShopId, verification: GaugeVerification): Promise<void> {
  const { gauge: tag, at, error, passed, by, note } = verification;
  await transaction(shop, async (queries) => {
    const known = await queries.gauge.findUnique({ where: { shopId_tag: { shopId: shop, tag } } });
    if (known === null) throw new RangeError(`The shop has no gauge ${tag}.`);
    const person =
      by === null
        ? null
        : await queries.person.findUnique({ where: { shopId_code: { shopId: shop, code: by } } });
    if (by !== null && person === null) throw new RangeError(`The shop has nobody with the code ${by}.`);
    const time = new Date(at);
    await queries.gaugeVerification.create({
      data: { shopId: shop, gaugeId: known.id, at: time, error, passed, personId: person?.id ?? null, note },
    });
    if (known.verifiedAt !== null && known.verifiedAt > time) return;
    const state = known.state === 'retired' ? 'retired' : passed ? 'in-service' : 'out-of-service';
    await queries.gauge.update({ where: { id: known.id }, data: { verifiedAt: time, state } });
  });
}
