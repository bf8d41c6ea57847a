import { transaction, type Queries } from '@/lib/store/connection/database';
import { Prisma } from '@/lib/store/generated/sqlite/client';
import { lastRemoval } from '@/lib/store/person-data/last-removal';
import { askAgain } from '@/lib/store/sql/ask';
import type { Fit, Json, ShopId } from '@/lib/store/types';

/** Fits kept beside the current one, for looking back. */
const KEPT = 5;

type FitRow = Prisma.ShopFitGetPayload<object>;

const fitOf = (row: FitRow): Fit => ({
  id: row.id,
  inputsVersion: row.inputsVersion,
  fittedAt: row.fittedAt.getTime(),
  parameters: row.parameters as Json,
  figures: row.figures as Json,
});

const stored = (json: Json) => (json === null ? Prisma.JsonNull : json);

/**
 * Keeps a fit with the version of the inputs it was made from; old fits that no verdict names are let go.
 * @throws RangeError where it was learned from readings that name somebody who was removed since.
 */
export function saveFit(
  shop: ShopId,
  fit: { inputsVersion: number; parameters: Json; figures: Json },
): Promise<Fit> {
  return transaction(shop, async (queries) => {
    const { inputsVersion, parameters, figures } = fit;
    await requireNobodyRemoved(queries, shop, inputsVersion);
    const row = await queries.shopFit.create({
      data: {
        shopId: shop,
        inputsVersion,
        parameters: stored(parameters),
        figures: stored(figures),
        fittedAt: new Date(),
      },
    });
    const kept = await queries.shopFit.findMany({
      where: { shopId: shop },
      orderBy: { id: 'desc' },
      take: KEPT,
      select: { id: true },
    });
    await queries.shopFit.deleteMany({
      where: { shopId: shop, verdicts: { none: {} }, id: { notIn: kept.map(({ id }) => id) } },
    });
    return fitOf(row);
  });
}

/**
 * Brings a fit up to newer inputs without learning anew: its figures, and what is said of it. When it was learned stays.
 * @throws RangeError as `saveFit`, and where there is no such fit any more.
 */
export function followFit(
  shop: ShopId,
  id: number,
  fit: { inputsVersion: number; parameters: Json; figures: Json },
): Promise<void> {
  return transaction(shop, (queries) => follow(queries, shop, id, fit));
}

/** The same within a transaction. */
export async function follow(
  queries: Queries,
  shop: ShopId,
  id: number,
  { inputsVersion, parameters, figures }: { inputsVersion: number; parameters: Json; figures: Json },
): Promise<void> {
  await requireNobodyRemoved(queries, shop, inputsVersion);
  const { count } = await queries.shopFit.updateMany({
    where: { shopId: shop, id },
    data: { inputsVersion, parameters: stored(parameters), figures: stored(figures) },
  });
  if (count === 0) throw new RangeError(`The shop has no fit ${id} any more: learn again.`);
}

/** Says something else of a fit, going by what is said of it at that moment. Nothing happens where it is gone. */
export async function restate(
  queries: Queries,
  shop: ShopId,
  id: number,
  change: (parameters: Json) => Json,
): Promise<void> {
  const fit = await queries.shopFit.findFirst({ where: { shopId: shop, id }, select: { parameters: true } });
  if (fit === null) return;
  await queries.shopFit.updateMany({
    where: { shopId: shop, id },
    data: { parameters: stored(change(fit.parameters as Json)) },
  });
}

async function requireNobodyRemoved(queries: Queries, shop: ShopId, inputsVersion: number): Promise<void> {
  if (inputsVersion < (await lastRemoval(queries, shop)))
    throw new RangeError('Somebody was removed from the shop meanwhile: this has to be learned again.');
}

/** The newest fit, or null before the first. It may be older than the readings: compare `inputsVersion`. */
export async function currentFit(shop: ShopId): Promise<Fit | null> {
  const [row] =
    await askAgain<FitRow>`SELECT * FROM "ShopFit" WHERE "shopId" = ${shop} ORDER BY "id" DESC LIMIT 1`;
  return row === undefined ? null : fitOf(row);
}
