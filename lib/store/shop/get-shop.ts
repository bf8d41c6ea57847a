import { database, type Queries } from '@/lib/store/connection/database';
import type { Prisma } from '@/lib/store/generated/sqlite/client';
import type { Shop, ShopId } from '@/lib/store/types';

export const shopColumns = {
  id: true,
  name: true,
  timeZone: true,
  defaultTolerance: true,
  inputsVersion: true,
  missCosts: { select: { cost: true }, orderBy: { id: 'desc' }, take: 1 },
} as const satisfies Prisma.ShopSelect;

export const shopOf = ({
  missCosts,
  ...shop
}: Prisma.ShopGetPayload<{ select: typeof shopColumns }>): Shop => ({
  ...shop,
  missCost: missCosts[0]?.cost ?? null,
});

/** What a shop is called that nobody has named yet. */
export const UNNAMED = 'Our shop';

/** The shop of this installation; made with plain defaults where the database has none. */
export async function getShop(): Promise<Shop> {
  const first = () => database().shop.findFirst({ orderBy: { id: 'asc' }, select: shopColumns });
  const found = await first();
  if (found !== null) return shopOf(found);
  const made = { name: UNNAMED, timeZone: 'UTC' };
  // Two processes may find the database empty at once; the name's uniqueness lets one of them win.
  await database().shop.upsert({ where: { name: made.name }, create: made, update: {} });
  const there = await first();
  return there === null ? getShop() : shopOf(there);
}

/** Changes what the shop says of itself. */
export async function saveShop(
  shop: ShopId,
  change: Partial<Pick<Shop, 'name' | 'timeZone' | 'defaultTolerance'>>,
): Promise<Shop> {
  if (change.timeZone !== undefined && !isTimeZone(change.timeZone)) {
    throw new RangeError(`"${change.timeZone}" is no time zone; write one such as Europe/Zurich.`);
  }
  return shopOf(await database().shop.update({ where: { id: shop }, data: change, select: shopColumns }));
}

/** Version of everything that a fit is learned from. */
export async function inputsVersion(shop: ShopId): Promise<number> {
  const row = await database().shop.findUniqueOrThrow({
    where: { id: shop },
    select: { inputsVersion: true },
  });
  return row.inputsVersion;
}

/** Says, within the change itself, that a fit made before it is out of date. */
export async function inputsChanged(queries: Queries, shop: ShopId): Promise<void> {
  await queries.shop.update({ where: { id: shop }, data: { inputsVersion: { increment: 1 } } });
}

function isTimeZone(name: string): boolean {
  try {
    new Intl.DateTimeFormat('en', { timeZone: name });
    return true;
  } catch {
    return false;
  }
}
