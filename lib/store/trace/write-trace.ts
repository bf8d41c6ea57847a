import type { Queries } from '@/lib/store/connection/database';
import { Prisma } from '@/lib/store/generated/sqlite/client';
import type { Actor, Json, ShopId, TraceEntry } from '@/lib/store/types';

const json = (value: Json | undefined) =>
  value === undefined ? {} : value === null ? Prisma.JsonNull : value;

/** Keeps who did what, within the transaction of the change itself. */
export async function writeTrace(
  queries: Queries,
  shop: ShopId,
  actor: Actor,
  { action, kind, subject, concerns, before, after, reason }: TraceEntry,
): Promise<void> {
  const person =
    actor.person === null
      ? null
      : await queries.person.findUnique({
          where: { shopId_code: { shopId: shop, code: actor.person } },
          select: { id: true },
        });
  await queries.trace.create({
    data: {
      shopId: shop,
      at: new Date(),
      personId: person?.id ?? null,
      via: actor.via,
      action,
      kind,
      subject,
      concernsId: concerns ?? null,
      ...(before !== undefined && { before: json(before) }),
      ...(after !== undefined && { after: json(after) }),
      reason: reason ?? null,
    },
  });
}
