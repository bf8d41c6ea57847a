import { inParts } from '@/lib/measure/in-parts';
import { dialect } from '@/lib/store/dialect';
import { Prisma } from '@/lib/store/generated/sqlite/client';
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

/** Answers that go to the database in one statement: to a server each is a way there and back. */
const AT_ONCE = 20;

/** Writes them with a fit, within a transaction. */
export async function writeFitAnswers(
  within: Statements,
  shop: ShopId,
  fit: number,
  { texts, gone }: ChangedAnswers,
): Promise<void> {
  if (gone.length > 0)
    await within.$executeRaw`DELETE FROM "FitAnswer" WHERE "fitId" = ${fit} AND "question" ${among(gone)}`;
  const to = dialect();
  for (const some of inParts([...texts], AT_ONCE))
    await within.$executeRaw`
      INSERT INTO "FitAnswer" ("shopId", "fitId", "question", "document")
      VALUES ${Prisma.join(some.map(([question, text]) => Prisma.sql`(${shop}, ${fit}, ${question}, ${to.json(text)})`))}
      ON CONFLICT ("fitId", "question") DO UPDATE SET "document" = excluded."document"`;
}
