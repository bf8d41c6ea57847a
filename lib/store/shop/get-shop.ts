import { database, statements, transaction, type Queries } from '@/lib/store/connection/database';
import { Prisma } from '@/lib/store/generated/sqlite/client';
import { ask } from '@/lib/store/sql/ask';
import { subjectOf } from '@/lib/store/trace/subjects';
import { writeTrace } from '@/lib/store/trace/write-trace';
import { redate } from './redate';
import type { Actor, Shop, ShopId } from '@/lib/store/types';

/** What a shop is called that nobody has named yet. */
export const UNNAMED = 'Our shop';
/** Whose turn it is to make the first shop is told by an id that none has. */
const NO_SHOP = 0;

/** The columns of a `Shop`, of "Shop" s. */
const SHOP = Prisma.sql`s."id", s."name", s."timeZone", s."defaultTolerance", s."inputsVersion", s."demo",
  (SELECT c."cost" FROM "MissCost" c WHERE c."shopId" = s."id" ORDER BY c."id" DESC LIMIT 1) AS "missCost"`;

/** The shop of this installation; made with plain defaults where the database has none. */
export async function getShop(): Promise<Shop> {
  const first = () => ask<Shop>`SELECT ${SHOP} FROM "Shop" s ORDER BY s."id" LIMIT 1`;
  const [found] = await first();
  if (found !== undefined) return found;
  // Two processes may find the database empty at once; the name's uniqueness lets one of them win.
  await statements(
    NO_SHOP,
    (within) => within.$executeRaw`
      INSERT INTO "Shop" ("name", "timeZone", "createdAt") VALUES (${UNNAMED}, 'UTC', ${new Date()})
      ON CONFLICT ("name") DO NOTHING`,
  );
  const [there] = await first();
  return there ?? getShop();
}

/** One of several shops; null where there is none of this id. */
export async function shopOfId(id: ShopId): Promise<Shop | null> {
  const [row] = await ask<Shop>`SELECT ${SHOP} FROM "Shop" s WHERE s."id" = ${id}`;
  return row ?? null;
}

/** @throws RangeError where there is none of this id. */
export async function theShop(id: ShopId): Promise<Shop> {
  const shop = await shopOfId(id);
  if (shop === null) throw new RangeError(`There is no shop ${id}.`);
  return shop;
}

/** Every shop of the database, by name. */
export const listShops = (): Promise<Shop[]> => ask<Shop>`SELECT ${SHOP} FROM "Shop" s ORDER BY s."name"`;

export type ShopSettings = Pick<Shop, 'name' | 'timeZone' | 'defaultTolerance'>;

/** Another shop beside those of the database. @throws RangeError where the zone is none or the name is taken. */
export async function addShop(name: string, timeZone: string): Promise<Shop> {
  requireTimeZone(timeZone);
  await requireFree(database(), name);
  const { id } = await database().shop.create({ data: { name, timeZone }, select: { id: true } });
  return theShop(id);
}

/**
 * Changes what the shop says of itself. What is counted by month follows another time zone; times stay what they are.
 * @throws RangeError where the zone is none or another shop has the name.
 */
export async function saveShop(shop: ShopId, change: Partial<ShopSettings>, actor: Actor): Promise<Shop> {
  if (change.timeZone !== undefined) requireTimeZone(change.timeZone);
  await transaction(shop, async (queries) => {
    const known = await queries.shop.findUniqueOrThrow({ where: { id: shop } });
    const changed = SETTINGS.filter((name) => change[name] !== undefined && change[name] !== known[name]);
    if (changed.includes('name')) await requireFree(queries, change.name ?? known.name);
    const row = await queries.shop.update({ where: { id: shop }, data: change });
    if (changed.length > 0) {
      const of = (settings: ShopSettings) =>
        Object.fromEntries(changed.map((name) => [name, settings[name]] as const));
      const what = { action: 'changed', kind: 'shop', subject: subjectOf.shop };
      await writeTrace(queries, shop, actor, { ...what, before: of(known), after: of(row) });
    }
    if (changed.includes('timeZone')) {
      await redate(queries, shop, row.timeZone);
      await inputsChanged(queries, shop);
    }
  });
  return theShop(shop);
}

const SETTINGS = ['name', 'timeZone', 'defaultTolerance'] as const satisfies (keyof ShopSettings)[];

/** Version of everything that a fit is learned from. */
export async function inputsVersion(shop: ShopId): Promise<number> {
  const [row] = await ask<{ inputsVersion: number }>`SELECT "inputsVersion" FROM "Shop" WHERE "id" = ${shop}`;
  if (row === undefined) throw new RangeError(`There is no shop ${shop}.`);
  return row.inputsVersion;
}

/** Says, within the change itself, that a fit made before it is out of date. */
export async function inputsChanged(queries: Queries, shop: ShopId): Promise<void> {
  await queries.shop.update({ where: { id: shop }, data: { inputsVersion: { increment: 1 } } });
}

function requireTimeZone(name: string): void {
  try {
    new Intl.DateTimeFormat('en', { timeZone: name });
  } catch {
    throw new RangeError(`"${name}" is no time zone; write one such as Europe/Zurich.`);
  }
}

async function requireFree(queries: Pick<Queries, 'shop'>, name: string): Promise<void> {
  if ((await queries.shop.findUnique({ where: { name } })) !== null)
    throw new RangeError(`There is a shop of the name ${name} already.`);
}
