import { engine, type Engine } from '@/lib/store/connection/database';
import { stateFor } from '@/lib/store/connection/state';
import { Prisma } from '@/lib/store/generated/sqlite/client';
import { answer } from './answer';

/**
 * The rows that a question of our own is answered with, outside of any transaction, without Prisma. SQLite lives in this
 * process: a statement that was prepared before is answered in some ten microseconds, where it takes Prisma half a
 * millisecond to hand the same question on. Times, truths and JSON come as Prisma gives them; whole numbers as numbers
 * or, from a server where the database counts, as bigints.
 */
export async function ask<Row>(text: TemplateStringsArray, ...values: readonly unknown[]): Promise<Row[]> {
  const question = Prisma.sql(text, ...values);
  return answered<Row>(await engine(), question);
}

const answered = <Row>(
  { sqlite, server }: Engine,
  { sql, text, values }: Prisma.Sql,
): Row[] | Promise<Row[]> =>
  server === null ? answer<Row>(sqlite.prepared(sql), values) : server.ask<Row>(text, values);

/**
 * The same, for what pages ask again and again and what takes longer the longer the history is: the database says
 * whether anything at all was written since, by whichever process, and where nothing was, the answer is the one before.
 */
export async function askAgain<Row>(
  text: TemplateStringsArray,
  ...values: readonly unknown[]
): Promise<readonly Readonly<Row>[]> {
  const question = Prisma.sql(text, ...values);
  const key = `${question.sql} ${JSON.stringify(question.values)}`;
  const open = await engine();
  const { sqlite, server } = open;
  const state = server === null ? sqlite.version : await stateFor(server);
  const { kept } = server ?? sqlite;
  const known = kept.at(key, state);
  // What was answered to this question before, the same question is answered with again.
  if (known !== null) return known as readonly Row[];
  return kept.keep(key, state, await answered<Row>(open, question));
}
