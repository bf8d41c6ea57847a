import { dialect } from '@/lib/store/dialect';
import { among } from '@/lib/store/sql/among';
import type { Statements } from '@/lib/store/sql/statements';
import type { ShopId } from '@/lib/store/types';

/** Answers in place of what was answered before, those to other questions stay. */
export interface ChangedAnswers {
  /** By question, as JSON. */
  texts: ReadonlyMap<string, string>;
  /** Questions that have no answer any more. */
  gone: readonly string[];
}

/** Writes them with a fit, within a transaction. */
export async function writeFitAnswers(
  within: Statements,
  shop: ShopId,
  fit: number,
  { texts, gone }: ChangedAnswers,
): Promise<void> {
  if (gone.length > 0)
    await within.$executeRaw`DELETE FROM "FitAnswer" WHERE "fitId" = ${fit} AND "question" ${among(gone)}`;
  for (const [question, text] of texts)
    await within.$executeRaw`
      INSERT INTO "FitAnswer" ("shopId", "fitId", "question", "document")
      VALUES (${shop}, ${fit}, ${question}, ${dialect().json(text)})
      ON CONFLICT ("fitId", "question") DO UPDATE SET "document" = excluded."document"`;
}
