import { statements, transaction } from '@/lib/store/connection/database';
import { dialect } from '@/lib/store/dialect';
import { Prisma } from '@/lib/store/generated/sqlite/client';
import { lastRemoval } from '@/lib/store/person-data/last-removal';
import { askAgain } from '@/lib/store/sql/ask';
import type { Statements } from '@/lib/store/sql/statements';
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
  return transaction(shop, async (queries, _, within) => {
    const { inputsVersion, parameters, figures } = fit;
    await requireNobodyRemoved(within, shop, inputsVersion);
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

/** What is said of a fit and its figures, each as JSON. */
export interface FitTexts {
  inputsVersion: number;
  parameters: string;
  figures: string;
}

/**
 * Brings a fit up to newer inputs without learning anew: its figures, and what is said of it. When it was learned stays.
 * @throws RangeError as `saveFit`, and where there is no such fit any more.
 */
export function followFit(shop: ShopId, id: number, fit: FitTexts): Promise<void> {
  return statements(shop, (within) => follow(within, shop, id, fit));
}

/** The same within a transaction. */
export async function follow(
  within: Statements,
  shop: ShopId,
  id: number,
  { inputsVersion, parameters, figures }: FitTexts,
): Promise<void> {
  await requireNobodyRemoved(within, shop, inputsVersion);
  const to = dialect();
  const count = await within.$executeRaw`
    UPDATE "ShopFit"
    SET "inputsVersion" = ${inputsVersion}, "parameters" = ${to.json(parameters)}, "figures" = ${to.json(figures)}
    WHERE "shopId" = ${shop} AND "id" = ${id}`;
  if (count === 0) throw new RangeError(`The shop has no fit ${id} any more: learn again.`);
}

/** Says something else of a fit, going by what is said of it at that moment. Nothing happens where it is gone. */
export async function restate(
  within: Statements,
  shop: ShopId,
  id: number,
  change: (parameters: Json) => Json,
): Promise<void> {
  const [fit] = await within.$queryRaw<{ parameters: Json }[]>`
    SELECT "parameters" FROM "ShopFit" WHERE "shopId" = ${shop} AND "id" = ${id}`;
  if (fit === undefined) return;
  await within.$executeRaw`
    UPDATE "ShopFit" SET "parameters" = ${dialect().json(JSON.stringify(change(fit.parameters)))}
    WHERE "shopId" = ${shop} AND "id" = ${id}`;
}

async function requireNobodyRemoved(within: Statements, shop: ShopId, inputsVersion: number): Promise<void> {
  if (inputsVersion < (await lastRemoval(within, shop)))
    throw new RangeError('Somebody was removed from the shop meanwhile: this has to be learned again.');
}

/** The newest fit, or null before the first. It may be older than the readings: compare `inputsVersion`. */
export async function currentFit(shop: ShopId): Promise<Fit | null> {
  const [row] =
    await askAgain<FitRow>`SELECT * FROM "ShopFit" WHERE "shopId" = ${shop} ORDER BY "id" DESC LIMIT 1`;
  return row === undefined ? null : fitOf(row);
}
