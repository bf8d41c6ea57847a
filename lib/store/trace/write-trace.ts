import type { Queries } from '@/lib/store/connection/database';
import { personRow } from '@/lib/store/shop/person-row';
import type { Actor, ShopId, TraceEntry } from '@/lib/store/types';

/**
 * Keeps who did what, within the transaction of the change itself.
 * @throws RangeError where the shop has nobody of the actor's code.
 */
export async function writeTrace(
  queries: Queries,
  shop: ShopId,
  actor: Actor,
  { action, kind, subject, concerns, before, after, reason }: TraceEntry,
): Promise<void> {
  await queries.trace.create({
    data: {
      shopId: shop,
      at: new Date(),
      personId: await personRow(queries, shop, actor.person),
      via: actor.via,
      action,
      kind,
      subject,
      concernsId: concerns ?? null,
      ...told('before', before),
      ...told('after', after),
      reason: reason ?? null,
    },
  });
}

/** Nothing and null are the same to a reader: neither is stored. */
const told = (name: 'before' | 'after', value: TraceEntry['before']) =>
  value === undefined || value === null ? {} : { [name]: value };
