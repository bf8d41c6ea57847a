import { database, inProcess } from '@/lib/store/connection/database';
import { Prisma } from '@/lib/store/generated/sqlite/client';
import { answer } from './answer';

/**
 * The rows that a question of our own is answered with, outside of any transaction. SQLite lives in this process: a
 * statement that was prepared before is answered in some ten microseconds, where it takes Prisma half a millisecond to
 * hand the same question on. Times, truths and JSON come as Prisma gives them; whole numbers as numbers or, from a
 * server where the database counts, as bigints.
 */
export async function ask<Row>(text: TemplateStringsArray, ...values: readonly unknown[]): Promise<Row[]> {
  const sqlite = await inProcess();
  if (sqlite === null) return database().$queryRaw<Row[]>(text, ...values);
  const question = Prisma.sql(text, ...values);
  return answer<Row>(sqlite.prepared(question.sql), question.values);
}

/**
 * The same, for what pages ask again and again and what takes longer the longer the history is: SQLite says whether
 * anything at all was written since, by whichever process, and where nothing was, the answer is the one before. A
 * server has no such word, and is asked anew.
 */
export async function askAgain<Row>(
  text: TemplateStringsArray,
  ...values: readonly unknown[]
): Promise<readonly Readonly<Row>[]> {
  const sqlite = await inProcess();
  if (sqlite === null) return database().$queryRaw<Row[]>(text, ...values);
  const question = Prisma.sql(text, ...values);
  const key = `${question.sql} ${JSON.stringify(question.values)}`;
  return sqlite.kept.of(key, sqlite.version, () =>
    answer<Row>(sqlite.prepared(question.sql), question.values).map((row) => Object.freeze(row)),
  );
}
